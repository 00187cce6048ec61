import { create } from 'zustand';
import type { SearchSeat } from '../../choose/shortlist/space.ts';
import type { HardLimit } from '../../choose/shortlist/types.ts';
import type { UnitSystem } from '../../units/shownUnits.ts';

/** What may be searched, as a person says it. */
export const SEAT_WORDS: readonly (readonly [SearchSeat, string])[] = [
  ['frame', 'frame'],
  ['motors', 'motors'],
  ['propellers', 'propellers'],
  ['pack', 'pack'],
  ['controllers', 'motor controllers'],
  ['flightController', 'flight controller'],
  ['cameras', 'flying camera'],
];

/** A hard limit that can be set here, beside those of the brief. */
export interface LimitField {
  readonly measure: string;
  readonly side: 'least' | 'most';
  readonly label: string;
  readonly unit: string;
  /** SI for one of the unit. */
  readonly factor: number;
  readonly max: number;
  readonly decimals: number;
}

/** Per ounce and per inch, NIST SP 811 appendix B. */
const OUNCE = 0.45359237 / 16;
const INCH = 0.0254;

const FIELDS: readonly LimitField[] = [
  {
    measure: 'flown-time',
    side: 'least',
    label: 'fly at least',
    unit: 'min',
    factor: 60,
    max: 120,
    decimals: 1,
  },
  {
    measure: 'all-up-mass',
    side: 'most',
    label: 'weigh at most',
    unit: 'g',
    factor: 1e-3,
    max: 25000,
    decimals: 0,
  },
  {
    measure: 'thrust-to-weight',
    side: 'least',
    label: 'thrust to weight, at least',
    unit: '',
    factor: 1,
    max: 30,
    decimals: 1,
  },
  {
    measure: 'motor-diagonal',
    side: 'most',
    label: 'motor to motor, at most',
    unit: 'mm',
    factor: 1e-3,
    max: 1500,
    decimals: 0,
  },
];

/** Where the units are others: of the same limits. */
const IMPERIAL: Readonly<Record<string, Pick<LimitField, 'unit' | 'factor' | 'max' | 'decimals'>>> = {
  g: { unit: 'oz', factor: OUNCE, max: 880, decimals: 1 },
  mm: { unit: 'in', factor: INCH, max: 59, decimals: 1 },
};

export const limitFields = (system: UnitSystem): readonly LimitField[] =>
  system === 'metric' ? FIELDS : FIELDS.map((field) => ({ ...field, ...IMPERIAL[field.unit] }));

interface Ask {
  /** The build whose other parts stay; the open one when absent. */
  readonly template?: string;
  readonly seats: readonly SearchSeat[];
  readonly front: boolean;
  readonly relax: boolean;
  readonly limits: readonly HardLimit[];
}

/** The question as it stands on the sheet. */
export const useAsk = create<Ask>()(() => ({
  seats: ['frame', 'motors', 'propellers', 'pack', 'controllers'],
  front: false,
  relax: false,
  limits: [],
}));

export function tickSeat(seat: SearchSeat, on: boolean): void {
  const { seats } = useAsk.getState();
  useAsk.setState({ seats: on ? [...seats, seat] : seats.filter((each) => each !== seat) });
}

/** Sets a limit [SI], or takes it away. */
export function setLimit({ measure, side }: LimitField, value: number | undefined): void {
  const others = useAsk
    .getState()
    .limits.filter((limit) => !(limit.measure === measure && limit[side] !== undefined));
  useAsk.setState({ limits: value === undefined ? others : [...others, { measure, [side]: value }] });
}

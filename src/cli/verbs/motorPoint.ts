import { type Banded, propagate } from '../../assess/propagate.ts';
import type { MotorKnown } from '../../build/infer/motorKnown.ts';
import type { MotorModel, MotorPoint } from '../../drive/types.ts';
import { decimalsForBand, roundedText } from '../../units/significance.ts';
import { narrowTable } from '../print/narrow.ts';

/** What is told of a point beside what was asked. */
const SHOWN = {
  torque: ['torque', 1000, 'mN m'],
  current: ['current', 1, 'A'],
  voltage: ['voltage', 1, 'V'],
  shaftPower: ['shaft power', 1, 'W'],
  copperLoss: ['heat of the winding', 1, 'W'],
  ironLoss: ['heat of iron, bearings, switching', 1, 'W'],
  heat: ['all heat', 1, 'W'],
  efficiency: ['efficiency', 100, '%'],
} as const;

type Name = keyof typeof SHOWN;

/** A motor at one point, and how far each of its numbers may be off. */
export interface BandedPoint {
  readonly point: MotorPoint & { readonly heat: number };
  /** Without those that were asked, and an efficiency that there is none of. */
  readonly banded: Readonly<Partial<Record<Name, Banded>>>;
  /** In words, where the propeller drives the motor. */
  readonly driven?: string;
}

/** @param pointOf the motor at what was asked, for a model */
export function bandedPoint(
  model: MotorModel,
  known: MotorKnown,
  pointOf: (model: MotorModel) => MotorPoint,
): BandedPoint {
  const raised = (input: string, key: keyof MotorKnown) => {
    const { value, deviation, trust } = known[key];
    const scale = value > 0 ? 1 + deviation / value : 1;
    return { input, trust, raised: { ...model, [key]: (model[key] ?? 0) * scale } };
  };
  const doubts = [
    raised('speed constant', 'speedConstant'),
    raised('winding resistance', 'resistance'),
    raised('idle current', 'noLoadCurrent'),
    raised('losses at speed', 'resistanceRise'),
  ];
  const record = (motor: MotorModel): Record<Name, number> => {
    const { angularSpeed: _, ...point } = pointOf(motor);
    return { ...point, heat: point.copperLoss + point.ironLoss };
  };
  const nominal = record(model);
  const { banded } = propagate(nominal, doubts, record);
  const shown = Object.fromEntries(
    Object.entries(banded).filter(
      ([name, { value, band }]) =>
        band[1] - band[0] > 1e-9 * Math.abs(value) && (name !== 'efficiency' || nominal.efficiency > 0),
    ),
  );
  const point = { ...pointOf(model), heat: nominal.heat };
  const driven = point.torque < 0 ? drivenText(point) : undefined;
  return { point, banded: shown, ...(driven === undefined ? {} : { driven }) };
}

/** What it means that the air turns the motor. */
function drivenText({ torque, angularSpeed, current, voltage }: MotorPoint): string {
  const given = `The propeller drives the motor (it windmills, or is slowed): the air puts ${watts(-torque * angularSpeed)} into the shaft.`;
  const electrical = voltage * current;
  if (current >= 0) {
    return `${given} That is less than iron and bearings take at this speed: the motor still draws ${watts(electrical)}, and brakes nothing.`;
  }
  if (electrical > 0) {
    return `${given} Even a shorted motor brakes less: its controller has to push against it, with ${watts(electrical)} from the pack, and all of it turns to heat in the motor.`;
  }
  return (
    `${given} It is a generator: a braking current flows back, and ${watts(-electrical)} go through the controller towards the pack; ` +
    'the rest is heat. A charged pack takes it and the volts of the bus rise; with nothing to take it (a full pack, a plug drawn, a supply on the bench) they rise until something gives. Controllers that do not brake let the propeller run on, and this current does not flow.'
  );
}

const watts = (value: number) => `${Math.abs(value) < 10 ? value.toPrecision(2) : value.toFixed(0)} W`;

/** For a terminal. */
export function bandedPointText({ point, banded, driven }: BandedPoint, asked: string): string {
  const names = Object.keys(SHOWN) as Name[];
  const rows = names.flatMap((name) => {
    const found = banded[name];
    if (found === undefined) return [];
    const [label, scale, unit] = SHOWN[name];
    const places = decimalsForBand([found.band[0] * scale, found.band[1] * scale]);
    const text = (value: number) => roundedText(value * scale, places);
    const [first] = found.leansOn;
    const leans = first === undefined ? '' : `${first.input} (${first.trust})`;
    return [[label, text(found.value), `${text(found.band[0])} to ${text(found.band[1])}`, unit, leans]];
  });
  const speed = `${((point.angularSpeed * 30) / Math.PI).toFixed(0)} rpm`;
  const table = narrowTable([`at ${speed}, ${asked}`, 'value', 'band', 'unit', 'leans on'], rows, [
    'left',
    'right',
    'left',
    'left',
    'left',
  ]);
  return `${table}\nBands are 10th to 90th percentile.${driven === undefined ? '' : `\n${driven}`}`;
}

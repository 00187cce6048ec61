import type { Assessment } from '../../assess/assessment.ts';
import type { Quantity } from '../../assess/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import type { Chart } from '../../report/chart.ts';
import type { Manner } from '../../report/sayFigure.ts';
import type { Drawing } from '../../report/shapes.ts';
import { shownIn } from '../../units/shownUnits.ts';
import type { Curves } from '../worker/protocol.ts';

/** One view on a subject's sheet, drawn to whatever width it is given [px]. */
export interface Figure {
  readonly key: string;
  readonly title: string;
  /** One line below it. */
  readonly says?: string;
  /** Across the whole board. */
  readonly wide?: boolean;
  readonly draw:
    | { readonly kind: 'chart'; readonly chart: Chart; readonly square?: boolean }
    | {
        readonly kind: 'drawing';
        readonly of: (width: number) => { readonly drawing: Drawing; readonly pen: number };
      };
}

/** All that the figures of a sheet are drawn from. */
export interface Subject {
  readonly assessment: Assessment;
  readonly curves?: Curves;
  readonly picture: AircraftPicture;
  readonly brief: Brief;
  readonly manner: Manner;
}

/** An axis of a quantity in the units read here: what stands at it, and the way onto it from SI. */
export function axisUnit({ manner }: Subject, quantity: Quantity, largest: number) {
  return shownIn(quantity, largest, manner);
}

export const measureOf = ({ assessment }: Subject, id: string) =>
  assessment.measures.find((measure) => measure.id === id);

/** A round number a little over everything shown. */
export function roof(values: readonly number[]): number {
  const top = Math.max(...values, 1e-9) * 1.04;
  const power = 10 ** Math.floor(Math.log10(top));
  const step = top / power < 2 ? power / 5 : top / power < 5 ? power / 2 : power;
  return Math.ceil(top / step - 1e-9) * step;
}

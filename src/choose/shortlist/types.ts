import type { AssessContext } from '../../assess/assess.ts';
import type { Build } from '../../build/schema/build.ts';
import type { SoftWant } from './softWants.ts';

/** Controllers and flight controller go together: a board with both is one choice. */
export interface Electronics {
  /** Absent when they are built into the flight controller. */
  readonly controllers?: string;
  readonly flightController: string;
}

/** What may be chosen, as ids of parts on the shelf. Everything else stays as the template has it. */
export interface SearchSpace {
  readonly frames: readonly string[];
  readonly motors: readonly string[];
  readonly propellers: readonly string[];
  readonly packs: readonly string[];
  readonly electronics: readonly Electronics[];
  /** For the flying camera; empty when the template has none. */
  readonly cameras: readonly string[];
}

/** One combination. */
export interface Choice {
  readonly frame: string;
  readonly motor: string;
  readonly propeller: string;
  readonly pack: string;
  readonly electronics: Electronics;
  readonly camera?: string;
}

/** A measure that must lie inside a range, whatever else a candidate is good at. */
export interface HardLimit {
  /** Id of a measure of the quick tier. */
  readonly measure: string;
  /** SI. */
  readonly least?: number;
  readonly most?: number;
}

/** Everything that defines a shortlist. Plain data but for the rotors' readers in the context. */
export interface ShortlistQuestion {
  readonly template: Build;
  readonly space: SearchSpace;
  readonly wants: readonly SoftWant[];
  readonly limits: readonly HardLimit[];
  /** What each `risk` of the fit rules costs of the standing, >= 0. */
  readonly riskCost: number;
  /** How many different aircraft to list. */
  readonly top: number;
  /** Measures of the Pareto front, of `FRONT_MEASURES`; empty for none. */
  readonly front: readonly string[];
}

export type SearchContext = Pick<AssessContext, 'brief' | 'shelf' | 'sections' | 'blades'>;

/** A combination evaluated by the same functions as `assess`. */
export interface Scored {
  /** Total order among equals, and the way back to the choice. */
  readonly key: string;
  readonly choice: Choice;
  /** 0 to 1, less what its risks cost. */
  readonly standing: number;
  readonly risks: number;
  /** The wanted, limited and front measures, SI, by id. Infinity for a limit of heat never reached. */
  readonly values: Readonly<Record<string, number>>;
}

/** Ids with a bar between, frame first: orders equals, and reads well in a checkpoint. */
export function keyOf(choice: Choice): string {
  const { frame, motor, propeller, pack, electronics, camera } = choice;
  return [
    frame,
    motor,
    propeller,
    pack,
    electronics.controllers ?? '-',
    electronics.flightController,
    camera ?? '-',
  ].join('|');
}

/** Better standing first; the key breaks a tie, so that the order never hangs on who found it. */
export function byStanding(a: Scored, b: Scored): number {
  return b.standing - a.standing || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);
}

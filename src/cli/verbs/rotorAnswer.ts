import type { Air } from '../../air/standardAtmosphere.ts';
import { noSolution } from '../../numerics/outcome.ts';
import { rotorBand } from '../../rotor/band.ts';
import type { SectionTables } from '../../rotor/sections.ts';
import { solveRotor } from '../../rotor/solveRotor.ts';
import type { Blade } from '../../rotor/types.ts';

/** One solved point, SI; the contract of `ask rotor --json`. Numbers are null where there is no solution. */
export interface RotorAnswer {
  readonly rpm: number;
  readonly speed: number;
  readonly advanceRatio: number;
  readonly thrustCoefficient: number | null;
  readonly powerCoefficient: number | null;
  readonly thrust: number | null;
  readonly power: number | null;
  readonly torque: number | null;
  readonly band: {
    readonly thrustCoefficient: readonly [number, number];
    readonly powerCoefficient: readonly [number, number];
  } | null;
  /** Only where a speed along the disc was asked. */
  readonly edgewise?: Edgewise;
  /** Why there is none, in words. */
  readonly noSolution?: string;
  /** Why there is no band though there is a solution. */
  readonly noBand?: string;
}

/** What flight along the disc does to a rotor, SI. */
export interface Edgewise {
  /** [m/s] */
  readonly along: number;
  /** Aft, and to the advancing side [N]. */
  readonly inPlaneForce: number;
  readonly sideForce: number;
  /** On the hub [N m]. */
  readonly momentAdvancingUp: number;
  readonly momentAftUp: number;
  readonly band: Readonly<
    Record<'inPlaneForce' | 'sideForce' | 'momentAdvancingUp' | 'momentAftUp', readonly [number, number]>
  >;
}

/** Axial speed the method is made for, either way [m/s]. */
export const FASTEST = 200;

/** Of a point without a solution. */
export const NONE = {
  thrustCoefficient: null,
  powerCoefficient: null,
  thrust: null,
  power: null,
  torque: null,
  band: null,
} as const;

/** A blade at one speed of turning and axial speed, with bands where it can be solved. */
export function rotorAnswer(
  blade: Blade,
  sections: SectionTables,
  air: Air,
  rpm: number,
  speed: number,
): RotorAnswer {
  const angularSpeed = (rpm * Math.PI) / 30;
  const condition = { angularSpeed, axialSpeed: speed, air };
  const solved =
    Math.abs(speed) > FASTEST
      ? noSolution(
          `${speed.toFixed(0)} m/s is beyond the ${FASTEST} m/s either way that the method is made for`,
        )
      : solveRotor(blade, sections, condition);
  const base = { rpm, speed, advanceRatio: speed / ((rpm / 60) * blade.diameter) };
  if (!solved.ok) return { ...base, ...NONE, noSolution: solved.reason };
  const state = solved.value;
  const band = rotorBand(blade, sections, condition, state);
  return {
    ...base,
    thrustCoefficient: state.thrustCoefficient,
    powerCoefficient: state.powerCoefficient,
    thrust: state.thrust,
    power: state.power,
    torque: state.torque,
    band: band.ok
      ? { thrustCoefficient: band.value.thrustCoefficient, powerCoefficient: band.value.powerCoefficient }
      : null,
    ...(band.ok ? {} : { noBand: band.reason }),
  };
}

import type { Unknown } from '../build/craft.ts';
import { type Levers, neutralLevers } from '../flight/types.ts';
import type { Trust } from '../units/trusted.ts';
import type { Uncertainty } from './propagate.ts';

/** What is not known of a rotor, as spreads of thrust and torque at given speed. */
export interface RotorDoubt {
  /** One standard deviation, relative. */
  readonly thrust: number;
  readonly torque: number;
  /** Of the two errors: a blade that pulls more usually asks more. */
  readonly correlation: number;
  readonly trust: Trust;
  readonly knownBy: string;
}

/**
 * The craft's unknowns as states of the levers, each raised alone by one standard deviation. Thrust
 * and torque of a propeller err together, so they stand as two independent causes: blade shape, which
 * moves both, and profile drag, which moves the torque alone (Cholesky factor of their covariance).
 */
export function leverStates(unknowns: readonly Unknown[], rotor: RotorDoubt): readonly Uncertainty<Levers>[] {
  const others = unknowns
    .filter((unknown) => unknown.lever !== 'thrustScale' && unknown.lever !== 'torqueScale')
    .map((unknown) => ({
      input: unknown.label,
      trust: unknown.trust,
      raised: { ...neutralLevers, [unknown.lever]: 1 + unknown.deviation },
    }));
  const drag = rotor.torque * Math.sqrt(1 - rotor.correlation ** 2);
  return [
    {
      input: `propeller lift (${rotor.knownBy})`,
      trust: rotor.trust,
      raised: {
        ...neutralLevers,
        thrustScale: 1 + rotor.thrust,
        torqueScale: 1 + rotor.correlation * rotor.torque,
      },
    },
    {
      input: `propeller drag (${rotor.knownBy})`,
      trust: rotor.trust,
      raised: { ...neutralLevers, torqueScale: 1 + drag },
    },
    ...others,
  ];
}

import type { Unknown } from '../build/craft.ts';
import { type Levers, neutralLevers } from '../flight/types.ts';
import type { Trust } from '../units/trusted.ts';
import type { Uncertainty } from './propagate.ts';
import type { Leaning } from './types.ts';

/** What is not known of a rotor, as spreads of thrust and torque at given speed. */
export interface RotorDoubt {
  /** One standard deviation, relative. */
  readonly thrust: number;
  readonly torque: number;
  /** Of the two errors: a blade that pulls more usually asks more. */
  readonly correlation: number;
  readonly trust: Trust;
  readonly knownBy: string;
  /** The same at full throttle, where it is further from what was measured; as above when absent. */
  readonly atFull?: RotorDoubt;
}

/** One way things may really be: levers of the physics, and how far the balance lies forward of where it is reckoned. */
export interface Doubted {
  readonly levers: Levers;
  /** [m] */
  readonly balanceShift: number;
  /** In place of `levers` for what is told of full throttle; `levers` when absent. */
  readonly leversAtFull?: Levers;
}

/** How far the centre of gravity of a finished craft lies from the sum of its parts (common practice, no source) [m]. */
export const BALANCE_SPREAD = 1.5e-3;

/**
 * The craft's unknowns as states, each raised alone by one standard deviation. Thrust
 * and torque of a propeller err together, so they stand as two independent causes: blade shape, which
 * moves both, and profile drag, which moves the torque alone (Cholesky factor of their covariance).
 */
export function leverStates(
  unknowns: readonly Unknown[],
  rotor: RotorDoubt,
): readonly Uncertainty<Doubted>[] {
  const others = unknowns.map((unknown) => ({
    input: unknown.label,
    trust: unknown.trust,
    raised: raise({ [unknown.lever]: 1 + unknown.deviation }),
  }));
  const full = rotor.atFull ?? rotor;
  const states: readonly Uncertainty<Doubted>[] = [
    {
      input: liftInput(rotor),
      trust: rotor.trust,
      raised: { ...raise(liftOf(rotor)), leversAtFull: { ...neutralLevers, ...liftOf(full) } },
    },
    {
      input: dragInput(rotor),
      trust: rotor.trust,
      raised: { ...raise(dragOf(rotor)), leversAtFull: { ...neutralLevers, ...dragOf(full) } },
    },
    {
      input: 'balance of the finished craft',
      trust: 'inferred',
      raised: { levers: neutralLevers, balanceShift: BALANCE_SPREAD },
    },
    ...others,
  ];
  return states.map((each) => ({ ...each, lowered: loweredOf(each.raised) }));
}

/** As far off to the other side; none where a lever would be at nothing or below. */
function loweredOf({ levers, balanceShift, leversAtFull }: Doubted): (() => Doubted) | undefined {
  const over = (one: Levers) => Object.values(one).some((scale) => scale >= 2);
  if (over(levers) || (leversAtFull !== undefined && over(leversAtFull))) return undefined;
  return () => ({
    levers: mirrored(levers),
    balanceShift: -balanceShift,
    ...(leversAtFull === undefined ? {} : { leversAtFull: mirrored(leversAtFull) }),
  });
}

/** Every lever as far on the other side of 1. */
const mirrored = (levers: Levers): Levers => {
  const down = { ...levers } as { -readonly [Name in keyof Levers]: number };
  for (const name of Object.keys(down) as (keyof Levers)[]) down[name] = 2 - down[name];
  return down;
};

const liftInput = ({ knownBy }: RotorDoubt): string => `propeller lift (${knownBy})`;
const dragInput = ({ knownBy }: RotorDoubt): string => `propeller drag (${knownBy})`;

/** What a figure of full throttle leans on, its propeller named as it is known there. */
export function namedAtFull(leansOn: readonly Leaning[], rotor: RotorDoubt): readonly Leaning[] {
  const full = rotor.atFull;
  if (full === undefined) return leansOn;
  return leansOn.map((leaning) => {
    const named = [liftInput, dragInput].find((name) => name(rotor) === leaning.input);
    return named === undefined ? leaning : { ...leaning, input: named(full), trust: full.trust };
  });
}

type Spread = Pick<RotorDoubt, 'thrust' | 'torque' | 'correlation'>;

const liftOf = ({ thrust, torque, correlation }: Spread): Partial<Levers> => ({
  thrustScale: 1 + thrust,
  torqueScale: 1 + correlation * torque,
});

const dragOf = ({ torque, correlation }: Spread): Partial<Levers> => ({
  torqueScale: 1 + torque * Math.sqrt(1 - correlation ** 2),
});

const raise = (levers: Partial<Levers>): Doubted => ({
  levers: { ...neutralLevers, ...levers },
  balanceShift: 0,
});

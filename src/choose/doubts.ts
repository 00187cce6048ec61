import type { Doubted } from '../assess/levers.ts';
import type { Flight } from '../assess/parts/types.ts';
import type { Craft, Unknown } from '../build/craft.ts';
import { type Levers, neutralLevers } from '../flight/types.ts';
import type { Trust } from '../units/trusted.ts';

/** One group of inputs that are not known and lean on each other. */
export interface DoubtFactor {
  /**
   * The same for the same thing in two builds: one motor in both errs alike in both, and so does the
   * pilot. Draws are looked up by it.
   */
  readonly key: string;
  /** In words: `motor`. */
  readonly label: string;
  readonly trust: Trust;
  readonly inputs: readonly DoubtInput[];
}

/** One standard normal cause and what it moves. */
export interface DoubtInput {
  readonly key: string;
  readonly label: string;
  /** Standard deviation of the logarithm of each lever it moves. */
  readonly levers: Readonly<Partial<Record<keyof Levers, number>>>;
  /** What one standard deviation moves the balance forward [m]. */
  readonly balanceShift?: number;
}

/** See `levers.ts` in assess: how far the balance lies from where it is reckoned [m]. */
const BALANCE_SPREAD = 1.5e-3;

/** Which group a lever belongs to, and whose part it is. Measured together, wrong together. */
const GROUPS: Readonly<
  Record<Unknown['lever'], { readonly group: string; readonly of: keyof Owners | 'all' }>
> = {
  speedConstantScale: { group: 'motor', of: 'motor' },
  windingResistanceScale: { group: 'motor', of: 'motor' },
  noLoadCurrentScale: { group: 'motor', of: 'motor' },
  runningResistanceScale: { group: 'motor losses at speed', of: 'all' },
  coolingScale: { group: 'motor cooling', of: 'all' },
  windingContactScale: { group: 'heat inside the motors', of: 'all' },
  speedLossPlaceScale: { group: 'heat inside the motors', of: 'all' },
  heatCapacityScale: { group: 'heat capacity of the motors', of: 'all' },
  packResistanceScale: { group: 'pack', of: 'pack' },
  packCapacityScale: { group: 'pack', of: 'pack' },
  controllerResistanceScale: { group: 'controllers and wires', of: 'controller' },
  controllerIdleScale: { group: 'controllers and wires', of: 'controller' },
  idleDutyScale: { group: 'controllers and wires', of: 'all' },
  wireResistanceScale: { group: 'controllers and wires', of: 'controller' },
  avionicsPowerScale: { group: 'electronics', of: 'electronics' },
  massScale: { group: 'mass', of: 'frame' },
  downloadScale: { group: 'thrust lost on the arms', of: 'all' },
  guardTurningScale: { group: 'air turned by the guards', of: 'frame' },
  inPlaneScale: { group: 'in-plane force of the rotors', of: 'all' },
  dragScale: { group: 'drag of the airframe', of: 'all' },
  styleScale: { group: 'how hard it is flown', of: 'all' },
};

interface Owners {
  readonly propeller: string;
  readonly motor: string;
  readonly pack: string;
  readonly controller: string;
  readonly electronics: string;
  readonly frame: string;
}

/**
 * The unknowns of a craft as groups of independent standard normal causes: the same levers and spreads
 * that its bands are made of. What is measured or guessed together is grouped (K_V, winding resistance and
 * idle current of a motor; thrust and torque of a propeller), and what belongs to a part carries the
 * part's id, so that builds which share it are drawn alike. What is a fault of our model (cooling, download)
 * errs alike in every build.
 */
export function doubtFactors(craft: Craft, doubt: Flight['doubt']): readonly DoubtFactor[] {
  const { parts } = craft;
  const owners: Owners = {
    propeller: parts.propellers[0]?.id ?? '',
    motor: parts.motors[0]?.id ?? '',
    pack: parts.pack.id,
    controller: (parts.controllers ?? parts.flightController).id,
    electronics: parts.videoLink?.id ?? parts.flightController.id,
    frame: `${parts.frame.id} ${parts.motors[0]?.id ?? ''} ${parts.pack.id}`,
  };
  const factors = new Map<string, { key: string; label: string; trust: Trust; inputs: DoubtInput[] }>();
  const add = (group: string, owner: string, trust: Trust, input: Omit<DoubtInput, 'key'>): void => {
    const key = `${group}|${owner}`;
    const factor = factors.get(key) ?? { key, label: group, trust, inputs: [] };
    factor.inputs.push({ ...input, key: `${key}|${input.label}` });
    factors.set(key, factor);
  };
  const drag = doubt.torque * Math.sqrt(1 - doubt.correlation ** 2);
  add('propeller', owners.propeller, doubt.trust, {
    label: 'propeller lift',
    levers: {
      thrustScale: logarithmic(doubt.thrust),
      torqueScale: logarithmic(doubt.correlation * doubt.torque),
    },
  });
  add('propeller', owners.propeller, doubt.trust, {
    label: 'propeller drag',
    levers: { torqueScale: logarithmic(drag) },
  });
  add('balance', owners.frame, 'inferred', {
    label: 'balance of the finished craft',
    levers: {},
    balanceShift: BALANCE_SPREAD,
  });
  for (const { lever, label, deviation, trust } of craft.unknowns) {
    const { group, of } = GROUPS[lever];
    add(group, of === 'all' ? '' : owners[of], trust, { label, levers: { [lever]: logarithmic(deviation) } });
  }
  return [...factors.values()];
}

/** Of a relative standard deviation, that of a log-normal's logarithm: levers stay above 0. */
const logarithmic = (deviation: number) =>
  Math.sign(deviation) * Math.sqrt(Math.log1p(deviation * deviation));

/** The state when every cause lies `normal(key)` standard deviations off; the median is the nominal state. */
export function doubtedState(factors: readonly DoubtFactor[], normal: (key: string) => number): Doubted {
  const logs = new Map<keyof Levers, number>();
  let balanceShift = 0;
  for (const input of factors.flatMap((factor) => factor.inputs)) {
    const z = normal(input.key);
    balanceShift += z * (input.balanceShift ?? 0);
    for (const lever of Object.keys(input.levers) as (keyof Levers)[]) {
      logs.set(lever, (logs.get(lever) ?? 0) + z * (input.levers[lever] ?? 0));
    }
  }
  const moved = Object.fromEntries([...logs].map(([lever, log]) => [lever, Math.exp(log)]));
  return { levers: { ...neutralLevers, ...moved }, balanceShift };
}

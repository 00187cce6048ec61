import type { Trust } from '../../units/trusted.ts';
import type { CraftParts, CraftWiring, Unknown } from '../craft.ts';
import { motorFacts } from '../infer/motorFacts.ts';
import { SUNDRY_DEVIATION, SUNDRY_SHARE } from '../infer/sundryMass.ts';
import type { Build } from '../schema/build.ts';
import type { Given } from '../schema/fields.ts';

interface Origin {
  readonly trust: Trust;
  readonly source: string;
}

/**
 * One standard deviation, relative, where a maker tells a value without a spread, and where somebody
 * has measured it (common practice, no source).
 */
const USUAL = {
  mass: { maker: 0.03, measured: 0.005, inferred: 0.12 },
  speedConstant: { maker: 0.03, measured: 0.01, inferred: 0.05 },
  windingResistance: { maker: 0.12, measured: 0.03, inferred: 0.3 },
  noLoadCurrent: { maker: 0.15, measured: 0.05, inferred: 0.3 },
  controllerResistance: { maker: 0.2, measured: 0.05, inferred: 0.4 },
  packResistance: { maker: 0.25, measured: 0.08, inferred: 0.3 },
  capacity: { maker: 0.04, measured: 0.015, inferred: 0.08 },
  avionics: { maker: 0.15, measured: 0.05, inferred: 0.3 },
} as const satisfies Record<string, Readonly<Record<Trust, number>>>;

/** Every uncertain input of a craft but its propeller, each with the lever that moves it. */
export function unknownsOf(build: Build, parts: CraftParts, wiring: CraftWiring): readonly Unknown[] {
  const motor = parts.motors[0];
  if (!motor) return [];
  const controller = parts.controllers ?? parts.flightController;
  const bridge = parts.controllers ?? parts.flightController.builtInController;
  const list: Unknown[] = [];
  const add = (
    lever: Unknown['lever'],
    label: string,
    given: Given | undefined,
    part: Origin,
    usual: Readonly<Record<Trust, number>>,
  ) => list.push({ lever, label, ...doubt(given, part, usual) });

  add('speedConstantScale', 'motor speed constant', motor.speedConstant, motor, USUAL.speedConstant);
  add(
    'windingResistanceScale',
    'motor winding resistance',
    motor.windingResistance,
    motor,
    USUAL.windingResistance,
  );
  list.push({
    lever: 'runningResistanceScale',
    label: 'motor losses at speed',
    ...(motorFacts(motor).riseFromTable
      ? { deviation: 0.2, trust: 'maker', source: "full-throttle line of the motor's own thrust table" }
      : {
          deviation: 0.4,
          trust: 'inferred',
          source: 'docs/method/drive.md, from memory of typical thrust tables',
        }),
  });
  add('noLoadCurrentScale', 'motor idle current', motor.noLoadCurrent, motor, USUAL.noLoadCurrent);
  add(
    'controllerResistanceScale',
    'controller resistance',
    bridge?.resistance,
    controller,
    USUAL.controllerResistance,
  );
  add('packResistanceScale', 'pack resistance', parts.pack.cellResistance, parts.pack, USUAL.packResistance);
  add('packCapacityScale', 'pack capacity', parts.pack.capacity, parts.pack, USUAL.capacity);

  const ours: Origin = { trust: 'inferred', source: 'common practice, no source' };
  list.push({
    lever: 'wireResistanceScale',
    label: 'wire lengths',
    deviation: wiring.inferred.length > 0 ? 0.25 : 0.1,
    ...ours,
  });
  const electronics = parts.videoLink ?? parts.flightController;
  list.push({
    lever: 'avionicsPowerScale',
    label: 'power of video, receiver and boards',
    deviation: USUAL.avionics[electronics.trust],
    trust: electronics.trust,
    source: electronics.source,
  });
  list.push({
    lever: 'massScale',
    label: build.measured.mass ? 'all-up mass' : 'mass of the listed parts',
    ...massDoubt(build, parts),
  });
  if (!build.measured.mass) {
    const deviation = SUNDRY_DEVIATION / (1 + SUNDRY_SHARE);
    list.push({ lever: 'massScale', label: 'solder, ties, tape and small screws', deviation, ...ours });
  }
  list.push({ lever: 'coolingScale', label: 'motor cooling', deviation: 0.35, ...ours });
  list.push({ lever: 'windingContactScale', label: 'heat from winding to case', deviation: 0.4, ...ours });
  list.push({ lever: 'speedLossPlaceScale', label: 'where losses at speed heat', deviation: 0.4, ...ours });
  list.push({ lever: 'heatCapacityScale', label: 'heat capacity of the motors', deviation: 0.4, ...ours });
  // Straps, wires and edges are not in the sum of the parts' shapes.
  list.push({ lever: 'dragScale', label: 'drag of the body', deviation: 0.25, ...ours });
  list.push({ lever: 'downloadScale', label: 'thrust lost on the arms', deviation: 0.4, ...ours });
  list.push({ lever: 'styleScale', label: 'how hard it is flown', deviation: 0.15, ...ours });
  return list;
}

/** One standard deviation of the pack's own mass, relative. */
export const packMassDeviation = ({ pack }: Pick<CraftParts, 'pack'>): number =>
  doubt(pack.mass, pack, USUAL.mass).deviation;

/** Of one value: its own spread and trust, else the part's; inferred when the part does not tell it at all. */
function doubt(
  given: Given | undefined,
  part: Origin,
  usual: Readonly<Record<Trust, number>>,
): Origin & { readonly deviation: number } {
  if (!given) {
    const source = 'inferred from the other values of the part';
    return { trust: 'inferred', source, deviation: usual.inferred };
  }
  const trust = given.trust ?? part.trust;
  const own = given.deviation === undefined || given.value === 0 ? undefined : given.deviation / given.value;
  return { trust, source: given.source ?? part.source, deviation: own ?? usual[trust] };
}

/** All-up: parts of one kind err together, different parts independently; a scale settles it. */
function massDoubt(build: Build, parts: CraftParts): Origin & { readonly deviation: number } {
  if (build.measured.mass) {
    return doubt(build.measured.mass, { trust: 'measured', source: 'scale' }, USUAL.mass);
  }
  const motors = parts.motors.length;
  const weighed = [
    { part: parts.frame, count: 1 },
    { part: parts.motors[0], count: motors },
    { part: parts.propellers[0], count: motors },
    { part: parts.controllers, count: parts.controllers?.form === 'single' ? motors : 1 },
    { part: parts.flightController, count: 1 },
    { part: parts.pack, count: 1 },
    { part: parts.videoLink, count: 1 },
    { part: parts.receiver, count: 1 },
    ...parts.cameras.map((part) => ({ part, count: 1 })),
    ...parts.antennas.map((part) => ({ part, count: 1 })),
    ...parts.extras,
  ];
  let total = 0;
  let variance = 0;
  let heaviest = 0;
  let lead: Origin = parts.frame;
  for (const { part, count } of weighed) {
    if (!part) continue;
    const mass = count * part.mass.value;
    const own = doubt(part.mass, part, USUAL.mass);
    const error = own.deviation * mass;
    total += mass;
    variance += error * error;
    if (error > heaviest) {
      heaviest = error;
      lead = { trust: own.trust, source: `${own.source} (${part.name})` };
    }
  }
  return { deviation: total > 0 ? Math.sqrt(variance) / total : 0, trust: lead.trust, source: lead.source };
}

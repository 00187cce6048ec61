import { framePrimitives } from '../../airframe/framePrimitives.ts';
import { itemMass, massProperties, withMeasuredMass } from '../../airframe/massProperties.ts';
import type { Layout, MassItem, MassProperties } from '../../airframe/types.ts';
import { scale3 } from '../../numerics/vector3.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { Craft, CraftMotor, CraftParts, CraftRotor } from '../craft.ts';
import { armDownload } from '../infer/armDownload.ts';
import { frameGeometry } from '../infer/frameGeometry.ts';
import { frameSizes } from '../infer/frameSizes.ts';
import { inferredWords } from '../infer/inferredWords.ts';
import { motorFacts } from '../infer/motorFacts.ts';
import { rotorFacts } from '../infer/rotorFacts.ts';
import { sizeOf } from '../infer/sizes.ts';
import { SUNDRY_SHARE } from '../infer/sundryMass.ts';
import { failed, type Path, pathText, type Reading } from '../read/fileError.ts';
import type { Build } from '../schema/build.ts';
import { isKind, type Shelf } from '../shelf.ts';
import { cameraOf } from './cameraOf.ts';
import {
  avionicsOf,
  controllerModelOf,
  motorLeadOf,
  packModelOf,
  supplyLeadOf,
  wiringOf,
} from './electrics.ts';
import { type BuildPlace, findParts } from './findParts.ts';
import { layoutOf } from './layoutOf.ts';
import { cameraPlaces, discPlace, packPlace, partItems, stackLayers } from './placing.ts';
import { unknownsOf } from './unknowns.ts';

/** For a build that was not read from a file. */
const NOWHERE: BuildPlace = { file: 'build', placeOf: () => ({ line: 1, column: 1 }) };

/**
 * Looks up, infers and places everything of a build. What does not fit is not an error here but a
 * finding later; an error is what leaves no aircraft to speak of: a part that is not on the shelf, a
 * layout that contradicts itself.
 *
 * @param ready rotors already made, by part id, as an earlier craft of the same shelf holds them: matching
 *   a propeller to measured points takes far longer than all the rest
 */
export function resolveBuild(
  build: Build,
  shelf: Shelf,
  where: BuildPlace = NOWHERE,
  ready: ReadonlyMap<string, CraftRotor> = NONE,
): Reading<Craft> {
  const framePart = shelf.parts.get(build.frame.part);
  const told = build.frame.layout ?? (framePart && isKind(framePart, 'frame') ? framePart.layout : undefined);
  const layout = attempt(() => told && layoutOf(told, build.propellers.side), ['frame', 'layout'], where);
  if (!layout.ok) return layout;
  const parts = findParts(build, shelf, layout.value ?? NO_LAYOUT, where);
  if (!parts.ok) return parts;
  if (!layout.value) throw new RangeError('frame: found among the parts, but it has no layout');
  const whole: Layout = layout.value;
  const craft = attempt(() => assemble(build, parts.value, whole, ready), ['frame'], where);
  return craft.ok ? asWeighed(craft.value, where) : craft;
}

/** A scale's word within these of the listed parts' sum is believed: parts may be unlisted, or lighter than told. */
const LIGHTEST = 0.6;
const HEAVIEST = 1.7;

/** A scale that reads far off the sum of the parts is a slip of the unit or of a digit, and would turn every figure. */
function asWeighed(craft: Craft, where: BuildPlace): Reading<Craft> {
  const { mass } = craft.build.measured;
  const sum = craft.massItems.reduce((total, item) => total + itemMass(item), 0);
  if (mass === undefined || (mass.value >= LIGHTEST * sum && mass.value <= HEAVIEST * sum)) {
    return { ok: true, value: craft };
  }
  const path: Path = ['measured', 'mass'];
  const grams = (value: number): string => formatQuantity(value, 'mass');
  return failed([
    {
      file: where.file,
      ...where.placeOf(path),
      path: pathText(path),
      says: `the scale reads ${grams(mass.value)} where the listed parts weigh ${grams(sum)} together`,
      found: grams(mass.value),
      allowed: `${grams(LIGHTEST * sum)} to ${grams(HEAVIEST * sum)}, the sum of the parts and what no list has`,
      remedy: 'Check the unit and the digits of the weighed mass, or the parts of the build.',
    },
  ]);
}

/** The same craft with its pack at another offset [m]: straps go along, and a recording camera that must make room for it. */
export const withPackAt = ({ build, parts, layout, rotors }: Craft, offset: number): Craft =>
  assemble(
    { ...build, pack: { ...build.pack, offset } },
    parts,
    layout,
    new Map(rotors.map((rotor) => [rotor.partId, rotor])),
  );

const NONE: ReadonlyMap<string, CraftRotor> = new Map();
const NO_LAYOUT: Layout = { kind: 'positions', motors: [], diagonal: 0 };

function assemble(
  build: Build,
  parts: CraftParts,
  layout: Layout,
  ready: ReadonlyMap<string, CraftRotor>,
): Craft {
  const sizes = frameSizes(parts.frame, build.frame.armThickness);
  const frame = frameGeometry(parts.frame, layout, sizes);
  const propellers = [...new Map(parts.propellers.map((part) => [part.id, part])).values()];
  const rotors = propellers.map((part) => ready.get(part.id) ?? rotorFacts(part));
  const motors = layout.motors.map((place, index): CraftMotor => {
    const part = parts.motors[index];
    const rotor = propellers.findIndex(({ id }) => id === parts.propellers[index]?.id);
    const facts = part && motorFacts(part);
    const turning = rotors[rotor];
    const arm = frame.arms[place.armIndex];
    if (!facts || !turning || !arm) throw new RangeError(`motors: nothing for ${place.name}`);
    const reach = Math.hypot(place.position[0], place.position[1]);
    return {
      place,
      partId: part.id,
      rotor,
      discPlace: discPlace(place, facts.fit.height, turning.hubThickness, sizes.thickness),
      model: facts.model,
      rotatingInertia: facts.bellInertia + turning.inertia,
      downloadShare: armDownload(arm, turning.blade.diameter),
      motorLead: motorLeadOf(build, facts.leadArea, reach),
      supplyLead: supplyLeadOf(build, parts, reach),
      fit: facts.fit,
    };
  });
  const stack = stackLayers(parts, frame);
  const pack = packPlace(build, parts, frame);
  const cameras = cameraPlaces(build, parts, frame, sizes, pack);
  const wiring = wiringOf(build, parts);
  const massItems = [
    ...frameItems(frame, layout, parts.frame.mass.value),
    ...partItems({ build, parts, frame, sizes, motors, rotors, stack, pack, cameras }),
    ...wiringItems(wiring.main.area, wiring.main.length, sizes.bodyLength, frame.stack.faceZ),
  ];
  const sum = massProperties(massItems);
  return {
    build,
    parts,
    layout,
    frame,
    motors,
    rotors,
    controllerModel: controllerModelOf(parts),
    packModel: packModelOf(build, parts),
    wiring,
    ...avionicsOf(parts),
    cameras: parts.cameras.flatMap((part, index) => {
      const [seat, placed] = [build.cameras[index], cameras[index]];
      return seat && placed ? [cameraOf(part, seat, placed)] : [];
    }),
    massItems,
    massProperties: finished(build, sum),
    sundryMass: build.measured.mass ? 0 : SUNDRY_SHARE * sum.mass,
    pack,
    stack,
    unknowns: unknownsOf(build, parts, wiring),
    inferred: inferredList(build, parts, sizes.inferred, motors, rotors, wiring.inferred),
  };
}

/** The frame's solids, scaled down when they come out heavier than the frame is told to be. */
function frameItems(frame: Craft['frame'], layout: Layout, mass: number): readonly MassItem[] {
  return withMeasuredMass(framePrimitives(frame, layout), 'frame', mass);
}

/** Copper with its insulation, a third more (common practice, no source), behind the stack. */
function wiringItems(area: number, length: number, bodyLength: number, faceZ: number): readonly MassItem[] {
  if (length === 0) return [];
  const mass = 8960 * area * length * 1.35;
  return [
    {
      name: 'pack lead',
      part: 'wiring',
      primitive: { kind: 'rod', length: length / 2, diameter: 2 * Math.sqrt(area) },
      place: [-bodyLength / 2 + length / 8, 0, faceZ - 0.008],
      amount: { mass },
    },
  ];
}

/**
 * A scale's word over the sum's, or the sum with what no list has, spread as the parts are: the whole is scaled
 * alike, the balance point taken as measured.
 */
function finished(build: Build, sum: MassProperties): MassProperties {
  const { mass, balanceX } = build.measured;
  const factor = mass ? mass.value / sum.mass : 1 + SUNDRY_SHARE;
  const [x, y, z] = sum.centreOfGravity;
  return {
    mass: sum.mass * factor,
    centreOfGravity: [balanceX ? balanceX.value : x, y, z],
    inertia: [scale3(sum.inertia[0], factor), scale3(sum.inertia[1], factor), scale3(sum.inertia[2], factor)],
  };
}

function inferredList(
  build: Build,
  parts: CraftParts,
  frame: readonly string[],
  motors: readonly CraftMotor[],
  rotors: readonly CraftRotor[],
  wiring: readonly string[],
): readonly string[] {
  const list = frame.map((field) => `frame: ${inferredWords(field)}`);
  const motor = parts.motors[0];
  if (motor && !motor.windingResistance) list.push('motors: winding resistance');
  if (motor && !motor.noLoadCurrent) list.push('motors: idle current');
  for (const field of motors[0]?.fit.inferred ?? []) list.push(`motors: ${inferredWords(field)}`);
  const rotor = rotors[0];
  if (rotor && rotor.blade.knownBy !== 'blade table') list.push('propellers: blade shape');
  for (const field of rotor?.inferred ?? []) list.push(`propellers: ${inferredWords(field)}`);
  const bridge = parts.controllers ?? parts.flightController.builtInController;
  if (bridge && !bridge.resistance) list.push('controllers: resistance');
  if (!parts.pack.cellResistance) list.push('pack: cell resistance');
  const sized = [
    parts.pack,
    parts.flightController,
    ...parts.cameras,
    ...(parts.videoLink ? [parts.videoLink] : []),
  ];
  for (const part of sized) if (sizeOf(part).inferred) list.push(`${inferredWords(part.kind)}: size`);
  for (const name of wiring) list.push(`wiring: ${name}`);
  if (!build.measured.mass) list.push('mass: solder, ties, tape and small screws');
  return list;
}

/** A contradiction in what a file asks for is an error at its field, not a crash. */
function attempt<T>(make: () => T, path: Path, where: BuildPlace): Reading<T> {
  try {
    return { ok: true, value: make() };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return failed([
      {
        file: where.file,
        ...where.placeOf(path),
        path: pathText(path),
        says: error.message,
        found: 'sizes that contradict each other',
        allowed: 'distances that fit the kind of layout and leave the motors outside the body',
        remedy: 'Check the distances between the motors and the size of the body.',
      },
    ]);
  }
}

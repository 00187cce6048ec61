import { massProperties } from '../../airframe/massProperties.ts';
import { costLines } from '../../assess/money/costLines.ts';
import { inBriefCurrency } from '../../assess/money/price.ts';
import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Part } from '../../build/schema/part.ts';
import { candidateOf } from './candidate.ts';
import { partOf, probeOf } from './probe.ts';
import { choiceAt } from './tables.ts';
import type { SearchContext, ShortlistQuestion } from './types.ts';

/** Copper with its insulation, as `resolveBuild` weighs the pack lead [kg/m3]. */
const LEAD_DENSITY = 8960 * 1.35;
/** As `costLines`: five spare sets and the first; four motors to a board. */
const PROPELLER_SETS = 6;
const MOTORS_A_BOARD = 4;

/**
 * Masses [kg] and least prices [brief's currency] of every part of the space, by seat, so that a
 * combination's are sums. Masses are exact but for rounding. Money is a lower bound: what surely has to be
 * bought. What boxes lack, the bench's lesser things, shipping and rounding up to bags of shared things only
 * ever add to it, so it never exceeds the sum of `costLines` (tested).
 */
export interface Ledger {
  /** All-up mass over the sum of the masses here: what no list has goes with the sum. */
  readonly finishing: number;
  /** By frame. */
  readonly motorCount: Uint8Array;
  readonly frameMass: Float64Array;
  readonly frameCost: Float64Array;
  readonly motorMass: Float64Array;
  readonly propellerMass: Float64Array;
  readonly packMass: Float64Array;
  /** Pack times those wanted, and the charger it asks for. */
  readonly packCost: Float64Array;
  readonly cameraMass: Float64Array;
  readonly cameraCost: Float64Array;
  /** By frame x motor, frame x propeller, frame x electronics: counts hang on the frame. */
  readonly motorCost: Float64Array;
  readonly propellerCost: Float64Array;
  readonly electronicsCost: Float64Array;
  readonly electronicsMass: Float64Array;
  /** By frame x pack: video, receiver, antennas, extras, plug, other cameras. */
  readonly restMass: Float64Array;
  readonly restCost: Float64Array;
}

export function ledgerOf(
  question: ShortlistQuestion,
  context: SearchContext,
  crafts: readonly (Craft | undefined)[],
): Ledger {
  const { space } = question;
  const { brief, shelf } = context;
  const { frames, motors, propellers, packs, electronics, cameras } = space;
  const cost = (part: Part, pieces: number) => leastCost(part, pieces, brief);
  const table = (columns: number, fill: (frame: number, column: number, craft: Craft) => number) =>
    Float64Array.from({ length: frames.length * columns }, (_, at) => {
      const frame = Math.floor(at / columns);
      const craft = crafts[frame];
      return craft === undefined ? 0 : fill(frame, at % columns, craft);
    });
  const part = <K extends Parameters<typeof partOf>[2]>(id: string, kind: K) => partOf(shelf, id, kind);
  const camera = (id: string) => shelf.parts.get(id);
  const count = (craft: Craft) => craft.layout.motors.length;
  const kits = packs.map((_, pack) => kitCost(question, context, crafts, pack));
  return {
    finishing: finishingOf(crafts),
    motorCount: Uint8Array.from(crafts, (craft) => (craft === undefined ? 0 : count(craft))),
    frameMass: Float64Array.from(frames, (id) => part(id, 'frame').mass.value),
    frameCost: Float64Array.from(
      frames,
      (id) => cost(part(id, 'frame'), 1) + spareArm(part(id, 'frame'), brief),
    ),
    motorMass: Float64Array.from(motors, (id) => part(id, 'motor').mass.value),
    propellerMass: Float64Array.from(propellers, (id) => part(id, 'propeller').mass.value),
    packMass: Float64Array.from(packs, (id) => part(id, 'pack').mass.value),
    packCost: Float64Array.from(
      packs,
      (id, at) => cost(part(id, 'pack'), brief.packsWanted) + (kits[at] ?? 0),
    ),
    cameraMass: Float64Array.from(atLeastOne(cameras), (id) => camera(id)?.mass.value ?? 0),
    cameraCost: Float64Array.from(atLeastOne(cameras), (id) => {
      const found = camera(id);
      return found === undefined ? 0 : cost(found, 1);
    }),
    motorCost: table(motors.length, (_, at, craft) => cost(part(motors[at] ?? '', 'motor'), count(craft))),
    propellerCost: table(propellers.length, (_, at, craft) =>
      cost(part(propellers[at] ?? '', 'propeller'), PROPELLER_SETS * count(craft)),
    ),
    electronicsCost: table(electronics.length, (_, at, craft) => {
      const { controllers, flightController } = electronics[at] ?? { flightController: '' };
      const board = cost(part(flightController, 'flightController'), 1);
      if (controllers === undefined) return board;
      const own = part(controllers, 'controller');
      const pieces = own.form === 'single' ? count(craft) : Math.ceil(count(craft) / MOTORS_A_BOARD);
      return board + cost(own, pieces);
    }),
    electronicsMass: table(electronics.length, (_, at, craft) => {
      const { controllers, flightController } = electronics[at] ?? { flightController: '' };
      const board = part(flightController, 'flightController').mass.value;
      const own = controllers === undefined ? undefined : part(controllers, 'controller');
      const pieces = own?.form === 'single' ? count(craft) : 1;
      return board + (own?.mass.value ?? 0) * pieces + leadMass(question, context, at);
    }),
    restMass: table(packs.length, (frame, pack) =>
      restOf(question, context, frame, pack).reduce(
        (sum, each) => sum + each.pieces * each.part.mass.value,
        0,
      ),
    ),
    restCost: table(packs.length, (frame, pack) =>
      restOf(question, context, frame, pack).reduce(
        (sum, each) => sum + (each.part.kind === 'propeller' ? 0 : cost(each.part, each.pieces)),
        0,
      ),
    ),
  };
}

/** As `resolveBuild` finishes any aircraft that was not weighed; no candidate was. */
function finishingOf(crafts: readonly (Craft | undefined)[]): number {
  const craft = crafts.find((each) => each !== undefined);
  return craft === undefined ? 1 : craft.massProperties.mass / massProperties(craft.massItems).mass;
}

const atLeastOne = (ids: readonly string[]) => (ids.length === 0 ? [''] : ids);

/**
 * What so many pieces surely cost. Without rounding up to bags where a bag may be shared with something
 * else on the list; propellers are bought for this seat alone or by the same bag, so their bags count whole.
 */
function leastCost(part: Part, pieces: number, brief: Brief): number {
  if (brief.alreadyOwns.includes(part.id) || brief.alreadyOwns.includes(part.kind)) return 0;
  const price = inBriefCurrency(part.price, brief) ?? 0;
  const bags = part.kind === 'propeller' ? Math.ceil(pieces / part.soldIn) : pieces / part.soldIn;
  return bags * price;
}

function spareArm(frame: Part, brief: Brief): number {
  if (frame.kind !== 'frame' || frame.inTheBox.some((each) => each.item === 'spare arm')) return 0;
  const price = frame.arms.sparePrice;
  return price === undefined ? 0 : (inBriefCurrency(price, brief) ?? 0);
}

/** Pack lead of a choice of electronics: as told, as their board brings it, or by their rating (as `wiringOf`). */
function leadMass({ template, space }: ShortlistQuestion, { shelf }: SearchContext, at: number): number {
  const told = template.wiring.packLead;
  const { controllers, flightController } = space.electronics[at] ?? { flightController: '' };
  const own = controllers === undefined ? undefined : partOf(shelf, controllers, 'controller');
  const rating =
    (own ?? partOf(shelf, flightController, 'flightController').builtInController)?.current.value ?? 20;
  const usual = rating >= 40 ? 2.08e-6 : rating >= 25 ? 1.31e-6 : 0.518e-6;
  return LEAD_DENSITY * (told?.area ?? own?.leadArea ?? usual) * 2 * (told?.length ?? 0.08);
}

/** What a pack asks of the kit: charger, goggles and transmitter, as `costLines` lists them. */
function kitCost(
  question: ShortlistQuestion,
  context: SearchContext,
  crafts: readonly (Craft | undefined)[],
  pack: number,
): number {
  const frame = crafts.findIndex((craft) => craft !== undefined);
  const base = crafts[frame];
  if (base === undefined) return 0;
  const place = { frame, motor: 0, propeller: 0, pack, electronics: 0, camera: 0 };
  const probe = probeOf(base, question.template, choiceAt(question.space, place), context.shelf, undefined);
  const { lines, owned } = costLines(probe, context.brief, context.shelf);
  return lines.reduce((sum, line) => {
    const part = context.shelf.parts.get(line.id.replace(/^kit: /, ''));
    const counts = part?.kind === 'charger' || part?.kind === 'goggles' || part?.kind === 'transmitter';
    return counts && !owned.has(line.id) ? sum + line.count * line.unitPrice : sum;
  }, 0);
}

/** Everything on board that is no searched seat. */
function restOf(
  { template, space }: ShortlistQuestion,
  { shelf }: SearchContext,
  frame: number,
  pack: number,
): readonly { readonly part: Part; readonly pieces: number }[] {
  const choice = choiceAt(space, { frame, motor: 0, propeller: 0, pack, electronics: 0, camera: 0 });
  const build = candidateOf(template, choice, shelf);
  const flying = build.cameras.findIndex(({ role }) => role === 'flying');
  const list = [
    ...build.extras.map(({ part, count }) => ({ id: part, pieces: count })),
    ...build.antennas.map(({ part }) => ({ id: part, pieces: 1 })),
    ...build.cameras.filter((_, index) => index !== flying).map(({ part }) => ({ id: part, pieces: 1 })),
    ...[build.videoLink?.part, build.receiver?.part, build.wiring.connector].map((id) => ({ id, pieces: 1 })),
  ];
  return list.flatMap(({ id, pieces }) => {
    const part = id === undefined ? undefined : shelf.parts.get(id);
    return part === undefined ? [] : [{ part, pieces }];
  });
}

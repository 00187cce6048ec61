import { cellOf, type PreparedSearch, stopAt } from './prepare.ts';
import type { PairTable, Place } from './tables.ts';
import { sizesOf } from './tables.ts';
import { exclude, type Tally } from './tally.ts';

/** Electronics and camera that fit, with their own sums. */
export interface Finish {
  readonly electronics: number;
  readonly camera: number;
  /** [kg] and [brief's currency], of electronics and camera together. */
  readonly mass: number;
  readonly cost: number;
  readonly risks: number;
}

/** Every finish that the pair rules let stand with a frame and a pack: the same for each motor and propeller. */
export interface FinishList {
  readonly finishes: readonly Finish[];
  /** How many of the others each rule takes out. */
  readonly excluded: ReadonlyMap<string, number>;
  /** Of `finishes` [kg], [brief's currency]. */
  readonly heaviest: number;
  readonly dearest: number;
}

/** Of electronics or camera: tables that look at a finish, besides frame and pack. */
const ofFinish = ({ seats }: PairTable) => seats.includes('electronics') || seats.includes('camera');

export function finishListOf(prepared: PreparedSearch, frame: number, pack: number): FinishList {
  const { ledger, question } = prepared;
  const sizes = sizesOf(question.space);
  const tables = prepared.tables.filter(ofFinish);
  const finishes: Finish[] = [];
  const excluded = new Map<string, number>();
  const leaveOut = (because: string, count: number) =>
    excluded.set(because, (excluded.get(because) ?? 0) + count);
  for (let electronics = 0; electronics < sizes.electronics; electronics++) {
    const stop = firstStop(tables, { frame, pack, electronics });
    if (stop !== undefined) {
      leaveOut(stop, sizes.camera);
      continue;
    }
    const at = frame * sizes.electronics + electronics;
    for (let camera = 0; camera < sizes.camera; camera++) {
      const place = { frame, pack, electronics, camera };
      const cameraStop = firstStop(tables, place);
      if (cameraStop !== undefined) {
        leaveOut(cameraStop, 1);
        continue;
      }
      finishes.push({
        electronics,
        camera,
        mass: ledger.finishing * ((ledger.electronicsMass[at] ?? 0) + (ledger.cameraMass[camera] ?? 0)),
        cost: (ledger.electronicsCost[at] ?? 0) + (ledger.cameraCost[camera] ?? 0),
        risks: risksAt(tables, place),
      });
    }
  }
  const most = (of: (each: Finish) => number) =>
    finishes.reduce((largest, each) => Math.max(largest, of(each)), 0);
  return { finishes, excluded, heaviest: most(({ mass }) => mass), dearest: most(({ cost }) => cost) };
}

/** As the mass rule holds it, with room for sums rounded in another order. */
const MASS_SLACK = 1e-6 + 1e-9;

/** Finishes of a list that mass limit and budget allow on top of a base; the others are counted. */
export function allowedFinishes(
  list: FinishList,
  base: { readonly mass: number; readonly cost: number },
  massLimit: number | undefined,
  budget: number,
  tally: Tally,
): readonly Finish[] {
  for (const [because, count] of list.excluded) exclude(tally, because, count);
  const mass = (massLimit ?? Number.POSITIVE_INFINITY) + MASS_SLACK - base.mass;
  const cost = budget * (1 + 1e-12) - base.cost;
  if (list.heaviest <= mass && list.dearest <= cost) return list.finishes;
  let heavy = 0;
  let dear = 0;
  const allowed = list.finishes.filter((each) => {
    if (each.mass > mass) heavy++;
    else if (each.cost > cost) dear++;
    else return true;
    return false;
  });
  exclude(tally, 'mass-limit', heavy);
  exclude(tally, 'budget', dear);
  return allowed;
}

/** The first rule that stops the parts told. */
export function firstStop(tables: readonly PairTable[], place: Partial<Place>): string | undefined {
  for (const table of tables) {
    const stop = stopAt(table, place);
    if (stop !== undefined) return stop;
  }
  return undefined;
}

/** Risks of the rules whose seats are all told. */
export function risksAt(tables: readonly PairTable[], place: Partial<Place>): number {
  let sum = 0;
  for (const table of tables) {
    const at = cellOf(table, place);
    if (at >= 0) sum += table.risks[at] ?? 0;
  }
  return sum;
}

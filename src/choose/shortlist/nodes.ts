import type { Craft } from '../../build/craft.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import { type Ranges, surelyBroken } from './bounds.ts';
import { type DriveBounds, driveBounds } from './drivePoint.ts';
import { budgetOf } from './evaluate.ts';
import {
  allowedFinishes,
  type Finish,
  type FinishList,
  finishListOf,
  firstStop,
  risksAt,
} from './finishes.ts';
import { type ArmEnds, armEndsOf, type FinishEnds, finishEndsOf } from './openEnds.ts';
import { CURRENT_RULES } from './pairRules.ts';
import type { PreparedSearch, SearchTask } from './prepare.ts';
import { probeOf } from './probe.ts';
import type { Searcher } from './searcher.ts';
import { choiceAt, failing, type Place, ruleOf, sizesOf } from './tables.ts';
import { exclude, type Tally } from './tally.ts';
import { NO_RELIEF } from './wakeRelief.ts';

/** Frame, motor, propeller and pack that go together, with every finish that fits and is allowed. */
export interface Node {
  readonly place: Pick<Place, 'frame' | 'motor' | 'propeller' | 'pack'>;
  readonly ranges: Ranges;
  readonly finishes: readonly Finish[];
  /** Without finish: mass [kg], cost [brief's currency], risks. */
  readonly mass: number;
  readonly cost: number;
  readonly risks: number;
  /** Fewest risks that a finish adds. */
  readonly leastFinishRisks: number;
  /** Propeller x packs + pack: its place in the task. */
  readonly order: number;
}

/**
 * Every node of a task, with bounds; combinations that surely break a rule or a limit are counted and left out.
 *
 * @param isWanted false leaves a node out uncounted, by its `order`
 */
export function nodesOf(
  searcher: Searcher,
  task: SearchTask,
  tally: Tally,
  isWanted: (nodePlace: number) => boolean = () => true,
): readonly Node[] {
  const { prepared, context } = searcher;
  const { tables, question } = prepared;
  const sizes = sizesOf(question.space);
  const below = sizes.electronics * sizes.camera;
  const { frame, motor } = task;
  const nodes: Node[] = [];
  const nodeTables = tables.filter(isNode);
  const facts = prepared.motorFacts[motor];
  const base = prepared.crafts[frame];
  if (facts === undefined || base === undefined) return nodes;
  const lists = new Map<number, FinishList>();
  const ends = new Map<number, FinishEnds>();
  for (let propeller = 0; propeller < sizes.propeller; propeller++) {
    const stop = firstStop(tables, { frame, motor, propeller });
    if (stop !== undefined) {
      exclude(tally, stop, sizes.pack * below);
      continue;
    }
    let arms: ArmEnds | undefined;
    for (let pack = 0; pack < sizes.pack; pack++) {
      const order = propeller * sizes.pack + pack;
      if (!isWanted(order)) continue;
      const place = { frame, motor, propeller, pack };
      const packStop = firstStop(tables, place);
      if (packStop !== undefined) {
        exclude(tally, packStop, below);
        continue;
      }
      const list = lists.get(pack) ?? finishListOf(prepared, frame, pack);
      lists.set(pack, list);
      const sums = sumsOf(prepared, place);
      const finishes = allowedFinishes(list, sums, context.brief.massLimit, budgetOf(context), tally);
      if (finishes.length === 0) continue;
      const rotor = prepared.rotors[propeller];
      const choice = choiceAt(question.space, { ...place, electronics: 0, camera: 0 });
      const probe = probeOf(base, question.template, choice, context.shelf, rotor, facts);
      arms ??= armEndsOf(probe, facts.leadArea);
      // Over all that fit, so that every propeller shares them: a little wider than what mass and money leave.
      const open = ends.get(pack) ?? finishEndsOf(prepared, context, pack, probe, list.finishes);
      ends.set(pack, open);
      const bare: Omit<Node, 'ranges'> = {
        place,
        finishes,
        ...sums,
        risks: prepared.sharedRisks + risksAt(nodeTables, place),
        leastFinishRisks: leastOf(finishes, (each) => each.risks),
        order,
      };
      const node = withDrive(searcher, bare, probe, { arms, finish: open }, tally);
      if (node !== undefined) nodes.push(node);
    }
  }
  return nodes;
}

/** Mass [kg] and least cost [brief's currency] of all but electronics and camera. */
function sumsOf({ ledger, question }: PreparedSearch, { frame, motor, propeller, pack }: Node['place']) {
  const sizes = sizesOf(question.space);
  const motors = ledger.motorCount[frame] ?? 0;
  const at = frame * sizes.pack + pack;
  return {
    mass:
      ledger.finishing *
      ((ledger.frameMass[frame] ?? 0) +
        motors * ((ledger.motorMass[motor] ?? 0) + (ledger.propellerMass[propeller] ?? 0)) +
        (ledger.packMass[pack] ?? 0) +
        (ledger.restMass[at] ?? 0)),
    cost:
      (ledger.frameCost[frame] ?? 0) +
      (ledger.motorCost[frame * sizes.motor + motor] ?? 0) +
      (ledger.propellerCost[frame * sizes.propeller + propeller] ?? 0) +
      (ledger.packCost[pack] ?? 0) +
      (ledger.restCost[at] ?? 0),
  };
}

const leastOf = <T>(items: readonly T[], of: (item: T) => number) =>
  items.reduce((least, each) => Math.min(least, of(each)), Number.POSITIVE_INFINITY);

const isNode = ({ seats }: { readonly seats: readonly string[] }) =>
  !seats.includes('electronics') && !seats.includes('camera');

/** Adds the drive bounds and the current rules; undefined when they take out everything. */
function withDrive(
  searcher: Searcher,
  node: Omit<Node, 'ranges'>,
  probe: Craft,
  open: OpenEnds,
  tally: Tally,
): Node | undefined {
  const { prepared, context } = searcher;
  const { finishes } = node;
  const heaviest = -leastOf(finishes, ({ mass }) => -mass);
  const rough: Ranges = {
    mass: [node.mass + leastOf(finishes, ({ mass }) => mass), node.mass + heaviest],
    cost: node.cost + leastOf(finishes, ({ cost }) => cost),
    packMass: prepared.ledger.packMass[node.place.pack] ?? 0,
    risks: node.risks + node.leastFinishRisks,
  };
  const leaveOut = (because: string) => {
    exclude(tally, because, finishes.length);
    return undefined;
  };
  const drive = driveOf(searcher, probe, open, rough);
  if (drive === undefined) return leaveOut('no-hover');
  const held = heldAgainst(CURRENT_RULES, probe, drive, context);
  if (held.stop !== undefined) return leaveOut(held.stop);
  const ranges = { ...rough, risks: rough.risks + held.risks, drive };
  const broken = surelyBroken(prepared.question, ranges);
  return broken === undefined ? { ...node, ranges } : leaveOut(broken);
}

/** What rules make of a craft at the bounds of its currents: the first stop, and how many mark it with a risk. */
export function heldAgainst(
  rules: readonly string[],
  craft: Craft,
  drive: DriveBounds,
  context: Searcher['context'],
): { readonly stop?: string; readonly risks: number } {
  const figures = {
    peakMotorCurrent: drive.motorCurrent,
    peakPackCurrent: drive.packCurrent,
    fullThrottleCellVoltage: drive.cellVoltage,
  };
  let risks = 0;
  for (const rule of rules) {
    for (const { severity } of failing(ruleOf(rule), { craft, ...context, gaps: [], figures })) {
      if (severity === 'stop') return { stop: rule, risks };
      if (severity === 'risk') risks++;
    }
  }
  return { risks };
}

interface OpenEnds {
  readonly arms: ArmEnds;
  readonly finish: FinishEnds;
}

/** Drive bounds of a probe between open ends, for masses in the ranges; undefined when none of them can hover. */
export function driveOf(
  { prepared, context, style, wakeReliefs }: Searcher,
  probe: Craft,
  { arms, finish }: OpenEnds,
  { mass }: Ranges,
): DriveBounds | undefined {
  const id = probe.rotors[0]?.partId ?? '';
  const read = context.rotors.get(id)?.read;
  if (read === undefined) return undefined;
  const model = flightModelOf(probe, [read], prepared.air, context.brief.reserve);
  return driveBounds(
    { model, air: prepared.air, wakeRelief: wakeReliefs.get(id) ?? NO_RELIEF },
    { ...arms.light, ...finish.light, mass: mass[0] },
    { ...arms.heavy, ...finish.heavy, mass: mass[1] },
    style,
  );
}

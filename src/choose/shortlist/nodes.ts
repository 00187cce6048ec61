import type { Craft } from '../../build/craft.ts';
import { armDownload } from '../../build/infer/armDownload.ts';
import { motorFacts } from '../../build/infer/motorFacts.ts';
import { motorLeadOf, supplyLeadOf } from '../../build/resolve/electrics.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import type { ControllerModel, WireModel } from '../../drive/types.ts';
import { wireResistance } from '../../drive/wire.ts';
import { type Ranges, surelyBroken } from './bounds.ts';
import { type DriveBounds, driveBounds, type Ends } from './drivePoint.ts';
import { budgetOf } from './evaluate.ts';
import { CURRENT_RULES } from './pairRules.ts';
import { cellOf, type PreparedSearch, type SearchTask, stopAt } from './prepare.ts';
import { partOf, probeOf } from './probe.ts';
import type { Searcher } from './searcher.ts';
import { choiceAt, failing, type Place, ruleOf, sizesOf } from './tables.ts';
import { exclude, type Tally } from './tally.ts';
import { NO_RELIEF } from './wakeRelief.ts';

/** Electronics and camera that fit, with their own sums. */
export interface Finish {
  readonly electronics: number;
  readonly camera: number;
  /** [kg] and [brief's currency], of electronics and camera together. */
  readonly mass: number;
  readonly cost: number;
  readonly risks: number;
}

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
  readonly leafCount: number;
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
  const { tables, ledger, question } = prepared;
  const sizes = sizesOf(question.space);
  const below = sizes.electronics * sizes.camera;
  const { frame, motor } = task;
  const nodes: Node[] = [];
  const nodeTables = tables.filter(isNode);
  for (let propeller = 0; propeller < sizes.propeller; propeller++) {
    const stop = firstStop(prepared, { frame, motor, propeller });
    if (stop !== undefined) {
      exclude(tally, stop, sizes.pack * below);
      continue;
    }
    for (let pack = 0; pack < sizes.pack; pack++) {
      const order = propeller * sizes.pack + pack;
      if (!isWanted(order)) continue;
      const place = { frame, motor, propeller, pack };
      const packStop = firstStop(prepared, place);
      if (packStop !== undefined) {
        exclude(tally, packStop, below);
        continue;
      }
      const motors = ledger.motorCount[frame] ?? 0;
      const at = frame * sizes.pack + pack;
      const mass =
        (ledger.frameMass[frame] ?? 0) +
        motors * ((ledger.motorMass[motor] ?? 0) + (ledger.propellerMass[propeller] ?? 0)) +
        (ledger.packMass[pack] ?? 0) +
        (ledger.restMass[at] ?? 0);
      const cost =
        (ledger.frameCost[frame] ?? 0) +
        (ledger.motorCost[frame * sizes.motor + motor] ?? 0) +
        (ledger.propellerCost[frame * sizes.propeller + propeller] ?? 0) +
        (ledger.packCost[pack] ?? 0) +
        (ledger.restCost[at] ?? 0);
      const finishes = finishesOf(
        prepared,
        place,
        { mass, cost },
        context.brief.massLimit,
        budgetOf(context),
        tally,
      );
      if (finishes.length === 0) continue;
      const risks = prepared.sharedRisks + risksAt(nodeTables, place);
      const node = withDrive(
        searcher,
        {
          place,
          finishes,
          mass,
          cost,
          risks,
          leastFinishRisks: Math.min(...finishes.map((each) => each.risks)),
          leafCount: finishes.length,
          order,
        },
        tally,
      );
      if (node !== undefined) nodes.push(node);
    }
  }
  return nodes;
}

const isNode = ({ seats }: { readonly seats: readonly string[] }) =>
  !seats.includes('electronics') && !seats.includes('camera');

function firstStop(prepared: PreparedSearch, place: Partial<Place>): string | undefined {
  for (const table of prepared.tables) {
    const stop = stopAt(table, place);
    if (stop !== undefined) return stop;
  }
  return undefined;
}

function risksAt(tables: PreparedSearch['tables'], place: Partial<Place>): number {
  let sum = 0;
  for (const table of tables) {
    const at = cellOf(table, place);
    if (at >= 0) sum += table.risks[at] ?? 0;
  }
  return sum;
}

/** As the mass rule holds it, with room for sums rounded in another order. */
const MASS_SLACK = 1e-6 + 1e-9;

function finishesOf(
  prepared: PreparedSearch,
  place: Node['place'],
  base: { readonly mass: number; readonly cost: number },
  massLimit: number | undefined,
  budget: number,
  tally: Tally,
): readonly Finish[] {
  const { ledger, question, tables } = prepared;
  const sizes = sizesOf(question.space);
  const finishTables = tables.filter((table) => !isNode(table));
  const list: Finish[] = [];
  for (let electronics = 0; electronics < sizes.electronics; electronics++) {
    const stop = firstStop(prepared, { ...place, electronics });
    if (stop !== undefined) {
      exclude(tally, stop, sizes.camera);
      continue;
    }
    const at = place.frame * sizes.electronics + electronics;
    for (let camera = 0; camera < sizes.camera; camera++) {
      const whole = { ...place, electronics, camera };
      const cameraStop = firstStop(prepared, whole);
      const mass = (ledger.electronicsMass[at] ?? 0) + (ledger.cameraMass[camera] ?? 0);
      const cost = (ledger.electronicsCost[at] ?? 0) + (ledger.cameraCost[camera] ?? 0);
      if (cameraStop !== undefined) exclude(tally, cameraStop, 1);
      else if (base.mass + mass > (massLimit ?? Number.POSITIVE_INFINITY) + MASS_SLACK)
        exclude(tally, 'mass-limit', 1);
      else if (base.cost + cost > budget * (1 + 1e-12)) exclude(tally, 'budget', 1);
      else list.push({ electronics, camera, mass, cost, risks: risksAt(finishTables, whole) });
    }
  }
  return list;
}

/** Adds the drive bounds and the current rules; undefined when they take out everything. */
function withDrive(searcher: Searcher, node: Omit<Node, 'ranges'>, tally: Tally): Node | undefined {
  const { prepared, context } = searcher;
  const { question } = prepared;
  const masses = node.finishes.map(({ mass }) => node.mass + mass);
  const rough: Ranges = {
    mass: [Math.min(...masses), Math.max(...masses)],
    cost: node.cost + Math.min(...node.finishes.map(({ cost }) => cost)),
    packMass: prepared.ledger.packMass[node.place.pack] ?? 0,
    risks: node.risks + node.leastFinishRisks,
  };
  const drive = driveOf(searcher, node, rough);
  if (drive === undefined) {
    exclude(tally, 'no-hover', node.leafCount);
    return undefined;
  }
  const base = prepared.crafts[node.place.frame];
  if (base === undefined) return undefined;
  const choice = choiceAt(question.space, { ...node.place, electronics: 0, camera: 0 });
  const craft = probeOf(
    base,
    question.template,
    choice,
    context.shelf,
    prepared.rotors[node.place.propeller],
  );
  const held = heldAgainst(CURRENT_RULES, craft, drive, context);
  if (held.stop !== undefined) {
    exclude(tally, held.stop, node.leafCount);
    return undefined;
  }
  const ranges = { ...rough, risks: rough.risks + held.risks, drive };
  const broken = surelyBroken(question, ranges);
  if (broken !== undefined) {
    exclude(tally, broken, node.leafCount);
    return undefined;
  }
  return { ...node, ranges };
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

/** Drive bounds over a node's finishes, for masses in the ranges; undefined when none of them can hover. */
export function driveOf(
  { prepared, context, style, wakeReliefs }: Searcher,
  node: Pick<Node, 'place' | 'finishes'>,
  ranges: Ranges,
): DriveBounds | undefined {
  const { question, electric, air } = prepared;
  const { template, space } = question;
  const { shelf, brief, rotors } = context;
  const craft = prepared.crafts[node.place.frame];
  const rotor = prepared.rotors[node.place.propeller];
  const read = rotors.get(rotor?.partId ?? '')?.read;
  if (craft === undefined || rotor === undefined || read === undefined) return undefined;
  const motor = motorFacts(partOf(shelf, space.motors[node.place.motor] ?? '', 'motor'));
  const first = choiceAt(space, { ...node.place, electronics: 0, camera: 0 });
  const probe = probeOf(craft, template, first, shelf, rotor);
  const reaches = craft.motors.map(({ place }) => Math.hypot(place.position[0], place.position[1]));
  const downloads = craft.motors.map(({ place }) => {
    const arm = craft.frame.arms[place.armIndex];
    return arm === undefined ? 0 : armDownload(arm, rotor.blade.diameter);
  });
  const boards = [...new Set(node.finishes.map(({ electronics }) => electronics))];
  const controllers = boards.flatMap((board) => electric.controllers[board] ?? []);
  const wirings = boards.map((board) => node.place.pack * space.electronics.length + board);
  const mains = wirings.flatMap((at) => electric.mainWires[at] ?? []);
  const plugs = wirings.map((at) => electric.connectorResistances[at] ?? 0);
  const cameras = Math.max(1, space.cameras.length);
  const powers = node.finishes.map(
    (each) => electric.avionicsPower[each.electronics * cameras + each.camera] ?? 0,
  );
  const leads = reaches.map((reach) => motorLeadOf(probe.build, motor.leadArea, reach));
  const supplies = boards.flatMap((board) => {
    const choice = choiceAt(space, { ...node.place, electronics: board, camera: 0 });
    const controller = choice.electronics.controllers;
    const single = electric.single[board] === true && controller !== undefined;
    const { controllers: _, ...parts } = probe.parts;
    const own = single ? { ...parts, controllers: partOf(shelf, controller, 'controller') } : parts;
    return reaches.map((reach) => supplyLeadOf(probe.build, own, reach));
  });
  const end = (pick: PickEnd, mass: number): Ends => ({
    controller: mergeControllers(controllers, pick),
    mainWire: wireBy(mains, pick),
    connectorResistance: pick(...plugs),
    supplyLead: wireBy(supplies, pick),
    motorLead: wireBy(leads, pick),
    downloadShare: pick(...downloads),
    avionicsPower: pick(...powers),
    mass,
  });
  const wakeRelief = wakeReliefs.get(rotor.partId) ?? NO_RELIEF;
  const train = { model: flightModelOf(probe, [read], air, brief.reserve), air, wakeRelief };
  return driveBounds(train, end(Math.min, ranges.mass[0]), end(Math.max, ranges.mass[1]), style);
}

type PickEnd = (...values: readonly number[]) => number;

/** Each property at the least or the most of all. */
function mergeControllers(all: readonly ControllerModel[], pick: PickEnd): ControllerModel {
  const [first] = all;
  if (first === undefined) throw new RangeError('controllers: none');
  const of = (property: (each: ControllerModel) => number) => pick(...all.map(property));
  return {
    ...first,
    resistance: of((each) => each.resistance),
    // Only their product counts.
    switchingTime: of((each) => each.switchingTime * each.pulseFrequency),
    pulseFrequency: 1,
    idleCurrent: of((each) => each.idleCurrent),
  };
}

function wireBy(wires: readonly WireModel[], pick: PickEnd): WireModel {
  const target = pick(...wires.map(wireResistance));
  const found = wires.find((wire) => wireResistance(wire) === target);
  if (found === undefined) throw new RangeError('wires: none');
  return found;
}

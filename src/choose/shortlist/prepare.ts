import type { Air } from '../../air/standardAtmosphere.ts';
import { airOf } from '../../assess/dayOf.ts';
import type { Craft, CraftRotor } from '../../build/craft.ts';
import { type MotorFacts, motorFacts } from '../../build/infer/motorFacts.ts';
import { rotorFacts } from '../../build/infer/rotorFacts.ts';
import { avionicsOf, controllerModelOf, wiringOf } from '../../build/resolve/electrics.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { ControllerModel, WireModel } from '../../drive/types.ts';
import { candidateOf } from './candidate.ts';
import { type Ledger, ledgerOf } from './ledger.ts';
import { partOf, probeOf } from './probe.ts';
import { checkWant } from './softWants.ts';
import { choiceAt, type PairTable, type Place, pairTables, sharedRisks, sizesOf } from './tables.ts';
import type { SearchContext, ShortlistQuestion } from './types.ts';

/** What the electronics do to the drivetrain, by place. */
export interface ElectricTables {
  /** By electronics. */
  readonly controllers: readonly ControllerModel[];
  readonly single: readonly boolean[];
  /** By pack x electronics. */
  readonly mainWires: readonly WireModel[];
  readonly connectorResistances: Float64Array;
  /** By electronics x camera [W]. */
  readonly avionicsPower: Float64Array;
}

/** A pair of frame and motor that goes together: one piece of the work, done by one worker in one go. */
export interface SearchTask {
  readonly frame: number;
  readonly motor: number;
}

/** Everything a search needs that is computed once: plain data, so that it can be sent to workers. */
export interface PreparedSearch {
  readonly question: ShortlistQuestion;
  readonly air: Air;
  /** One a frame of the space; undefined where a frame makes no aircraft. */
  readonly crafts: readonly (Craft | undefined)[];
  readonly rotors: readonly CraftRotor[];
  /** By motor. */
  readonly motorFacts: readonly MotorFacts[];
  readonly tables: readonly PairTable[];
  readonly ledger: Ledger;
  readonly electric: ElectricTables;
  /** Risks that every combination has. */
  readonly sharedRisks: number;
  readonly tasks: readonly SearchTask[];
  /** Propellers that some frame and motor can carry: only these need a map. */
  readonly usedPropellers: readonly string[];
}

/** @throws RangeError for a want without extent, an empty seat, or a template whose parts are not on the shelf */
export function prepareSearch(question: ShortlistQuestion, context: SearchContext): PreparedSearch {
  for (const want of question.wants) checkWant(want);
  if (question.wants.length === 0) throw new RangeError('wants: at least one; found none');
  const { space, template } = question;
  const sizes = sizesOf(space);
  for (const [seat, size] of Object.entries(sizes)) {
    if (size === 0) throw new RangeError(`${seat}: the shelf has none to choose from`);
  }
  const rotors = space.propellers.map(
    (id) => context.blades?.get(id) ?? rotorFacts(partOf(context.shelf, id, 'propeller')),
  );
  const ready = new Map(rotors.map((rotor) => [rotor.partId, rotor]));
  const crafts = space.frames.map((_, frame) => {
    const choice = choiceAt(space, { frame, motor: 0, propeller: 0, pack: 0, electronics: 0, camera: 0 });
    const craft = resolveBuild(candidateOf(template, choice, context.shelf), context.shelf, undefined, ready);
    return craft.ok ? craft.value : undefined;
  });
  const base = crafts.find((craft) => craft !== undefined);
  if (base === undefined) throw new RangeError('template: none of its frames makes an aircraft');
  const tables = pairTables(question, context, crafts, rotors);
  const fits = (place: Partial<Place>) => tables.every((table) => stopAt(table, place) === undefined);
  const tasks = space.frames.flatMap((_, frame) =>
    space.motors.flatMap((__, motor) => (fits({ frame, motor }) ? [{ frame, motor }] : [])),
  );
  const usedPropellers = space.propellers.filter((_, propeller) =>
    tasks.some((task) => fits({ ...task, propeller })),
  );
  return {
    question,
    air: airOf(context.brief),
    crafts,
    rotors,
    motorFacts: space.motors.map((id) => motorFacts(partOf(context.shelf, id, 'motor'))),
    tables,
    ledger: ledgerOf(question, context, crafts),
    electric: electricTables(question, context, base),
    sharedRisks: sharedRisks(question, context, base),
    tasks,
    usedPropellers,
  };
}

/** The rule that stops the parts at a place, or undefined; a table some of whose seats are not told says nothing. */
export function stopAt(table: PairTable, place: Partial<Place>): string | undefined {
  const at = cellOf(table, place);
  const code = at < 0 ? 0 : (table.stops[at] ?? 0);
  return code === 0 ? undefined : table.rules[code - 1];
}

/** Index of a place's cell in a table; -1 where a seat of the table is not told. */
export function cellOf({ seats, strides }: PairTable, place: Partial<Place>): number {
  let at = 0;
  for (const [k, seat] of seats.entries()) {
    const index = place[seat];
    if (index === undefined) return -1;
    at += index * (strides[k] ?? 1);
  }
  return at;
}

function electricTables(question: ShortlistQuestion, context: SearchContext, base: Craft): ElectricTables {
  const { space, template } = question;
  const sizes = sizesOf(space);
  const probe = (place: Partial<Place>) => {
    const whole = { frame: 0, motor: 0, propeller: 0, pack: 0, electronics: 0, camera: 0, ...place };
    return probeOf(base, template, choiceAt(space, whole), context.shelf, undefined);
  };
  const boards = space.electronics.map((_, electronics) => probe({ electronics }));
  const wirings = Array.from({ length: sizes.pack * sizes.electronics }, (_, at) => {
    const place = { pack: Math.floor(at / sizes.electronics), electronics: at % sizes.electronics };
    const craft = probe(place);
    return wiringOf(craft.build, craft.parts);
  });
  return {
    controllers: boards.map(({ parts }) => controllerModelOf(parts)),
    single: boards.map(({ parts }) => parts.controllers?.form === 'single'),
    mainWires: wirings.map(({ main }) => main),
    connectorResistances: Float64Array.from(wirings, ({ connector }) => connector.resistance),
    avionicsPower: Float64Array.from({ length: sizes.electronics * sizes.camera }, (_, at) => {
      const place = { electronics: Math.floor(at / sizes.camera), camera: at % sizes.camera };
      return avionicsOf(probe(place).parts).avionicsPower;
    }),
  };
}

import { tipGaps } from '../../airframe/tipGaps.ts';
import type { Obstacle, TipGap } from '../../airframe/types.ts';
import { fitRules } from '../../assess/fit/fitLines.ts';
import type { FitContext, FitRule } from '../../assess/fit/types.ts';
import type { Craft, CraftRotor } from '../../build/craft.ts';
import { CARRIED_CAMERA_RULE, PAIR_RULES, SEARCHED, type Searched, SHARED_RULES } from './pairRules.ts';
import { probeOf } from './probe.ts';
import type { Choice, SearchContext, SearchSpace, ShortlistQuestion } from './types.ts';

/** Verdicts of the pair rules over the parts of a few seats: plain data for any worker. */
export interface PairTable {
  readonly seats: readonly Searched[];
  /** How far one step in each seat goes. */
  readonly strides: readonly number[];
  /** 0 where the parts may go together, else 1 + index into `rules`. */
  readonly stops: Uint8Array;
  /** How many of the rules mark them with a risk. */
  readonly risks: Uint8Array;
  readonly rules: readonly string[];
}

/** Index of a part for each seat. */
export type Place = Readonly<Record<Searched, number>>;

export const sizesOf = (space: SearchSpace): Readonly<Record<Searched, number>> => ({
  frame: space.frames.length,
  motor: space.motors.length,
  propeller: space.propellers.length,
  pack: space.packs.length,
  electronics: space.electronics.length,
  camera: Math.max(1, space.cameras.length),
});

/** The parts at a place. */
export function choiceAt(space: SearchSpace, place: Place): Choice {
  const camera = space.cameras[place.camera];
  const electronics = space.electronics[place.electronics];
  if (electronics === undefined) throw new RangeError(`place: no electronics at ${place.electronics}`);
  return {
    frame: space.frames[place.frame] ?? '',
    motor: space.motors[place.motor] ?? '',
    propeller: space.propellers[place.propeller] ?? '',
    pack: space.packs[place.pack] ?? '',
    electronics,
    ...(camera === undefined ? {} : { camera }),
  };
}

/**
 * Looks at every pair of parts once with the very rules of `assess`. A frame that makes no aircraft at all
 * (`crafts` holds none) stops every pair of its row.
 *
 * @param crafts one resolved craft a frame of the space, undefined where the frame makes no aircraft
 */
export function pairTables(
  question: ShortlistQuestion,
  context: SearchContext,
  crafts: readonly (Craft | undefined)[],
  rotors: readonly CraftRotor[],
): readonly PairTable[] {
  const sizes = sizesOf(question.space);
  const anyFrame = crafts.findIndex((craft) => craft !== undefined);
  const carried = context.shelf.parts.get(context.brief.mustCarry ?? '');
  return PAIR_RULES.map(({ seats, rules: own }): PairTable => {
    const extra = seats.includes('camera') && seats.includes('frame') && carried?.kind === 'camera';
    const rules = extra ? [...own, CARRIED_CAMERA_RULE] : own;
    const looked = rules.map(ruleOf);
    const strides = seats.map((_, at) =>
      seats.slice(at + 1).reduce((product, seat) => product * sizes[seat], 1),
    );
    const stops = new Uint8Array(seats.reduce((product, seat) => product * sizes[seat], 1));
    const risks = new Uint8Array(stops.length);
    for (let at = 0; at < stops.length; at++) {
      const known = seats.map((seat, k) => [seat, Math.floor(at / (strides[k] ?? 1)) % sizes[seat]] as const);
      const place = placeOf(Object.fromEntries(known), Math.max(anyFrame, 0));
      const base = crafts[place.frame];
      if (base === undefined) {
        stops[at] = 1;
        continue;
      }
      const rotor = rotors[place.propeller];
      const craft = probeOf(base, question.template, choiceAt(question.space, place), context.shelf, rotor);
      const gaps = seats.includes('propeller') && rotor !== undefined ? bareGaps(base, rotor) : [];
      for (const [index, rule] of looked.entries()) {
        for (const line of failing(rule, { craft, ...context, gaps, figures: {} })) {
          if (line.severity === 'stop' && stops[at] === 0) stops[at] = index + 1;
          if (line.severity === 'risk') risks[at] = (risks[at] ?? 0) + 1;
        }
      }
    }
    return { seats, strides, stops, risks, rules };
  });
}

/** Risks that every combination has, whatever is chosen. */
export function sharedRisks(question: ShortlistQuestion, context: SearchContext, base: Craft): number {
  const { template, space } = question;
  const craft = probeOf(base, template, choiceAt(space, placeOf({}, 0)), context.shelf, undefined);
  return SHARED_RULES.map(ruleOf)
    .flatMap((rule) => failing(rule, { craft, ...context, gaps: [], figures: {} }))
    .filter((line) => line.severity === 'risk').length;
}

export function failing(rule: FitRule, context: FitContext) {
  return rule.look(context).filter((line) => !line.passes);
}

export function ruleOf(id: string): FitRule {
  const rule = fitRules.find((each) => each.id === id);
  if (rule === undefined) throw new RangeError(`rules: no fit rule is called ${id}`);
  return rule;
}

/** Gaps that frame and propeller fix between them: disc to disc, and to the guards' rings. */
function bareGaps(base: Craft, rotor: CraftRotor): readonly TipGap[] {
  const rings = base.frame.guards.map(
    ({ motor, innerRadius }): Obstacle => ({
      name: 'its guard',
      part: 'guards',
      shape: 'ring',
      motor,
      innerRadius,
    }),
  );
  return tipGaps(base.layout, rotor.blade.diameter, rings);
}

function placeOf(known: Partial<Place>, frame: number): Place {
  const first = Object.fromEntries(SEARCHED.map((seat) => [seat, 0])) as Record<Searched, number>;
  return { ...first, frame, ...known };
}

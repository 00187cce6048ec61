import { SURFACES } from '../../../airframe/hits.ts';
import type { Craft } from '../../../build/craft.ts';
import type { BreakingSpeed, HitKind } from '../../../knocks/types.ts';
import { usualHits } from '../../../knocks/usualPilots.ts';
import type { HitReport, HitsReport, HitWay } from '../airframeData.ts';
import { bladeForce } from '../hits/bladeForce.ts';
import type { KnockWay } from './ways.ts';

/** Where crashes end: mostly on grass, now and then in a tree or on a post, seldom on stone (common practice, no source). */
const ENDS: Readonly<Record<string, number>> = { grass: 0.7, wood: 0.2, concrete: 0.1 };
/**
 * The hits of the airframe are square ones; a crash meets a surface that lies any way to its path, and only the
 * speed square to it is stopped. Met at random, the square share u is met as often as it is large (Lambert's
 * cosine law: u2 even between 0 and 1), so that ln u has mean -1/2 and deviation 1/2: exactly, no setting of ours.
 */
const SQUARELY = Math.exp(-1 / 2);
const SQUARE_SPREAD = 1 / 2;

/** Every usual way of crashing against every surface. */
export function hitKinds(purpose: Parameters<typeof usualHits>[0]): readonly HitKind[] {
  return usualHits(purpose).flatMap((kind) =>
    SURFACES.map(({ name }) => ({
      ...kind,
      id: kindId(kind.id, name),
      weight: kind.weight * (ENDS[name] ?? 0.1),
    })),
  );
}

export const kindId = (way: string, surface: string): string => `${way} on ${surface}`;

/** The way of the forecast by those of the airframe: who flies into something meets it with a front motor. */
const WAY: Readonly<Record<KnockWay, HitWay>> = {
  flat: 'flat',
  'end-on': 'from ahead',
  'side-on': 'side-on',
  'prop strike': 'prop strike',
};

/** Speeds at which one of the arms breaks, the middle one of those that may be struck. */
export function armBreaks(report: HitsReport): readonly BreakingSpeed[] {
  const ways = ['flat', 'end-on', 'side-on'] as const;
  return ways.flatMap((way) =>
    SURFACES.flatMap(({ name }): readonly BreakingSpeed[] => {
      const middle = middleHit(report, WAY[way], name) ?? middleHit(report, 'end-on', name);
      if (middle?.breakingSpeed === undefined) return [];
      return [
        {
          hit: kindId(way, name),
          median: middle.breakingSpeed / SQUARELY,
          logDeviation: Math.hypot(middle.logDeviation, SQUARE_SPREAD),
          reached: 1,
        },
      ];
    }),
  );
}

function middleHit(report: HitsReport, way: HitWay, surface: string): HitReport | undefined {
  const found = report.hits
    .filter((each) => each.way === way && each.surface === surface)
    .sort((a, b) => (a.breakingSpeed ?? 0) - (b.breakingSpeed ?? 0));
  return found[Math.floor((found.length - 1) / 2)];
}

/** Yield of a hardened shaft [Pa], and the scatter of shafts, bells and bearings (from memory; common practice). */
const SHAFT_STRENGTH = 1.2e9;
const MOTOR_SCATTER = 0.4;
/** Inside the bell a small motor's shaft is thicker than its propeller's seat: this share of the bell (common practice). */
const INNER_SHAFT = 0.15;

/** A struck bell bends its shaft when the force on its middle is more than the shaft's yield bears. */
export function motorBreaks(craft: Craft, report: HitsReport): readonly BreakingSpeed[] {
  const fit = craft.motors[0]?.fit;
  if (fit === undefined) return [];
  const shaft = Math.max(fit.shaftDiameter, INNER_SHAFT * fit.bellDiameter);
  const bends = (SHAFT_STRENGTH * Math.PI * shaft ** 3) / 32 / (fit.height / 2);
  return (['end-on', 'side-on'] as const).flatMap((way) =>
    SURFACES.flatMap(({ name }): readonly BreakingSpeed[] => {
      const middle = middleHit(report, WAY[way], name);
      if (middle === undefined) return [];
      return [
        {
          hit: kindId(way, name),
          median: (middle.speed * bends) / middle.peakForce / SQUARELY,
          logDeviation: Math.hypot(MOTOR_SCATTER, SQUARE_SPREAD),
          reached: 1,
        },
      ];
    }),
  );
}

/** Speeds at which a blade goes (common practice, no source): a strike on wood at a walk, one on grass at a run. */
const BLADE_SPEED: Readonly<Record<string, number>> = { grass: 9, wood: 3, concrete: 2.2 };
/** A usual blade near its root bears about this [N]; a stronger one lasts to a higher speed by the root of it. */
const USUAL_BLADE = 20;
/** Behind a guard a blade meets twigs only. */
const GUARDED = 3;

/** Propellers: which way, how many come near something, and how much sooner or later than in a strike. */
const BLADES: readonly (readonly [way: KnockWay, reached: number, factor: number])[] = [
  ['prop strike', 1, 1],
  ['flat', 2, 1.2],
  ['end-on', 2, 1],
  ['side-on', 2, 1],
];

export function propellerBreaks(craft: Craft): readonly BreakingSpeed[] {
  const blade = craft.rotors[0]?.blade;
  const part = craft.parts.propellers[0];
  if (blade === undefined || part === undefined) return [];
  const { median } = bladeForce(blade, part.material);
  const strong = Math.sqrt(Math.min(9, Math.max(1 / 9, median / USUAL_BLADE)));
  const guarded = craft.frame.guards.length > 0 ? GUARDED : 1;
  return BLADES.flatMap(([way, reached, factor]) =>
    SURFACES.map(({ name }) => ({
      hit: kindId(way, name),
      median: (BLADE_SPEED[name] ?? 3) * strong * guarded * factor,
      logDeviation: 0.5,
      reached: Math.min(reached, craft.motors.length),
    })),
  );
}

/** A part that breaks in some ways at a speed of the trade's (common practice, no source), softer on grass. */
export function tradeBreaks(
  speeds: readonly (readonly [way: KnockWay, onWood: number])[],
): readonly BreakingSpeed[] {
  return speeds.flatMap(([way, onWood]) =>
    SURFACES.map(({ name }) => ({
      hit: kindId(way, name),
      median: onWood * (name === 'grass' ? 2 : name === 'wood' ? 1 : 0.85),
      logDeviation: 0.5,
      reached: 1,
    })),
  );
}

import { forwardCraft } from '../../src/flight/forward/forwardPoint.ts';
import { topSpeed } from '../../src/flight/forward/speeds.ts';
import { hoverStory } from '../../src/flight/hoverStory.ts';
import { controlReserve } from '../../src/flight/reserve/momentReach.ts';
import { neutralLevers } from '../../src/flight/types.ts';
import { bracketedRoot } from '../../src/numerics/bracketedRoot.ts';
import { built, deadCat, type Quad, trueX } from '../../test/flight/emerging/craftOfParts.ts';
import { flown, onFrame } from '../../test/flight/emerging/layouts.ts';
import type { Figures } from './retell.ts';
import { known, percent, say } from './say.ts';

/** Of docs/method/trade-facts.md, and of flight.md where it tells of wakes: the craft of the figures there. */
export const tradeFigures: Figures = {
  'dead cat: motors behind the hub': () =>
    say(-1000 * mean(places(deadCat).map(([x]) => x - hubOf(deadCat))), 'mm'),
  'dead cat: weight on the front': () => percent(frontShare(deadCat)),
  'dead cat: pack back for even motors': () => {
    const back = (metres: number) => frontShare({ ...deadCat, packAhead: -metres }) - 0.5;
    return say(1000 * known(bracketedRoot(back, 0, 0.06)), 'mm');
  },
  'dead cat: front motors hotter': () => {
    const heat = hovering(deadCat).hoverHeat.map((motor) => motor?.settled?.winding ?? Number.NaN);
    return say((heat[0] ?? Number.NaN) - (heat[2] ?? Number.NaN), 'kelvin');
  },
  'dead cat: rear pair apart': () => say(apart(deadCat, 2, 3), 'mm'),
  'dead cat: front pair apart': () => say(apart(deadCat, 0, 1)),
  'wakes: cost of a true X': () => percent(wakes.cost('true X', 10)),
  'wakes: cost of a squashed X': () => percent(wakes.cost('squashed X', 10)),
  'wakes: rear motors faster': () =>
    percent(wakes.rearFaster('true X') - wakes.rearFaster('true X', 'alone')),
  'wakes: rear motors faster without': () => percent(wakes.rearFaster('true X', 'alone')),
  'wakes: cost of a true X at 12': () => percent(wakes.cost('true X', 12)),
  'wakes: share of a stretched X': () => percent(wakes.wash('stretched X') / wakes.wash('true X')),
  'wakes: more of a squashed X': () => percent(wakes.wash('squashed X') / wakes.wash('true X') - 1),
  'hub moments nose up': () => say(1000 * noseUp(10), 'mN m'),
  'hub moments as balance': () => say((1000 * noseUp(10)) / (0.7 * 9.80665), 'mm', 1),
  'true X: pitch slower than roll': () => {
    const { roll, pitch } = reserveOf(trueX).accelerations;
    return percent(1 - pitch.positive / roll.positive);
  },
  'pack above: through the prop plane': () => {
    const under = (mass: number) => underDiscs({ ...trueX, packMass: mass });
    return say(1000 * known(bracketedRoot(under, 0.05, 0.5)), 'g');
  },
  'rings: mass': () => say(1000 * (massOf(ringed) - massOf(trueX)), 'g'),
  'rings: top speed lost': () => percent(1 - top(ringed) / top(trueX)),
};

type Layout = keyof typeof layouts;
const layouts = {
  'true X': onFrame([0.08, 0.08], [0.08, 0.08]),
  'stretched X': onFrame([0.066, 0.092], [0.066, 0.092]),
  'squashed X': onFrame([0.092, 0.066], [0.092, 0.066]),
};

const wakes = {
  wash: (layout: Layout) => flown(layouts[layout], 12).wash[3] ?? Number.NaN,
  cost: (layout: Layout, speed: number) => {
    const power = (point: ReturnType<typeof flown>) => point.point.chemicalPower;
    return (
      power(flown(layouts[layout], speed)) / power(flown(layouts[layout], speed, { wakes: 'left out' })) - 1
    );
  },
  rearFaster: (layout: Layout, how?: 'alone') => {
    const { load } = flown(layouts[layout], 12, how === 'alone' ? { wakes: 'left out' } : {});
    return (load.angularSpeed[3] ?? Number.NaN) / (load.angularSpeed[0] ?? Number.NaN) - 1;
  },
};

/** Of all hub moments [N m]. */
const noseUp = (speed: number): number =>
  flown(layouts['true X'], speed).rotors.reduce((sum, { momentAftUp }) => sum - momentAftUp, 0);

const ringed: Quad = { ...trueX, rings: { tipGap: 0.004, height: 0.014, wall: 0.002 } };
const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;
const places = (quad: Quad) => built(quad).model.stations.map(({ position }) => position);
const hubOf = (quad: Quad): number =>
  built(quad).items.find(({ part }) => part === 'pack')?.place[0] ?? Number.NaN;
const hovering = (quad: Quad) => known(hoverStory(built(quad).model, neutralLevers, []));
const massOf = (quad: Quad): number => built(quad).massProperties.mass;

function frontShare(quad: Quad): number {
  const { thrusts } = hovering(quad).trim;
  return ((thrusts[0] ?? 0) + (thrusts[1] ?? 0)) / thrusts.reduce((sum, thrust) => sum + thrust, 0);
}

/** Two motors, across [mm]. */
function apart(quad: Quad, one: number, other: number): number {
  const all = places(quad);
  return 1000 * Math.abs((all[one]?.[1] ?? Number.NaN) - (all[other]?.[1] ?? Number.NaN));
}

/** Centre of gravity below the discs [m]. */
function underDiscs(quad: Quad): number {
  const { massProperties, model } = built(quad);
  return massProperties.centreOfGravity[2] - (model.stations[0]?.position[2] ?? Number.NaN);
}

function reserveOf(quad: Quad) {
  const { model, massProperties } = built(quad);
  const effectors = model.stations.map(({ name, position, spin }) => {
    return { name, position, spin, torquePerThrust: 0.014, minimumThrust: 0.15, maximumThrust: 12 };
  });
  return known(
    controlReserve({
      effectors,
      ...massProperties,
      centreOfGravity: [0, 0, massProperties.centreOfGravity[2]],
      gravity: model.gravity,
    }),
  );
}

function top(quad: Quad): number {
  const { model, drag } = built(quad);
  const craft = known(forwardCraft(model, neutralLevers, drag.bluff, { bars: drag.bars }));
  return known(topSpeed(craft, 0.6)).at.speed;
}

import { CRAWL, type ForwardTrim } from '../flight/forward/types.ts';
import { emptyObliqueLoads } from '../flight/types.ts';
import { edgewiseBand } from '../rotor/edgewiseBand.ts';
import { solveEdgewise } from '../rotor/solveEdgewise.ts';
import { solveRotor } from '../rotor/solveRotor.ts';
import type { BandedFigure, BandedFigures } from './bandedFigures.ts';
import type { Flight, PartContext } from './parts/types.ts';
import { SMALLEST_SHARE } from './propagate.ts';

/**
 * The moment that lifts the aft side of every disc [N m], by blade elements at the trim's own speeds, the ring's added. The
 * map that trims the craft is good to a share of the static load, which is much of so small a moment. Its band has what is
 * open about the blade and the lean of its inflow (`edgewiseBand`), and what balance, mass and drag do to the trim.
 *
 * @param figures of the trim, `hubMoment` being the map's with its band by levers alone; taken away where elements have none
 */
export function withHubMoments(
  context: PartContext & { readonly flight: Flight },
  trim: ForwardTrim,
  figures: BandedFigures,
): BandedFigures {
  const motors = figures.motors.map((motor, i) => {
    const { hubMoment: byLevers, ...others } = motor;
    if (byLevers === undefined) return motor;
    const hubMoment = byElements(context, trim, i, byLevers);
    return hubMoment === undefined ? others : { ...others, hubMoment };
  });
  return { ...figures, motors };
}

function byElements(
  { craft, flight, sections }: PartContext & { readonly flight: Flight },
  trim: ForwardTrim,
  i: number,
  byLevers: BandedFigure,
): BandedFigure | undefined {
  const { speed, climb, tilt } = trim;
  const edgewiseSpeed = speed * Math.cos(tilt) - climb * Math.sin(tilt);
  if (edgewiseSpeed <= CRAWL) return byLevers;
  const read = flight.model.stations[i]?.oblique;
  const partId = craft.rotors[craft.motors[i]?.rotor ?? -1]?.partId;
  const blade = partId === undefined ? undefined : flight.rotors.get(partId)?.facts.blade;
  const state = trim.rotors[i];
  if (read === undefined || blade === undefined || state === undefined) return undefined;
  const { angularSpeed } = state;
  const axialSpeed = trim.load.axialSpeed[i] ?? 0;
  const condition = { angularSpeed, axialSpeed, edgewiseSpeed, air: flight.air };
  const solved = solveEdgewise(blade, sections, condition);
  const still = solveRotor(blade, sections, { ...condition, axialSpeed: Math.max(axialSpeed, 0) });
  if (!solved.ok || !still.ok) return undefined;
  const found = edgewiseBand(blade, sections, condition, solved.value, still.value.reynolds75);
  if (!found.ok) return undefined;
  const { momentAftUp } = found.value;
  const mapped = emptyObliqueLoads();
  read(angularSpeed, axialSpeed, edgewiseSpeed, mapped);
  const byRing = state.momentAftUp - mapped.momentAftUp;
  const value = solved.value.momentAftUp + byRing;
  const ofBlade = halfOf(momentAftUp);
  const ofTrim = halfOf(byLevers.band);
  const half = Math.hypot(ofBlade, ofTrim);
  const share = half > 0 ? (ofTrim / half) ** 2 : 0;
  const leansOn = [
    { input: 'propeller along its disc', trust: 'inferred' as const, share: 1 - share },
    ...byLevers.leansOn.map((leaning) => ({ ...leaning, share: share * leaning.share })),
  ];
  return {
    value,
    band: [value - half, value + half],
    leansOn: leansOn.filter((leaning) => leaning.share >= SMALLEST_SHARE),
  };
}

const halfOf = ([low, high]: readonly [number, number]): number => 0.5 * (high - low);

import type { Craft } from '../build/craft.ts';
import { flightModelOf } from '../build/resolve/flightModelOf.ts';
import type { Brief } from '../build/schema/brief.ts';
import type { HoverStory } from '../flight/hoverStory.ts';
import { styles } from '../flight/styles.ts';
import { neutralLevers, type Station, type Style } from '../flight/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { SectionTables } from '../rotor/sections.ts';
import { airOf } from './dayOf.ts';
import { tellHover } from './figures.ts';
import type { Flight } from './parts/types.ts';
import { type PreparedRotors, prepareRotors } from './prepareRotors.ts';
import { rotorDoubt } from './rotorDoubt.ts';
import { rotorsAtSpeed } from './rotorsAtSpeed.ts';

interface FlightContext {
  readonly brief: Brief;
  readonly sections: SectionTables;
  readonly rotors?: PreparedRotors;
}

/**
 * A craft made ready to fly in the brief's air, and its hover story; words when it has none.
 *
 * @param atSpeed for the parts of the full tier: propellers get their maps along the disc where they have none yet
 */
export function prepareFlight(craft: Craft, context: FlightContext, atSpeed = false): Outcome<Flight> {
  const { brief, sections } = context;
  const air = airOf(brief);
  const prepared = prepareRotors(craft, air, sections, context.rotors);
  if (!prepared.ok) return prepared;
  const ready = atSpeed ? rotorsAtSpeed(prepared.value, sections, air) : prepared.value;
  const rotors = craft.rotors.flatMap((rotor) => ready.get(rotor.partId) ?? []);
  const first = rotors[0];
  if (first === undefined) return noSolution('no propeller is on board');
  const still = flightModelOf(
    craft,
    rotors.map((rotor) => rotor.read),
    air,
    brief.reserve,
  );
  const stations = still.stations.map((station, i): Station => {
    const oblique = rotors[craft.motors[i]?.rotor ?? -1]?.oblique;
    return oblique === undefined ? station : { ...station, oblique };
  });
  const model = { ...still, stations };
  const style = styleOf(brief);
  const told = tellHover(model, neutralLevers, style, craft);
  if (!told.ok) return told;
  const hoverSpeed = told.value.figures['hover-speed'] ?? 1;
  const doubt = {
    ...rotorDoubt(craft, first, sections, air, hoverSpeed),
    atFull: rotorDoubt(craft, first, sections, air, fullSpeedOf(told.value.story)),
  };
  return solved({ air, model, rotors: ready, doubt, style, told: told.value });
}

const fullSpeedOf = ({ punch }: HoverStory): number =>
  Math.max(1, ...punch.stations.map(({ angularSpeed }) => angularSpeed));

/** How the pilot of the brief flies. */
export function styleOf(brief: Brief): Style {
  switch (brief.flyingStyle) {
    case 'cruising':
      return styles.cruise;
    case 'easy':
      return styles.novice;
    case 'freestyle':
      return styles.freestyle;
    case 'race':
      return styles.race;
    case undefined:
      break;
  }
  switch (brief.purpose) {
    case 'race':
      return styles.race;
    case 'freestyle':
    case 'micro':
      return styles.freestyle;
    case 'guarded filming':
      return styles.filming;
    case 'cruising':
      return styles.cruise;
  }
}

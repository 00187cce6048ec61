import type { Air } from '../air/standardAtmosphere.ts';
import type { ObliqueRead } from '../flight/types.ts';
import { buildEdgewiseMap, emptyEdgewiseReading, readEdgewiseMap } from '../rotor/edgewiseMap.ts';
import type { SectionTables } from '../rotor/sections.ts';
import type { EdgewiseMap } from '../rotor/types.ts';
import type { PreparedRotors } from './prepareRotors.ts';

/**
 * Adds to every propeller what flight along its disc needs: a map of blade elements averaged over a turn, where it has none
 * yet. Some 25 milliseconds a propeller, so for the full tier only. A blade without a solution somewhere on the map keeps
 * to the closed form.
 */
export function rotorsAtSpeed(rotors: PreparedRotors, sections: SectionTables, air: Air): PreparedRotors {
  if ([...rotors.values()].every(({ oblique }) => oblique !== undefined)) return rotors;
  return new Map(
    [...rotors].map(([id, rotor]) => {
      const map = rotor.oblique === undefined ? buildEdgewiseMap(rotor.map, sections) : undefined;
      return [id, map?.ok ? { ...rotor, oblique: obliqueOf(map.value, air) } : rotor];
    }),
  );
}

/** A map's reader in its own air. */
export function obliqueOf(map: EdgewiseMap, air: Air): ObliqueRead {
  const reading = emptyEdgewiseReading();
  return (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
    readEdgewiseMap(map, angularSpeed, axialSpeed, edgewiseSpeed, air, reading);
    out.thrust = reading.thrust;
    out.torque = reading.torque;
    out.inPlaneForce = reading.inPlaneForce;
    out.sideForce = reading.sideForce;
    out.momentAdvancingUp = reading.momentAdvancingUp;
    out.momentAftUp = reading.momentAftUp;
  };
}

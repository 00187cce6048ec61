import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { obliqueOf } from '../../src/assess/rotorsAtSpeed.ts';
import type { RotorRead, Station } from '../../src/flight/types.ts';
import { bladeFromNameplate } from '../../src/rotor/blade.ts';
import { buildEdgewiseMap } from '../../src/rotor/edgewiseMap.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../../src/rotor/rotorMap.ts';
import { sectionTables } from '../../src/rotor/sections.ts';

/** A 5.1 x 4.3 inch propeller of three blades, by blade elements in axial flow and along its disc. */
const DIAMETER = 5.1 * 0.0254;
const air = standardAtmosphere({ height: 0 });
const map = buildRotorMap(
  bladeFromNameplate({ diameter: DIAMETER, pitch: 4.3 * 0.0254, bladeCount: 3 }),
  sectionTables(),
  air,
  'coarse',
);
if (!map.ok) throw new Error(map.reason);
const edgewise = buildEdgewiseMap(map.value, sectionTables());
if (!edgewise.ok) throw new Error(edgewise.reason);
const reading = emptyReading();
const rotor: RotorRead = (angularSpeed, axialSpeed, out) => {
  readRotorMap(map.value, angularSpeed, axialSpeed, air, reading);
  out.thrust = reading.thrust;
  out.torque = reading.torque;
};

export const realPropeller = {
  rotor,
  oblique: obliqueOf(edgewise.value, air),
  propDiameter: DIAMETER,
} satisfies Partial<Station>;

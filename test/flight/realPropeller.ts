import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { obliqueOf } from '../../src/assess/rotorsAtSpeed.ts';
import type { RotorRead, Station } from '../../src/flight/types.ts';
import { bladeFromNameplate } from '../../src/rotor/blade.ts';
import { buildEdgewiseMap } from '../../src/rotor/edgewiseMap.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../../src/rotor/rotorMap.ts';
import { sectionTables } from '../../src/rotor/sections.ts';

const INCH = 0.0254;
const air = standardAtmosphere({ height: 0 });
const sections = sectionTables();

/** A propeller of three blades by blade elements, in axial flow and along its disc. @param diameter, pitch [inch] */
export function propellerOf(diameter: number, pitch: number) {
  const propDiameter = diameter * INCH;
  const blade = bladeFromNameplate({ diameter: propDiameter, pitch: pitch * INCH, bladeCount: 3 });
  const map = buildRotorMap(blade, sections, air, 'coarse');
  if (!map.ok) throw new Error(map.reason);
  const edgewise = buildEdgewiseMap(map.value, sections);
  if (!edgewise.ok) throw new Error(edgewise.reason);
  const reading = emptyReading();
  const rotor: RotorRead = (angularSpeed, axialSpeed, out) => {
    readRotorMap(map.value, angularSpeed, axialSpeed, air, reading);
    out.thrust = reading.thrust;
    out.torque = reading.torque;
  };
  return { rotor, oblique: obliqueOf(edgewise.value, air), propDiameter } satisfies Partial<Station>;
}

export const realPropeller = propellerOf(5.1, 4.3);

// Level flight's rotors, read from the edgewise map, against direct solves of the same blades (`solveEdgewise`, itself held
// to Glauert 1926 and the axial limit in test/against/). Stated tolerance: see docs/method/flight.md.
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../../src/air/standardAtmosphere.ts';
import { obliqueOf } from '../../../src/assess/rotorsAtSpeed.ts';
import { mappedRotor } from '../../../src/flight/forward/mappedRotor.ts';
import { bladeFromNameplate } from '../../../src/rotor/blade.ts';
import { buildEdgewiseMap } from '../../../src/rotor/edgewiseMap.ts';
import { buildRotorMap } from '../../../src/rotor/rotorMap.ts';
import { solveEdgewise } from '../../../src/rotor/solveEdgewise.ts';
import { solveRotor } from '../../../src/rotor/solveRotor.ts';
import { sections } from '../../rotor/arbitrary.ts';

const air = standardAtmosphere({ height: 0 });

/** Diameter and pitch [m], blades: three-inch to ten-inch, pitch over diameter 0.45 to 1. */
const propellers = [
  [0.0762, 0.05, 3],
  [0.127, 0.127, 2],
  [0.1295, 0.109, 3],
  [0.254, 0.114, 2],
] as const;

/** Errors of speed and torque over themselves, of force over the thrust, of moments over thrust times radius. */
const found = propellers.flatMap(([diameter, pitch, bladeCount]) => {
  const blade = bladeFromNameplate({ diameter, pitch, bladeCount });
  const axial = buildRotorMap(blade, sections, air, 'full');
  if (!axial.ok) throw new Error(axial.reason);
  const map = buildEdgewiseMap(axial.value, sections);
  if (!map.ok) throw new Error(map.reason);
  const read = obliqueOf(map.value, air);
  return [70, 130, 180].flatMap((tip) => {
    const angularSpeed = (2 * tip) / diameter;
    const still = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
    if (!still.ok) throw new Error(still.reason);
    return [0.03, 0.08, 0.13, 0.2, 0.3].flatMap((ratio) =>
      [-0.05, 0.1, 0.4, 0.7, 1.1].flatMap((tilt) => {
        const edgewiseSpeed = ratio * tip;
        const axialSpeed = edgewiseSpeed * Math.tan(tilt);
        const exact = solveEdgewise(blade, sections, { angularSpeed, axialSpeed, edgewiseSpeed, air });
        // Nearly windmilling, no craft holds level flight.
        if (!exact.ok || exact.value.thrust < 0.2 * still.value.thrust) return [];
        const { value } = exact;
        const read1 = mappedRotor(read, {
          thrust: value.thrust,
          axialSpeed,
          edgewiseSpeed,
          airDensity: air.density,
          diameter,
          thrustScale: 1,
          torqueScale: 1,
        });
        if (!read1.ok) throw new Error(read1.reason);
        const mapped = read1.value;
        const moment = (value.thrust * diameter) / 2;
        return [
          {
            speed: Math.abs(mapped.angularSpeed / angularSpeed - 1),
            torque: Math.abs(mapped.torque / value.torque - 1),
            force: Math.abs(mapped.inPlaneForce - value.inPlaneForce) / value.thrust,
            side: Math.abs(mapped.sideForce - value.sideForce) / value.thrust,
            advancing: Math.abs(mapped.momentAdvancingUp - value.momentAdvancingUp) / moment,
            aft: Math.abs(mapped.momentAftUp - value.momentAftUp) / moment,
            induced: Math.abs(mapped.inducedSpeed / value.inducedSpeed - 1),
          },
        ];
      }),
    );
  });
});

describe('rotors in level flight, by map', () => {
  it.each([
    ['speed', 0.015, 0.03],
    ['torque', 0.03, 0.06],
    ['force', 0.01, 0.02],
    ['side', 0.01, 0.03],
    ['advancing', 0.02, 0.05],
    ['aft', 0.02, 0.05],
    ['induced', 1e-5, 1e-4],
  ] as const)('%s lies within %f of direct solves for 95 %, %f at worst', (what, most, worst) => {
    const errors = found.map((each) => each[what]).sort((a, b) => a - b);
    expect(errors.length).toBeGreaterThan(150);
    expect(errors[Math.floor(0.95 * errors.length)]!).toBeLessThan(most);
    expect(errors.at(-1)!).toBeLessThan(worst);
  });

  it('a scaled in-plane force takes its work off the shaft', () => {
    const [diameter] = propellers[0];
    const read = (
      w: number,
      _: number,
      __: number,
      out: { thrust: number; torque: number; inPlaneForce: number },
    ) => {
      out.thrust = 1e-6 * w * w;
      out.torque = 1e-8 * w * w;
      out.inPlaneForce = 0.2;
    };
    const request = {
      thrust: 4,
      axialSpeed: 2,
      edgewiseSpeed: 10,
      airDensity: 1.2,
      diameter,
      thrustScale: 1,
      torqueScale: 1,
    };
    const [plain, more] = [1, 1.5].map((inPlaneScale) => mappedRotor(read, { ...request, inPlaneScale }));
    if (!plain?.ok || !more?.ok) throw new Error('no speed');
    expect(more.value.inPlaneForce).toBeCloseTo(0.3, 12);
    // 0.1 N at 10 m/s is 1 W; the rotor turns at 2000 rad/s.
    expect((plain.value.torque - more.value.torque) * 2000).toBeCloseTo(1, 8);
  });
});

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { airOf } from '../../../src/assess/dayOf.ts';
import { mapRotor, rotorsOfMaps } from '../../../src/choose/shortlist/rotors.ts';
import { wakeReliefOf } from '../../../src/choose/shortlist/wakeRelief.ts';
import { secantRoot } from '../../../src/numerics/secantRoot.ts';
import { demo, sections, shelf } from './smallShelf.ts';

/** One that stalls in still air, so that a wake helps it, and one that does not. */
it.each(['riffle-5148-3', 'neap-7035-3'])('%s in a wake asks no less than the relieved rotor', (id) => {
  const { brief } = demo('cruiser', 'curlew');
  const air = airOf(brief);
  const part = shelf.parts.get(id);
  const made = part?.kind === 'propeller' ? mapRotor(part, air, sections) : undefined;
  if (!made?.ok) throw new Error(id);
  const rotor = rotorsOfMaps([made.value], air).get(id)!;
  const relief = wakeReliefOf(rotor, air);
  expect(relief.thrust > 1.01).toBe(id.startsWith('riffle'));
  const loads = { thrust: 0, torque: 0 };
  const thrustAt = (speed: number, inflow: number) => {
    rotor.read(speed, inflow, loads);
    return loads.thrust;
  };
  fc.assert(
    fc.property(
      fc.double({ min: 600, max: 2600, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (speed, share) => {
        // Up to two and a half times its own induced speed.
        const disc = (Math.PI / 4) * rotor.facts.blade.diameter ** 2;
        const inflow = share * 2.5 * Math.sqrt(thrustAt(speed, 0) / (2 * air.density * disc));
        const thrust = thrustAt(speed, inflow);
        fc.pre(thrust > 0);
        const { torque } = loads;
        const still = secantRoot((at) => thrustAt(at, 0) * relief.thrust - thrust, 1, speed * 1.5, speed);
        thrustAt(still, 0);
        expect(still).toBeLessThanOrEqual(speed * (1 + 1e-6));
        expect(loads.torque * relief.torque).toBeLessThanOrEqual(torque * (1 + 1e-6));
      },
    ),
  );
});

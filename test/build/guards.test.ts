import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { readBuild } from '../../src/build/read/readBuild.ts';
import { flightModelOf } from '../../src/build/resolve/flightModelOf.ts';
import { resolveBuild } from '../../src/build/resolve/resolveBuild.ts';
import { shippedShelf } from '../cli/fakeIo.ts';

const air = standardAtmosphere({ height: 0 });
const still = () => undefined;

function modelOf(file: string) {
  const read = readBuild(readFileSync(file, 'utf8'), file);
  if (!read.ok) throw new Error(file);
  const craft = resolveBuild(read.value.build, shippedShelf());
  if (!craft.ok) throw new Error(file);
  return flightModelOf(
    craft.value,
    craft.value.rotors.map(() => still),
    air,
    0.2,
  );
}

it('gives every motor of a guarded frame its ring, and none to an open one', () => {
  const guarded = modelOf('demo/guarded/dotterel.yaml');
  for (const { guard } of guarded.stations) {
    expect(guard).toBeDefined();
    // Never better than the ideal shrouded rotor of expansion ratio 1 (McCormick 1967: thrust x 1.26 at equal power).
    expect(guard!.thrustAtEqualPower).toBeLessThan(1.26);
    expect(guard!.thrustAtEqualPower).toBeGreaterThan(0.8);
  }
  for (const { guard } of modelOf('demo/first-freestyle/turnstone.yaml').stations)
    expect(guard).toBeUndefined();
});

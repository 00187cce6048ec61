import { expect, it } from 'vitest';
import { rotorFacts } from '../../src/build/infer/rotorFacts.ts';
import { packRotors, unpackRotors } from '../../src/build/read/packedRotors.ts';
import { partsOf } from '../../src/build/shelf.ts';
import { shippedShelf } from '../cli/fakeIo.ts';

it('keeps every matched blade to the last bit', () => {
  const shelf = shippedShelf();
  const unpacked = unpackRotors(packRotors(shelf));
  const measured = partsOf(shelf, 'propeller').filter((part) => part.measured.length > 0);
  expect(unpacked.size).toBe(measured.length);
  const first = measured[0]!;
  expect(unpacked.get(first.id)).toEqual(rotorFacts(first));
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileErrorText } from '../../src/build/read/fileError.ts';
import { packShelf, unpackShelf } from '../../src/build/read/packedShelf.ts';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { isKind, partsOf, type Shelf } from '../../src/build/shelf.ts';
import { SHELF } from './files.ts';

const head = 'format: quadwright-shelf-1\nparts:\n';
const motor = 'kind: motor, name: m, price: 18 GBP, mass: 33 g, stator: 2207, speedConstant: 1850 rpm/V';

function shelfOf(text: string, under?: Shelf): Shelf {
  const read = readShelf(text, 'own.yaml', under);
  if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
  return read.value;
}

function errors(text: string, under?: Shelf) {
  const read = readShelf(text, 'own.yaml', under);
  return read.ok ? [] : read.errors;
}

describe('a shelf', () => {
  test('reads every value into SI with its doubt', () => {
    const [part] = partsOf(shelfOf(SHELF), 'motor');
    expect(part?.mass.value).toBeCloseTo(0.033, 12);
    expect(part?.mass).toMatchObject({ trust: 'measured' });
    expect(part?.mass.deviation).toBeCloseTo(0.00066, 12);
    expect(part?.stator).toEqual({ diameter: 0.022, height: 0.007 });
    expect(part?.speedConstant.value).toBeCloseTo((1850 * 2 * Math.PI) / 60, 9);
  });

  test("the user's own lies over it, and what it replaces is told", () => {
    const shelf = shelfOf(
      `${head}- { id: gannet-motor, ${motor.replace('18 GBP', '12 GBP')} }`,
      shelfOf(SHELF),
    );
    expect(shelf.replaced).toEqual(['gannet-motor']);
    expect(shelf.parts.get('gannet-motor')?.price.amount).toBe(12);
    expect(shelf.parts.has('gannet-frame')).toBe(true);
  });

  test('a part based on another takes what it does not tell', () => {
    const shelf = shelfOf(`${head}- { id: lighter, basedOn: gannet-motor, mass: 30 g }`, shelfOf(SHELF));
    const part = shelf.parts.get('lighter');
    expect(part && isKind(part, 'motor') && part.stator.diameter).toBe(0.022);
    expect(part?.mass).toEqual({ value: 0.03 });
    expect(part?.invented).toBe(true);
  });
});

test('a packed shelf unpacks to the same parts, and can be laid over', () => {
  const shelf = shelfOf(SHELF);
  const again = unpackShelf(packShelf(shelf));
  expect(again).toEqual(shelf);
  expect(shelfOf(`${head}- { id: x, basedOn: gannet-motor }`, again).parts.get('x')?.name).toBe(
    'Gannet 2207',
  );
});

describe('errors of a shelf', () => {
  test('a part that refers to itself, alone or in a ring', () => {
    expect(errors(`${head}- { id: a, basedOn: a }`)).toEqual([
      expect.objectContaining({
        line: 3,
        path: 'parts[0].basedOn',
        says: 'the part is based on itself (a -> a)',
      }),
    ]);
    const ring = `${head}- { id: a, basedOn: b }\n- { id: b, basedOn: c }\n- { id: c, basedOn: a }`;
    expect(errors(ring).map(({ says }) => says)).toEqual([
      'parts are based on each other in a circle (a -> b -> c -> a)',
      'parts are based on each other in a circle (b -> c -> a -> b)',
      'parts are based on each other in a circle (c -> a -> b -> c)',
    ]);
  });

  test('based on nothing, or on another kind', () => {
    expect(errors(`${head}- { id: a, basedOn: ganet-motor }`, shelfOf(SHELF))).toEqual([
      expect.objectContaining({ remedy: 'Did you mean "gannet-motor"?' }),
    ]);
    expect(errors(`${head}- { id: a, kind: frame, basedOn: gannet-motor }`, shelfOf(SHELF))).toEqual([
      expect.objectContaining({ says: 'a frame cannot be based on a motor' }),
    ]);
  });

  test('negative mass, wrong unit, unknown kind, unknown field, twice the same id', () => {
    const text = [
      `- { id: a, ${motor.replace('33 g', '-33 g')} }`,
      `- { id: b, ${motor.replace('33 g', '33 mm')} }`,
      '- { id: c, kind: moter }',
      `- { id: d, ${motor}, pols: 14 }`,
      `- { id: a, ${motor} }`,
    ].join('\n');
    expect(errors(head + text).map(({ line, path, says, remedy }) => [line, path, says, remedy])).toEqual([
      [3, 'parts[0].mass', '"-33 g" is outside 0.01 g to 5 kg', 'Give at least 0.01 g.'],
      [4, 'parts[1].mass', '"mm" is not a unit of mass', 'Did you mean "33 mg"?'],
      [5, 'parts[2].kind', '"moter" is not a kind of part', 'Did you mean "motor"?'],
      [6, 'parts[3].pols', 'unknown field "pols"', 'Did you mean "poles"?'],
      [7, 'parts[4].id', 'a part with this id stands in line 3 already', 'Rename one.'],
    ]);
  });

  test('a value with a doubt is checked inside too', () => {
    const doubt = motor.replace('33 g', '{ value: 33 g, spred: 2 %, trust: sure }');
    const says = errors(`${head}- { id: a, ${doubt} }`).map((error) => error.says);
    expect(says).toEqual(['unknown field "spred"', 'trust "sure" is not known']);
  });

  test('arbitrary parts never throw', () => {
    fc.assert(
      fc.property(fc.array(fc.jsonValue(), { maxLength: 4 }), (parts) => {
        const text = JSON.stringify({ format: 'quadwright-shelf-1', parts });
        expect(errors(text).length > 0).toBe(parts.length > 0);
      }),
    );
  });
});

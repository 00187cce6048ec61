import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { remembered } from '../../../src/build/lists/columnsOfLists.ts';
import { decimalsOf, plainNumber } from '../../../src/build/lists/numberText.ts';
import { ontoShelf, settle } from '../../../src/build/lists/ontoShelf.ts';
import { readRates } from '../../../src/build/lists/rates.ts';
import { readCsvTable } from '../../../src/build/lists/readCsvTable.ts';
import { type ListWishes, readList } from '../../../src/build/lists/readList.ts';
import { fileErrorText } from '../../../src/build/read/fileError.ts';
import { readShelf } from '../../../src/build/read/readShelf.ts';
import type { Shelf } from '../../../src/build/shelf.ts';
import { SHELF } from '../files.ts';

const shipped = ((): Shelf => {
  const read = readShelf(SHELF, 'shelf.yaml');
  if (!read.ok) throw new Error('the sample shelf does not read');
  return read.value;
})();
const known = { shipped, own: new Map<string, Readonly<Record<string, unknown>>>() };

function listed(text: string, wishes: ListWishes = { kind: 'motor' }, file = 'list.csv') {
  const read = readList(text, file, wishes, undefined, known);
  if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
  return read.value;
}

const errorsOf = (text: string, wishes: ListWishes = { kind: 'motor' }, file = 'list.csv') => {
  const read = readList(text, file, wishes, undefined, known);
  return read.ok ? read.value.parts.flatMap(({ errors }) => errors) : read.errors;
};

const PLAIN = 'Name,Weight (g),Price (GBP),KV,Stator\nTern 2306,32.5,17.90,1950,2306\n';

describe('a list of parts', () => {
  test('reads by the names of its columns and the units behind them', () => {
    const { by, parts, columns } = listed(PLAIN);
    expect(by).toBe('guessed');
    expect(columns.columns).toEqual({
      Name: 'name',
      'Weight (g)': 'mass in g',
      'Price (GBP)': 'price in GBP',
      KV: 'speedConstant in rpm/V',
      Stator: 'stator',
    });
    const [motor] = parts;
    expect(motor?.errors).toEqual([]);
    expect(motor?.id).toBe('tern-2306');
    expect(motor?.part).toMatchObject({ kind: 'motor', price: { amount: 17.9, currency: 'GBP' } });
    expect(motor?.part?.mass.value).toBeCloseTo(0.0325, 12);
  });

  test('of several kinds too, where a column tells which', () => {
    const { by, columns, parts } = listed(
      'Name,Kind,Weight (g),Price (GBP),KV,Stator\nTern 2306,motor,32.5,17.90,1950,2306\nStrap,strap,4,2.90,,\n',
      {},
    );
    expect(by).toBe('guessed');
    expect(columns.columns).toMatchObject({ Kind: 'kind', Name: 'name', KV: 'speedConstant in rpm/V' });
    expect(parts[0]?.errors).toEqual([]);
    expect(parts.map(({ raw }) => raw?.kind)).toEqual(['motor', 'strap']);
  });

  test('the same part however the file is written: mark at the start, semicolons, decimal commas, line ends, quotes', () => {
    const other =
      '\uFEFF"Name";"Weight (g)";"Price (GBP)";"KV";"Stator"\r\n"Tern 2306";"32,5";"17,90";"1.950";"2306"\r\n';
    const [a] = listed(PLAIN).parts;
    const [b] = listed(other).parts;
    expect(b?.raw).toEqual(a?.raw);
    const tabs = PLAIN.replaceAll(',', '\t');
    expect(listed(tabs).parts[0]?.raw).toEqual(a?.raw);
  });

  test('a cell in quotes runs over lines, and errors below it still name their line', () => {
    const text =
      'name,note,mass,price,speedConstant,stator\nTern,"first\nsecond, ""third""",32 g,17 GBP,1950 rpm/V,2306\nSkua,,heavy,17 GBP,1950 rpm/V,2306\n';
    const { parts } = listed(text);
    expect(parts[0]?.part?.note).toBe('first\nsecond, "third"');
    expect(parts[1]?.part).toBeUndefined();
    expect(parts[1]?.errors).toMatchObject([{ line: 4, column: 3, path: 'mass', found: '"heavy"' }]);
  });

  test('good rows stand beside bad ones; each error tells row, column, found, allowed, remedy', () => {
    const { parts } = listed(
      'Name,Weight (g),Price (GBP),KV,Stator\nTern,32,17,1950,2306\nSkua,99000,17,1950,2306\nGull,30,17,,2306\n',
    );
    expect(parts.map(({ part }) => part !== undefined)).toEqual([true, false, false]);
    const [heavy] = parts[1]?.errors ?? [];
    expect(heavy).toMatchObject({
      line: 3,
      column: 2,
      path: '"Weight (g)" (mass)',
      allowed: '0.01 g to 5 kg',
    });
    expect(heavy?.remedy).toBe('Give at most 5 kg.');
    expect(parts[2]?.errors).toMatchObject([
      { line: 4, column: 4, path: '"KV" (speedConstant)', says: 'is missing' },
    ]);
  });

  test('units are never guessed', () => {
    const errors = errorsOf('Name,Weight,Price,KV,Stator\nTern,32,17,1950,2306\n');
    expect(errors.map(({ path }) => path)).toEqual(['"Weight" (mass)', '"Price" (price)']);
    expect(errors[0]?.remedy).toContain('Tell the unit of the column');
  });

  test('what decimals stand after is told when a list does not show it', () => {
    const text = 'name;mass;price;speedConstant;stator\nTern;1,234;17;1950;2306\n';
    const wishes: ListWishes = {
      kind: 'motor',
      columns: { mass: 'mass in g', price: 'price in GBP', speedConstant: 'speedConstant in rpm/V' },
    };
    expect(errorsOf(text, wishes)[0]?.says).toBe('it is not clear what stands before the decimals');
    const told = (decimals: 'point' | 'comma') => listed(text, { ...wishes, decimals }).parts[0]?.raw.mass;
    expect(told('comma')).toBe('1.234 g');
    expect(told('point')).toBe('1234 g');
  });

  test('values carry their own trust and spread, the list its usual one', () => {
    const text =
      'name,mass,weighed,doubt,price,speedConstant,stator,trust\nTern,32 g,measured,1.5,17 GBP,1950 rpm/V,2306,\nSkua,33 g,,,17 GBP,1950 rpm/V,2306,inferred\n';
    const { parts } = listed(text, {
      kind: 'motor',
      trust: 'maker',
      source: 'the club list',
      columns: { weighed: 'trust of mass', doubt: 'spread of mass in %' },
    });
    expect(parts[0]?.part?.mass).toMatchObject({ trust: 'measured', deviation: 0.015 * 0.032 });
    expect(parts[0]?.part).toMatchObject({ trust: 'maker', source: 'the club list' });
    expect(parts[1]?.part).toMatchObject({ trust: 'inferred' });
  });

  test('one list of several kinds, in its own words', () => {
    const text =
      'Art,name,mass,price,KV,stator,size\nAntrieb,Tern,32 g,17 GBP,1950,2306,\nLuft,Blade,4 g,3 GBP,,,5.1x3.6x3\n';
    const read = readList(
      text,
      'list.csv',
      {},
      {
        format: 'quadwright-columns-1',
        lists: [
          {
            columns: {
              Art: { as: 'kind', words: { Antrieb: 'motor', Luft: 'propeller' } },
              name: 'name',
              mass: 'mass',
              price: 'price',
              KV: 'speedConstant in rpm/V',
              stator: 'stator',
              size: 'size',
            },
          },
        ],
      },
      known,
    );
    if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
    expect(read.value.by).toBe('remembered');
    expect(read.value.parts.map(({ part }) => part?.kind)).toEqual(['motor', 'propeller']);
  });

  test('YAML and JSON lists read alike', () => {
    const yaml =
      'things:\n  - { Name: Tern, Weight: 32 g, Price: 17 GBP, KV: 1950, stator: 2306, shaft: { diameter: 5 mm, fixing: nut }, mountCircles: [16 mm, 19 mm] }\n';
    const { parts } = listed(yaml, { kind: 'motor' }, 'list.yaml');
    expect(parts[0]?.errors).toEqual([]);
    expect(parts[0]?.part).toMatchObject({
      shaft: { diameter: 0.005, fixing: 'nut' },
      mountCircles: [0.016, 0.019],
    });
    const json = JSON.stringify([{ Name: 'Tern', Weight: '32 g', Price: '17 GBP', KV: 1950, stator: 2306 }]);
    expect(listed(json, { kind: 'motor' }, 'list.json').parts[0]?.part?.name).toBe('Tern');
  });

  test('what cannot be a list is one clear error', () => {
    for (const [text, says] of [
      ['', 'the list is empty'],
      ['name,mass\n', 'the list has names of columns and no rows'],
      ['name,name\na,b\n', 'two columns have the name "name"'],
      ['name,mass\na,b,c\n', 'the row has 3 cells under 2 columns'],
      ['name,mass\n"a,b\n', 'a quote is opened and not closed, or stands inside a cell'],
    ] as const) {
      expect(errorsOf(text)[0]?.says, JSON.stringify(text)).toBe(says);
    }
  });

  test('prices at the rates of a day, stated in the note', () => {
    const rates = readRates(
      'format: quadwright-rates-1\nasOf: 2026-11-20\nsource: the bank\nrates: { EUR: 0.86 GBP }\n',
      'rates.yaml',
    );
    if (!rates.ok) throw new Error('the rates do not read');
    const { parts } = listed(PLAIN.replace('Price (GBP)', 'Price (EUR)'), {
      kind: 'motor',
      rates: rates.value,
    });
    // 17.90 x 0.86 = 15.394
    expect(parts[0]?.part?.price).toEqual({ amount: 15.39, currency: 'GBP' });
    expect(parts[0]?.part?.note).toBe('price 17.90 EUR at 0.86 GBP for 1 EUR, the bank, 2026-11-20');
  });
});

describe('parts known already', () => {
  const twice =
    'name,mass,price,speedConstant,stator\nGannet 2207,31 g,17 GBP,1950 rpm/V,2207\nTern,32 g,17 GBP,1950 rpm/V,2306\nTERN,33 g,17 GBP,1950 rpm/V,2306\n';

  test('are found by kind and name, on the shelf and in the list', () => {
    const { parts } = listed(twice);
    expect(parts.map(({ same }) => same?.where)).toEqual(['shipped shelf', undefined, 'list']);
    expect(parts[2]?.same).toMatchObject({ id: 'tern', line: 3 });
  });

  test('go where they are told to', () => {
    const { parts } = listed(twice);
    const ids = (choice: 'old' | 'new' | 'both') =>
      settle(parts, () => choice, shipped.parts).taken.map(({ id, mass }) => `${id} ${mass}`);
    expect(settle(parts, () => undefined, shipped.parts).open).toHaveLength(2);
    expect(ids('old')).toEqual(['tern 32 g']);
    expect(ids('new')).toEqual(['gannet-motor 31 g', 'tern 33 g']);
    expect(ids('both')).toEqual(['gannet-motor-2 31 g', 'tern 32 g', 'tern-2 33 g']);
  });

  test('a list taken in twice changes nothing the second time', () => {
    const first = listed(PLAIN);
    const shelf = ontoShelf(undefined, settle(first.parts, () => undefined, shipped.parts).taken);
    const laid = readShelf(shelf, 'own.yaml', shipped);
    if (!laid.ok) throw new Error(laid.errors.map(fileErrorText).join('\n'));
    const own = new Map([...laid.value.raw].filter(([id]) => !shipped.raw.has(id)));
    const again = readList(PLAIN, 'list.csv', {}, remembered(undefined, first.columns), { shipped, own });
    expect(again.ok && again.value.by).toBe('remembered');
    expect(again.ok && again.value.parts[0]?.same).toMatchObject({ where: 'own shelf', unchanged: true });
  });
});

test('a shelf keeps what its owner wrote when parts are laid onto it', () => {
  const own =
    '# mine\nformat: quadwright-shelf-1\nparts:\n  # weighed twice\n  - { id: tern-2306, kind: motor, name: Tern, price: 1 GBP, mass: 1 g, stator: 2306, speedConstant: 1950 rpm/V }\n  - { id: gull, basedOn: tern-2306, kind: motor, name: Gull } # the red one\n';
  const { taken } = settle(listed(PLAIN).parts, () => 'new', new Map());
  const text = ontoShelf(own, [...taken, { ...taken[0], id: 'another' }]);
  expect(text).toContain('# mine');
  expect(text).toContain('# the red one');
  const read = readShelf(text, 'own.yaml');
  expect(read.ok && [...read.value.parts.keys()]).toEqual(['tern-2306', 'gull', 'another']);
  expect(read.ok && read.value.parts.get('tern-2306')?.price.amount).toBe(17.9);
});

describe('numbers as lists write them', () => {
  test('by hand', () => {
    expect(plainNumber("1'234.5", 'point')).toBe('1234.5');
    expect(plainNumber('1.234,5', 'comma')).toBe('1234.5');
    expect(plainNumber('1,2,3', 'point')).toBeUndefined();
    expect(plainNumber('12.5', 'comma')).toBeUndefined();
    expect(decimalsOf(['1,5', '2'])).toBe('comma');
    expect(decimalsOf(['1,234', '2'])).toBe('unclear');
    expect(decimalsOf(['1.5', '2,5'])).toBe('unclear');
    expect(decimalsOf(['1,234.5'])).toBe('point');
    expect(decimalsOf(['17', '18'])).toBeUndefined();
  });

  test('any number written by the rules of a language reads back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e9 }),
        fc.constantFrom('en-GB', 'de-DE', 'de-CH'),
        (whole, language) => {
          const number = whole / 100;
          const text = number.toLocaleString(language, { minimumFractionDigits: 2 }).replaceAll('’', "'");
          expect(Number(plainNumber(text, language === 'de-DE' ? 'comma' : 'point'))).toBe(number);
        },
      ),
    );
  });
});

test('whatever the text, reading it ends in rows or in errors', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\n', '\r', ' ', '1', '\uFEFF') }),
      (text) => {
        const read = readCsvTable(text, 'x.csv');
        if (read.ok)
          for (const { cells } of read.value.rows) expect(cells).toHaveLength(read.value.columns.length);
        else expect(read.errors.length).toBeGreaterThan(0);
      },
    ),
  );
});

// The contract of `ask rotor --json` (DESIGN.md, section 10) as an outsider would lean on it.
import { describe, expect, it } from 'vitest';
import { quadwright } from './fakeIo.ts';

interface Answer {
  readonly rpm: number;
  readonly speed: number;
  readonly advanceRatio: number;
  readonly thrust: number | null;
  readonly thrustCoefficient: number | null;
  readonly powerCoefficient: number | null;
  readonly band: Record<'thrustCoefficient' | 'powerCoefficient', [number, number]> | null;
  readonly noSolution?: string;
}

// UIUC Propeller Database, da4022 5.0 x 3.75 (sources in test/against/uiuc.test.ts).
const TABLE = `r/R,c/R,beta
0.15,0.1269,41.63
0.30,0.2226,36.964
0.45,0.2299,28.316
0.60,0.2312,23.127
0.75,0.2317,19.766
0.90,0.2318,17.52
1.00,0.0134,14.05`;
const files = { 'b.csv': TABLE };
const ways: Record<string, string[]> = {
  nameplate: ['--pitch', '3.75 in'],
  chord: ['--pitch', '3.75 in', '--chord', '14 mm'],
  table: ['--blade', 'b.csv'],
  'table and pitch': ['--blade', 'b.csv', '--pitch', '3.75 in'],
};
const anchor = ['--anchor', 'rpm=6000,thrust=0.47 N,power=3.8 W'];

/** A 5 inch propeller of a blade table at 6000 rpm. */
const askTable = (table: string, blades: number, ...words: readonly string[]) =>
  quadwright(
    `ask rotor --diameter 5in --blades ${blades} --rpm 6000 --blade b.csv`.split(' ').concat(words),
    { 'b.csv': table },
  );

async function ask(words: readonly string[], blades = 2): Promise<Answer[]> {
  const head = ['ask', 'rotor', '--diameter', '5 in', '--blades', String(blades), '--json'];
  const { code, out, error } = await quadwright([...head, ...words], files);
  expect(code, error).toBe(0);
  expect(out).not.toMatch(/NaN|undefined|Infinity/);
  return JSON.parse(out);
}

/** A band that rises round its answer, or words. */
function expectWhole(answer: Answer): void {
  if (answer.thrust === null) {
    expect(answer.noSolution?.length).toBeGreaterThan(20);
    return;
  }
  for (const key of ['thrustCoefficient', 'powerCoefficient'] as const) {
    const [low, high] = answer.band?.[key] ?? [1, 0];
    expect(low).toBeLessThan(high);
    expect(answer[key]).toBeGreaterThan(low);
    expect(answer[key]).toBeLessThan(high);
  }
}

describe.each(Object.entries(ways))('ask rotor, known by %s', (_, words) => {
  it('answers in the order asked, rpm by rpm, each with its band', async () => {
    for (const extra of [[], anchor]) {
      const answers = await ask([...words, ...extra, '--rpm', '6000,4000', '--advance', '0.4,0,0.2']);
      expect(answers.map(({ rpm, advanceRatio }) => [rpm, Number(advanceRatio.toFixed(9))])).toEqual(
        [6000, 4000].flatMap((rpm) => [0.4, 0, 0.2].map((J) => [rpm, J])),
      );
      for (const answer of answers) {
        expect(answer.thrust).not.toBeNull();
        expectWhole(answer);
      }
    }
  });

  it('says in words what it cannot solve, from deep descent to faster than it is made for', async () => {
    for (const blades of [2, 3, 4, 6, 8]) {
      const flows = ['--rpm', '100,6000,30000', '--advance', '-5,-1,-0.3,-0.05,0,0.5,1,2,5'];
      const answers = await ask([...words, ...flows], blades);
      expect(answers).toHaveLength(27);
      answers.forEach(expectWhole);
      expect(answers.at(-1)?.noSolution).toContain('beyond');
    }
  });
});

it('a reading anchors: the answer at its rpm comes near it and the band narrows', async () => {
  for (const words of Object.values(ways)) {
    const [free] = await ask([...words, '--rpm', '6000']);
    const [fitted] = await ask([...words, ...anchor, '--rpm', '6000']);
    const width = (a: Answer | undefined) => {
      const [low, high] = a?.band?.thrustCoefficient ?? [0, 0];
      return high - low;
    };
    expect(width(fitted)).toBeLessThan(0.7 * width(free));
    expect(Math.abs((fitted?.thrust ?? 0) / 0.47 - 1)).toBeLessThan(0.04);
  }
});

// Only the first point asked was looked at: anchored at 6000 rpm, `--rpm 6000,14000` told nothing to measure, `14000,6000` did.
it('says what to measure next at whichever shaft speed gains most, in any order', async () => {
  const next = async (...words: string[]) => {
    const { out } = await quadwright(['ask', 'rotor', '--diameter', '5 in', '--blades', '3', ...words]);
    // A sentence goes on below itself after 80 columns.
    return [...out.matchAll(/^Measure next[^.]*\./gm)].map(([told]) => told.replaceAll('\n', ' '));
  };
  const plate = ['--pitch', '3.75 in', ...anchor];
  const [told, ...more] = await next(...plate, '--rpm', '6000,14000');
  expect(more).toEqual([]);
  expect(told).toMatch(
    /^Measure next: static thrust and power at 14000 rpm; it narrows the thrust band to \d+ %/,
  );
  expect(await next(...plate, '--rpm', '14000,6000')).toEqual([told]);
  // Among its own points there is nothing left to gain, and a point without an answer hides no advice.
  expect(await next(...plate, '--rpm', '6000')).toEqual([]);
  const deep = await next('--pitch', '3.75 in', '--rpm', '6000', '--speed=-4 m/s,0 m/s');
  expect(deep.join()).toContain('at 6000 rpm');
});

it('says where a tip is faster than any that was measured', async () => {
  const words = ['ask', 'rotor', '--diameter', '5 in', '--pitch', '4 in', '--blades', '3', '--rpm'];
  expect((await quadwright([...words, '30000'])).out).toContain('tip Mach 0.3; here it is 0.59');
  expect((await quadwright([...words, '10000'])).out).not.toContain('tip Mach');
});

it('has no answer for tips near and beyond the speed of sound, along the axis and along the disc', async () => {
  // Once 74 N at tip Mach 1.2: an rpm with a digit too many got an answer.
  const words = ['--pitch', '4.3 in', '--rpm', '40000,60000', '--speed', '0 m/s'];
  for (const extra of [[], ['--along', '20 m/s']]) {
    const [fast, supersonic] = await ask([...words, ...extra], 3);
    expect(fast?.thrust).toBeGreaterThan(0);
    expect(supersonic?.thrust).toBeNull();
    expect(supersonic?.noSolution).toContain('Mach 1.');
  }
});

it('gives a band at the edge of the vortex ring, where a steeper blade has no answer', async () => {
  const words = ['ask', 'rotor', '--diameter', '31 mm', '--pitch', '20 mm', '--blades', '2', '--json'];
  const { out } = await quadwright([...words, '--rpm', '6000', '--advance', '-1']);
  (JSON.parse(out) as Answer[]).forEach(expectWhole);
});

it.each([
  ['thrust alone', [...(ways.nameplate ?? []), '--anchor', 'rpm=6000,thrust=1.9 N'], 'power is missing'],
  ['power alone', [...(ways.nameplate ?? []), '--anchor', 'rpm=6000,power=20 W'], 'thrust is missing'],
  [
    'a reading of another propeller',
    [...(ways.nameplate ?? []), '--anchor', 'rpm=6000,thrust=1.9 N,power=900 W'],
    'check diameter',
  ],
  ['a chord beside a table', [...(ways.table ?? []), '--chord', '12 mm'], 'already'],
  ['speed and advance', [...(ways.nameplate ?? []), '--speed', '1 m/s', '--advance', '0'], 'one of the two'],
  ['no shape at all', [], '--pitch is missing'],
  // Once a fault of ours, exit 3: the height went to the atmosphere without a look at its range.
  ['a height above the air we know', [...(ways.nameplate ?? []), '--height', '30 km'], '-2000 m to 20000 m'],
])('refuses %s with a remedy', async (_, words, told) => {
  const { code, error } = await quadwright(
    ['ask', 'rotor', '--diameter', '5 in', '--blades', '3', '--rpm', '6000', ...words],
    files,
  );
  expect(code).toBe(2);
  expect(error).toContain(told);
});

it.each([
  ['ends at mid-span', TABLE.split('\n').slice(0, 5).join('\n'), 'b.csv:5'],
  ['has no chord', TABLE.replace(/,0\.\d+,/g, ',0,'), 'every c/R is 0'],
  ['goes back to the root', `${TABLE}\n0.15,0.12,40`, 'b.csv:9'],
  ['has a hole', TABLE.replace('0.2299', ''), 'b.csv:4'],
])('refuses a table that %s', async (_, table, told) => {
  const { code, error } = await askTable(table, 3);
  expect(code).toBe(2);
  expect(error).toContain(told);
});

it('tells everything wrong with a table at once, by the lines of the file', async () => {
  const table =
    '# measured at home\n\nr/R,c/R,beta\n0.15,0.11,x\n0.5,0.19,22.4\n0.75,-0.15,15.9\n0.7,0.04,10\n';
  const { code, error } = await askTable(table, 3);
  expect(code).toBe(2);
  expect(error.split('\n').map((line) => line.slice(0, 22))).toEqual([
    'b.csv:4: beta is "x". ',
    'b.csv:6: c/R is "-0.15',
    'b.csv:7: r/R 0.7 does ',
    'b.csv:7: the last stat',
    '',
  ]);
});

// Once averaged without a word: a table of 3.75 in with --pitch "8 in" told half again as much power, bands as narrow.
it.each([
  ['of another pitch', TABLE, ['--pitch', '8 in'], '34.2\u00a0deg at 0.75 R, the table has 19.8\u00a0deg'],
  ['in radians', 'r/R,c/R,beta\n0.3,0.2,0.6\n0.75,0.2,0.34\n1,0.1,0.2', [], 'Were these radians?'],
  ['of the tip alone', 'r/R,c/R,beta\n0.7,0.2,20\n0.8,0.2,18\n0.95,0.1,16', [], 'begins at r/R 0.7'],
])('answers for a table %s, but says what speaks against it', async (_, table, words, told) => {
  const { code, out, error } = await askTable(table, 2, '--json', ...words);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toHaveLength(1);
  expect(error).toContain(told);
});

it('has nothing to say against a table and a pitch that go together', async () => {
  const { error } = await askTable(TABLE, 2, '--pitch', '3.75 in');
  expect(error).toBe('');
});

it('says once below the table why a point has no solution', async () => {
  const { code, out } = await quadwright(
    'ask rotor --diameter 5in --blades 3 --pitch 3.75in --rpm 6000,9000 --speed=-4m/s'.split(' '),
  );
  expect(code).toBe(0);
  expect(out.match(/vortex ring/g)).toHaveLength(1);
  expect(out).toMatch(/^No solution: descending at 4\.0\sm\/s/m);
});

describe('along the disc', () => {
  const words = [...(ways.nameplate ?? []), '--rpm', '12000'];

  it('tells force aft, side force and hub moments with bands, and is the axial rotor at no such speed', async () => {
    const [plain] = await ask(words, 3);
    const answers = (await ask([...words, '--along', '0 m/s,10 m/s'], 3)) as (Answer & {
      readonly edgewise?: {
        readonly inPlaneForce: number;
        readonly momentAdvancingUp: number;
        readonly band: Record<string, [number, number]>;
      };
    })[];
    const [still, flown] = answers;
    expect(still?.thrust).toBeCloseTo(plain?.thrust ?? 0, 6);
    expect(Math.abs(still?.edgewise?.inPlaneForce ?? 1)).toBeLessThan(1e-6);
    // Glauert: at a given speed of turning, flow along the disc carries the wake away and adds thrust.
    expect(flown?.thrust ?? 0).toBeGreaterThan(still?.thrust ?? 0);
    expect(flown?.edgewise?.inPlaneForce).toBeGreaterThan(0);
    expect(flown?.edgewise?.momentAdvancingUp).toBeGreaterThan(0);
    const [low = 0, high = 0] = flown?.edgewise?.band.inPlaneForce ?? [];
    expect(high - low).toBeGreaterThan(0.5 * (flown?.edgewise?.inPlaneForce ?? 0));
    answers.forEach(expectWhole);
  });

  it('says in words what is too fast for the retreating blade', async () => {
    const [answer] = await ask([...words, '--along', '60 m/s'], 3);
    expect(answer?.noSolution).toContain('retreating blade');
  });
});

import { describe, expect, it } from 'vitest';
import { demo, quadwright } from './fakeIo.ts';

// 0.70 V a cell at five times what the pack bears was once a number like any other, and the footer of an old pack a new one's.
describe('ask pack under its cut-off', () => {
  const ask = async (...words: string[]) =>
    (await quadwright(['ask', 'pack', '--cells', '6', '--capacity', '1300 mAh', '--rate', '120', ...words]))
      .out;

  it('says to land, and gives no figure where the pack gives out', async () => {
    expect(await ask('--charge', '5 %', '--current', '80 A')).toContain(
      'under the cut-off of 3.3\u00a0V a cell: land',
    );
    const out = await ask('--charge', '5 %', '--current', '400 A');
    expect(out).toMatch(/400 +- +- +\*\*\n\*\* the pack gives out, under 2.5/);
    const { points } = JSON.parse(await ask('--charge', '5 %', '--current', '400 A', '--json'));
    expect(points[0].cells).toBe('gives out');
    expect(points[0].voltage).toBeUndefined();
    expect(await ask('--charge', '80 %', '--current', '20 A')).not.toMatch(/cut-off|gives out/);
  });

  it('tells the resistance of the pack as old as it is', async () => {
    const resistance = async (cycles: string) =>
      JSON.parse(await ask('--cycles', cycles, '--json')).pack.resistance;
    expect((await resistance('250')) / (await resistance('0'))).toBeCloseTo(1.5, 9);
  });
});

// A cruiser's pack at -20 degC was once told 1.37 V a cell with a thrust beside it; a trim at no charge 3.13 V without a word.
it('a build on a pack under its cut-off is told to land, and one that gives out has no figures', async () => {
  const trim = await quadwright(['ask', 'trim', `${demo}/turnstone.yaml`, '--charge', '0 %']);
  expect(trim.out).toContain('under the cut-off of 3.3\u00a0V a cell: land');
  const brief = `format: quadwright-brief-1
name: cold day
purpose: cruising
budget: 900 GBP
currency: GBP
region: UK
site: { height: 0 m, temperature: -20 degC, wind: 0.5 m/s }
reserve: 20 %
`;
  const cold = (...words: string[]) =>
    quadwright(['ask', ...words, 'demo/cruiser/curlew-li-ion.yaml', '--brief', 'cold.yaml'], {
      'cold.yaml': brief,
    });
  const point = await cold('point', '--charge', '20 %', '--throttle', '100 %');
  expect(point.code).toBe(2);
  expect(point.error).toContain('the pack gives out, under 2');
  expect((await cold('heat')).out).toMatch(/Last full throttle[^\n]*the pack gives out/);
});

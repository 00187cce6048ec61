import { expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { compare } from '../../../src/choose/compare.ts';
import { resolveCandidate } from '../../../src/choose/shortlist/candidate.ts';
import { demo, question, ready, shelf } from './smallShelf.ts';

it('builds of a shortlist, compared, stand as they do on it', async () => {
  const asked = demo('first-freestyle', 'turnstone');
  const small = question(asked, {
    frames: ['turnstone-5', 'whimbrel-5'],
    motors: ['haar-2306-1720'],
    propellers: ['spume-5130-3'],
    packs: ['samphire-1300-6s', 'samphire-1100-6s'],
    electronics: [{ controllers: 'groyne-45', flightController: 'daymark-30' }],
    cameras: ['periwinkle-19'],
  });
  const search = ready(small, asked.brief);
  const { top } = await search.search();
  expect(top.length).toBeGreaterThan(2);
  const facts = new Map([...search.context.rotors].map(([id, rotor]) => [id, rotor.facts]));
  for (const tier of ['hover', 'full'] as const) {
    const told = top.slice(0, tier === 'full' ? 2 : 8).map(({ choice }) => {
      const craft = resolveCandidate(asked.template, choice, shelf, facts);
      const found = craft.ok ? assess(craft.value.build, { ...search.context, tier }) : undefined;
      if (!found?.ok) throw new Error(JSON.stringify(choice));
      return found.value;
    });
    const { columns, order } = compare(told, small.wants);
    expect(order).toEqual(told.map((_, index) => index));
    for (const [index, { standing }] of columns.entries()) {
      expect(standing).toBeCloseTo(top[index]?.standing ?? Number.NaN, 12);
    }
  }
});

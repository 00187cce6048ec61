import type { Craft } from '../../../build/craft.ts';
import type { Measure } from '../../types.ts';
import type { HitReport, HitWay } from '../airframeData.ts';

const Z90 = 1.2815515655446004;
const SOURCE =
  'spring and mass (Abrate 1998), beam stresses, docs/method/airframe.md; surfaces: common practice';

const SAID: Readonly<Record<Exclude<HitWay, 'prop strike'>, readonly [label: string, how: string]>> = {
  flat: ['drop on one motor', 'Dropped level so that one arm lands first'],
  'end-on': ['along an arm', 'Struck at the motor along the arm'],
  'side-on': ['across an arm', 'Struck at the motor across the arm'],
  'from ahead': ['straight ahead', 'A front motor struck flying straight ahead'],
};

/**
 * The speed at which half of the weakest arms break on wood, for each way of being struck, and
 * what is left of an arm when a blade breaks on something.
 *
 * @param stiffer the hits on wood again, its stiffness doubled
 */
export function hitMeasures(
  craft: Craft,
  hits: readonly HitReport[],
  stiffer: readonly HitReport[],
): readonly Measure[] {
  const { scatter } = craft.frame.material.strength;
  const measures = (Object.keys(SAID) as (keyof typeof SAID)[]).flatMap((way): readonly Measure[] => {
    const weakest = weakestOf(hits, way);
    const value = weakest?.breakingSpeed;
    if (weakest === undefined || value === undefined) return [];
    const other = weakestOf(stiffer, way)?.breakingSpeed ?? value;
    const contact = Math.abs(Math.log(other / value));
    const deviation = Math.hypot(weakest.logDeviation, contact);
    const [label, how] = SAID[way];
    const thickness = Math.max(0, weakest.logDeviation ** 2 - scatter ** 2);
    const share = (part: number) => part / Math.max(deviation ** 2, 1e-12);
    return [
      {
        id: `breaking-speed-${way.replaceAll(' ', '-')}`,
        label: `half break at, ${label}`,
        sheet: 'knocks',
        quantity: 'speed',
        value,
        band: [value * Math.exp(-Z90 * deviation), value * Math.exp(Z90 * deviation)],
        better: 'more',
        how: `${how}, against wood; the weakest is the ${weakest.arm}, by ${weakest.weakest}. Bolt holes counted, damage below breaking not.`,
        source: SOURCE,
        leansOn: [
          { input: 'strength of the sheet', trust: 'inferred' as const, share: share(scatter ** 2) },
          { input: 'stiffness of what is hit', trust: 'inferred' as const, share: share(contact ** 2) },
          { input: 'thickness of the sheet', trust: 'maker' as const, share: share(thickness) },
        ]
          .filter((leaning) => leaning.share >= 0.03)
          .sort((a, b) => b.share - a.share),
      },
    ];
  });
  const strike = hits.filter(({ way }) => way === 'prop strike').sort((a, b) => a.reserve - b.reserve)[0];
  if (strike === undefined) return measures;
  const spread = Math.exp(Z90 * strike.logDeviation);
  return [
    ...measures,
    {
      id: 'prop-strike-reserve',
      label: "arm's reserve when a blade breaks",
      sheet: 'knocks',
      quantity: 'ratio',
      value: strike.reserve,
      band: [strike.reserve / spread, strike.reserve * spread],
      better: 'more',
      how: 'Strength of the arm over its stress when one blade breaks off near the root, at the height of the disc.',
      source: 'beam stresses, docs/method/airframe-facts.md; blade strengths from memory',
      leansOn: [{ input: 'strength of blade and sheet', trust: 'inferred', share: 1 }],
    },
  ];
}

function weakestOf(hits: readonly HitReport[], way: HitWay): HitReport | undefined {
  return hits
    .filter((each) => each.way === way && each.surface === 'wood')
    .sort((a, b) => (a.breakingSpeed ?? 0) - (b.breakingSpeed ?? 0))[0];
}

import { heaviestOf } from '../massBand.ts';
import { massClassOf, REGION_RULES, radioBandOf, sourceOf } from './regions.ts';
import {
  fails,
  fits,
  grams,
  gramsOfLaw,
  megahertz,
  metres,
  metresPerSecond,
  milliwatts,
  SLACK,
} from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

/** Room to keep under a mass threshold, and how near it is worth saying so [kg]. */
const MASS_MARGIN = 5e-3;
const NEAR = 30e-3;
const LOCAL = 'local rules decide';
const BY_REGION = 'regulations by region, dated: src/assess/fit/regions.ts; local rules decide';

export const lawRules: readonly FitRule[] = [
  {
    id: 'mass-class',
    title: 'legal mass class',
    limit: 'EU 250 g and 19 m/s, UK 100 and 250 g, US 0.55 lb',
    severities: ['note'],
    source: BY_REGION,
    look: ({ craft, brief, figures }) => {
      const { mass } = craft.massProperties;
      const own = massClassOf(brief.region, mass);
      if (own === undefined) {
        return [
          fails(
            'note',
            `${grams(mass)} all-up, and the brief does not tell the region.`,
            'Look up the mass thresholds where you fly, and give the region in the brief.',
            ['frame'],
            { source: LOCAL },
          ),
        ];
      }
      const source = sourceOf(own);
      if (own.underSpeed !== undefined && (figures.topSpeed ?? 0) >= own.underSpeed) {
        return [
          fails(
            'note',
            `${grams(mass)}, but it reaches ${metresPerSecond(figures.topSpeed ?? 0)}: ${own.says}.`,
            'Limit its speed in the firmware, or fly by the rules of the next class.',
            ['frame'],
            { number: { value: figures.topSpeed ?? 0, limit: own.underSpeed, quantity: 'speed' }, source },
          ),
        ];
      }
      return [
        fails(
          'note',
          `${grams(mass)}, pack included: in the ${brief.region} ${own.says}.`,
          `${own.duty} Local rules decide.`,
          ['frame'],
          {
            ...(Number.isFinite(own.upTo)
              ? { number: { value: mass, limit: own.upTo, quantity: 'mass' } }
              : {}),
            source,
          },
        ),
      ];
    },
  },
  {
    id: 'mass-threshold-near',
    title: 'margin to a mass threshold',
    limit: '5 g under it, pack included',
    severities: ['risk'],
    source: BY_REGION,
    look: ({ craft, brief }) => {
      const { mass } = craft.massProperties;
      const own = massClassOf(brief.region, mass);
      // Far from any threshold there is nothing to say.
      if (own === undefined || !Number.isFinite(own.upTo) || own.upTo - mass > NEAR) return [];
      const left = own.upTo - mass;
      const heaviest = heaviestOf(craft);
      const over = heaviest >= own.upTo;
      const number = { value: left, limit: MASS_MARGIN, quantity: 'mass' as const };
      return [
        left < MASS_MARGIN - SLACK || over
          ? fails(
              'risk',
              `${over ? '' : 'Only '}${grams(left)} left to the ${gramsOfLaw(own.upTo)} threshold, pack included${over ? `, and it may well come to ${grams(heaviest)}` : ''}.`,
              'Weigh it and write the mass in the build; a strap or a blob of solder tips it over.',
              ['frame', 'pack'],
              { number, source: sourceOf(own) },
            )
          : fits(`${grams(left)} left to the ${gramsOfLaw(own.upTo)} threshold.`, ['frame'], {
              number,
              source: sourceOf(own),
            }),
      ];
    },
  },
  {
    id: 'guards-no-permission',
    title: 'guards and people',
    limit: 'any guarded craft or filming near people',
    severities: ['note'],
    source: BY_REGION,
    look: ({ craft, brief }) => {
      if (brief.purpose !== 'guarded filming' && craft.frame.guards.length === 0) return [];
      const rule = brief.region === 'other' ? undefined : REGION_RULES[brief.region].people;
      return [
        fails(
          'note',
          `Guards soften a touch; they are no permission to fly over or near people${rule === undefined ? '' : `: ${rule.says}`}.`,
          'Keep bystanders off, ask those filmed, and follow the local rules.',
          ['frame'],
          { source: rule === undefined ? LOCAL : sourceOf(rule) },
        ),
      ];
    },
  },
  {
    id: 'observer',
    title: 'observer with goggles',
    limit: 'any flight by goggles',
    severities: ['note'],
    source: BY_REGION,
    look: ({ craft, brief }) => {
      if (craft.parts.videoLink === undefined) return [];
      const rule = brief.region === 'other' ? undefined : REGION_RULES[brief.region].observer;
      return [
        fails(
          'note',
          'Flying by goggles needs an observer beside you who sees the aircraft and the sky round it.',
          'Never fly by goggles alone, and stay within sight.',
          ['videoLink'],
          { source: rule === undefined ? LOCAL : sourceOf(rule) },
        ),
      ];
    },
  },
  {
    id: 'beyond-sight',
    title: 'distance and sight',
    limit: '327 times the largest size and 20 m: how far its attitude is seen',
    severities: ['note'],
    source:
      'EASA guidance to EU 2019/947, attitude line of sight of rotorcraft (from memory); local rules decide',
    look: ({ craft, brief }) => {
      const { farthest } = brief;
      if (farthest === undefined) return []; // the brief tells no distance
      const size = craft.layout.diagonal + (craft.rotors[0]?.blade.diameter ?? 0);
      const seen = 327 * size + 20;
      const number = { value: farthest, limit: seen, quantity: 'length' as const };
      return [
        farthest > seen
          ? fails(
              'note',
              `It is flown ${metres(farthest)} out; a craft of this size is seen to about ${metres(seen)}. Beyond that is beyond sight, which wants a permission of its own.`,
              'Stay nearer, walk along, or ask the authority first.',
              ['frame'],
              { number },
            )
          : fits(`Flown ${metres(farthest)} out, seen to about ${metres(seen)}.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'video-power-legal',
    title: 'legal power of the video link',
    limit: 'EU and UK 25 mW radiated at 5.8 GHz; US 4 W radiated',
    severities: ['risk', 'note'],
    source: BY_REGION,
    look: (context) => {
      const { build, parts } = context.craft;
      const link = parts.videoLink;
      if (link === undefined) return [];
      const gain = parts.antennas.find((antenna) => antenna.for === 'video')?.gain ?? 0;
      return [
        legalPower(context, {
          seat: 'videoLink',
          name: 'video link',
          power: build.videoLink?.outputPower ?? link.outputPower,
          gain,
          frequency: link.frequency,
        }),
      ];
    },
  },
];

export interface Sender {
  readonly seat: string;
  readonly name: string;
  /** Into its antenna [W]. */
  readonly power: number;
  /** Of the antenna [dBi]. */
  readonly gain: number;
  /** [Hz] */
  readonly frequency: number;
}

/** Power out, and power radiated with the antenna's gain, against the region's band. */
export function legalPower({ brief }: FitContext, sender: Sender): FitVerdict {
  const { seat, name, power, gain, frequency } = sender;
  const band = radioBandOf(brief.region, frequency);
  if (band === undefined) {
    return fails(
      'note',
      `The ${name} sends ${milliwatts(power)} at ${megahertz(frequency)}, and no limit is known here for that band${brief.region === 'other' ? '' : ` in the ${brief.region}`}.`,
      'Look up what your region and licence allow before the first flight.',
      [seat],
      { source: LOCAL },
    );
  }
  const source = sourceOf(band);
  const radiated = power * 10 ** (gain / 10);
  const number = { value: radiated, limit: band.radiated, quantity: 'power' as const };
  if (power > band.radiated * (1 + SLACK)) {
    return fails(
      'risk',
      `The ${name} is set to ${milliwatts(power)}; without a licence ${milliwatts(band.radiated)} radiated is allowed in the ${brief.region} in this band (${band.says}).`,
      `Set it to ${milliwatts(band.radiated)} or less. Local rules decide.`,
      [seat],
      { number, source },
    );
  }
  return radiated > band.radiated * (1 + SLACK)
    ? fails(
        'note',
        `The ${name} sends ${milliwatts(power)}, which its antenna of ${gain} dBi bundles to ${milliwatts(radiated)} radiated; ${milliwatts(band.radiated)} is allowed in the ${brief.region}.`,
        'A step less power or a plainer antenna keeps to the letter. Local rules decide.',
        [seat],
        { number, source },
      )
    : fits(`The ${name} radiates ${milliwatts(radiated)} of ${milliwatts(band.radiated)} allowed.`, [seat], {
        number,
        source,
      });
}

import { isNovice, noviceSimulatorHours, noviceWind } from '../windows.ts';
import { fails, fits, grams } from './say.ts';
import type { FitRule } from './types.ts';

/** A gram or two of tape must not tip a build over a threshold. */
const MASS_MARGIN = 5e-3;

export const pilotRules: readonly FitRule[] = [
  {
    id: 'mass-limit',
    title: "brief's mass limit",
    look: ({ craft, brief }) => {
      if (brief.massLimit === undefined) return [];
      return massAgainst(
        craft.massProperties.mass,
        brief.massLimit,
        "the brief's limit",
        'common practice, no source',
      );
    },
  },
  {
    id: 'mass-class',
    title: 'legal mass class',
    look: ({ craft, brief }) => {
      const { mass } = craft.massProperties;
      switch (brief.region) {
        case 'EU':
          return [
            mass < 0.25
              ? fits(
                  `${grams(mass)}, pack included: under 250 g a private build may fly in A1 if it also stays under 19 m/s. Registration is needed with a camera.`,
                  ['frame'],
                  { number: { value: mass, limit: 0.25, quantity: 'mass' }, source: EU },
                )
              : fails(
                  'note',
                  `${grams(mass)}: a private build of 250 g or more flies in A3, away from people and 150 m from built-up areas.`,
                  'Register as operator, take the online training, and check the local rules of the day.',
                  ['frame'],
                  { number: { value: mass, limit: 0.25, quantity: 'mass' }, source: EU },
                ),
          ];
        case 'UK':
          return [
            fails(
              'note',
              `${grams(mass)}: in the UK ${mass < 0.1 ? 'under 100 g few duties apply' : mass < 0.25 ? 'from 100 g an identity is needed' : 'a private build of 250 g or more flies far from people'}.`,
              'Look up the thresholds of the day with the aviation authority; they changed lately.',
              ['frame'],
              { source: 'UK Regulation 2019/947 as retained (from memory; local rules decide)' },
            ),
          ];
        case 'US':
          return [
            fails(
              'note',
              `${grams(mass)}: in the US ${mass <= 0.25 ? 'recreational flying at or under 250 g needs no registration' : 'over 250 g it must be registered and carry remote identification'}.`,
              'Take the recreational safety test, and check the airspace.',
              ['frame'],
              {
                number: { value: mass, limit: 0.25, quantity: 'mass' },
                source: '14 CFR 48 and 89 (from memory; local rules decide)',
              },
            ),
          ];
        case 'other':
          return [
            fails(
              'note',
              `${grams(mass)} all-up. The rules of the place are not told.`,
              'Look up the mass thresholds where you fly.',
              ['frame'],
              {
                source: 'local rules decide',
              },
            ),
          ];
      }
    },
  },
  {
    id: 'mass-threshold-near',
    title: 'margin to a mass threshold',
    look: ({ craft, brief }) => {
      const { mass } = craft.massProperties;
      const thresholds = brief.region === 'UK' ? [0.1, 0.25] : [0.25];
      const next = thresholds.find((threshold) => mass < threshold);
      if (next === undefined || next - mass > 0.03) return [];
      const number = { value: next - mass, limit: MASS_MARGIN, quantity: 'mass' as const };
      return [
        next - mass < MASS_MARGIN
          ? fails(
              'risk',
              `Only ${grams(next - mass)} left to the ${grams(next)} threshold, pack included.`,
              'Weigh every part; a strap or a blob of solder tips it over.',
              ['frame', 'pack'],
              { number },
            )
          : fits(`${grams(next - mass)} left to the ${grams(next)} threshold.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'simulator-first',
    title: 'simulator before the first aircraft',
    look: ({ craft, brief }) => {
      if (!isNovice(brief.pilot)) return [];
      const { simulatorHours } = brief.pilot;
      const number = {
        value: simulatorHours * 3600,
        limit: noviceSimulatorHours * 3600,
        quantity: 'time' as const,
      };
      const small = Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter)) < 3.2 * 0.0254;
      return [
        simulatorHours < noviceSimulatorHours && !(small && craft.frame.guards.length > 0)
          ? fails(
              'risk',
              `${simulatorHours} hours of simulator and ${brief.pilot.flightsFlown} flights flown: most first crashes happen in the first ten hours, which cost nothing in a simulator.`,
              `${noviceSimulatorHours} to 20 hours of simulator first, or a guarded craft of 2 to 3 inches.`,
              ['frame'],
              { number },
            )
          : fits(`${simulatorHours} hours of simulator.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'novice-wind',
    title: 'wind for the pilot',
    look: ({ brief }) => {
      if (!isNovice(brief.pilot)) return [];
      const wind = brief.site.wind.value;
      const number = { value: wind, limit: noviceWind, quantity: 'speed' as const };
      return [
        wind > noviceWind
          ? fails(
              'risk',
              `A mean wind of ${wind.toFixed(0)} m/s at the site; a novice keeps to ${noviceWind} m/s.`,
              'Learn on calm mornings, whatever the aircraft could hold.',
              ['frame'],
              { number },
            )
          : fits(`Mean wind of ${wind.toFixed(0)} m/s.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'guards-no-permission',
    title: 'guards and people',
    look: ({ craft, brief }) =>
      brief.purpose === 'guarded filming' || craft.frame.guards.length > 0
        ? [
            fails(
              'note',
              'Guards soften a touch; they are no permission to fly over or near people.',
              'Keep bystanders off, ask those filmed, and follow the local rules.',
              ['frame'],
            ),
          ]
        : [],
  },
  {
    id: 'observer',
    title: 'observer with goggles',
    look: ({ craft }) =>
      craft.parts.videoLink === undefined
        ? []
        : [
            fails(
              'note',
              'Flying by goggles needs an observer beside you who sees the aircraft and the sky round it.',
              'Never fly by goggles alone, and stay within sight.',
              ['videoLink'],
              { source: 'EU 2019/947 UAS.OPEN.060(4); 14 CFR 107.33 (from memory; local rules decide)' },
            ),
          ],
  },
];

const EU = 'EU 2019/947 and 2019/945, open category (from memory; local rules decide)';

function massAgainst(mass: number, limit: number, what: string, source: string) {
  const number = { value: mass, limit, quantity: 'mass' as const };
  return [
    mass > limit
      ? fails(
          'stop',
          `${grams(mass)} all-up is over ${what} of ${grams(limit)}.`,
          'A lighter pack or frame.',
          ['frame', 'pack'],
          {
            number,
            source,
          },
        )
      : fits(`${grams(mass)} all-up of ${grams(limit)}.`, ['frame'], { number, source }),
  ];
}

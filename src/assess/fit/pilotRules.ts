import { isNovice, noviceSimulatorHours, noviceWind } from '../windows.ts';
import { largestPropeller } from './perMotor.ts';
import { countOf, fails, fits, grams, metresPerSecond, SLACK } from './say.ts';
import type { FitRule } from './types.ts';

/** Guarded craft up to this size are for learning [m]. */
const SMALL = 3.2 * 0.0254;

export const pilotRules: readonly FitRule[] = [
  {
    id: 'mass-limit',
    title: "brief's mass limit",
    limit: "the brief's, pack included",
    severities: ['stop'],
    source: 'the brief',
    look: ({ craft, brief }) => {
      const limit = brief.massLimit;
      if (limit === undefined) return [];
      const { mass } = craft.massProperties;
      const number = { value: mass, limit, quantity: 'mass' as const };
      return [
        mass > limit + SLACK
          ? fails(
              'stop',
              `${grams(mass)} all-up is over the brief's limit of ${grams(limit)}.`,
              `Save ${grams(mass - limit)}: a lighter pack or frame first.`,
              ['frame', 'pack'],
              { number },
            )
          : fits(`${grams(mass)} all-up of ${grams(limit)}.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'simulator-first',
    title: 'simulator before the first aircraft',
    limit: '10 hours for a novice, or a guarded craft up to 3 in',
    severities: ['risk'],
    look: (context) => {
      const { craft, brief } = context;
      if (!isNovice(brief.pilot)) return [];
      const { simulatorHours, flightsFlown } = brief.pilot;
      const number = {
        value: simulatorHours * 3600,
        limit: noviceSimulatorHours * 3600,
        quantity: 'time' as const,
      };
      const gentle = largestPropeller(context) < SMALL && craft.frame.guards.length > 0;
      return [
        simulatorHours < noviceSimulatorHours && !gentle
          ? fails(
              'risk',
              `${countOf(simulatorHours, 'hour')} of simulator and ${countOf(flightsFlown, 'flight')} flown: the crashes of the first ten hours cost nothing in a simulator.`,
              `${noviceSimulatorHours} to 20 hours of simulator first, or a guarded craft of 2 to 3 inches.`,
              ['frame'],
              { number },
            )
          : fits(`${countOf(simulatorHours, 'hour')} of simulator.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'novice-wind',
    title: 'wind for the pilot',
    limit: '6 m/s for a novice',
    severities: ['risk'],
    look: ({ brief }) => {
      if (!isNovice(brief.pilot)) return [];
      const wind = brief.site.wind.value;
      const number = { value: wind, limit: noviceWind, quantity: 'speed' as const };
      return [
        wind > noviceWind + SLACK
          ? fails(
              'risk',
              `A mean wind of ${metresPerSecond(wind)} at the site; a novice keeps to ${metresPerSecond(noviceWind)}.`,
              'Learn on calm mornings, whatever the aircraft could hold.',
              ['frame'],
              { number },
            )
          : fits(`Mean wind of ${metresPerSecond(wind)}.`, ['frame'], { number }),
      ];
    },
  },
];

import { hoverStory } from '../../flight/hoverStory.ts';
import type { StyleFlight } from '../../flight/styleFlight.ts';
import { styles } from '../../flight/styles.ts';
import { neutralLevers, type Style } from '../../flight/types.ts';
import { easingOf } from '../easing.ts';
import { shifted } from '../flownMeasures.ts';
import { leverStates } from '../levers.ts';
import type { Measure } from '../types.ts';
import { bandedMeasures, type MeasureForm, type Numbers } from './banded.ts';
import type { Flight, PartContext } from './types.ts';

const ALL: readonly Style[] = Object.values(styles);

/** Minutes flown in every style, gentle to racing, each with its band: `assess` tells the pilot's own alone. */
export function minutesByStyle({
  craft,
  flight,
}: PartContext & { readonly flight: Flight }): readonly Measure[] {
  const nominal = hoverStory(flight.model, neutralLevers, ALL);
  if (!nominal.ok) return [];
  const minutes = ({ styles: flown }: typeof nominal.value): Numbers =>
    Object.fromEntries(flown.map(({ style, duration }) => [idOf(style), duration]));
  return bandedMeasures(
    ALL.map((style, i) => formOf(style, nominal.value.styles[i])),
    minutes(nominal.value),
    leverStates(
      craft.unknowns.filter(({ lever }) => lever !== 'dragScale'),
      flight.doubt,
    ),
    ({ levers, balanceShift }) => {
      const raised = hoverStory(shifted(flight.model, balanceShift), levers, ALL, nominal.value);
      return raised.ok ? minutes(raised.value) : {};
    },
  );
}

const idOf = (style: string): string => `minutes-${style.replaceAll(' ', '-')}`;

const formOf = (style: Style, flown: StyleFlight | undefined): MeasureForm => ({
  id: idOf(style.name),
  label: `minutes flown, ${style.name}`,
  sheet: 'flight',
  quantity: 'time',
  better: 'more',
  how: `Mean current over a histogram of thrust over weight: ${style.bins.map(binText).join(', ')}; from full down to the reserve, or where a hover cannot be held at the cut-off voltage. ${easingOf(flown)}`,
  source: `docs/method/flight.md; histogram: ${style.source}`,
});

const binText = (bin: Style['bins'][number]): string =>
  `${Math.round(100 * bin.share)} % at ${'throttle' in bin ? 'full throttle' : bin.thrustToWeight}`;

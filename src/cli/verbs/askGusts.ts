import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { drydenSpectrum, type GustComponent, gustComponents } from '../../air/dryden.ts';
import { drydenTrace } from '../../air/drydenTrace.ts';
import { turbulenceOfDay, type WindyAir } from '../../air/turbulenceOfDay.ts';
import { lawStartsAt } from '../../air/windProfile.ts';
import { type Banded, bandOf } from '../../assess/propagate.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { decimalsForBand, roundedText } from '../../units/significance.ts';
import type { Io } from '../io.ts';
import { listOption, quantityWithin, wholeOption } from '../options.ts';
import { bandedCell } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskGustsOptions {
  readonly wind: string;
  readonly height: string;
  readonly roughness: string;
  readonly frequency: string;
  readonly lasts: string;
  readonly step: string;
  readonly seed: string;
  readonly json?: boolean;
}

/** Spread of a forecast wind (common practice, no source), one standard deviation over the value. */
const WIND_SPREAD = 0.25;
/** Stations tell the wind at 10 m. */
const MEASURED_AT = 10;
const MOST_SAMPLES = 100_000;

const NAMES: Readonly<Record<GustComponent, string>> = {
  longitudinal: 'along the wind',
  lateral: 'across it',
  vertical: 'up and down',
};

/** `ask gusts`: wind and Dryden turbulence at a height, its spectrum as a hovering craft meets it, and a seeded stretch of it. */
export function askGusts(options: AskGustsOptions, io: Io): void {
  const wind = quantityWithin('--wind', options.wind, 'speed', {
    low: 0.1,
    high: 40,
    words: '0.1 m/s to 40 m/s',
  });
  const height = quantityWithin('--height', options.height, 'length', {
    low: 0.1,
    high: 500,
    words: '0.1 m to 500 m',
  });
  const roughnessLength = quantityWithin('--roughness', options.roughness, 'length', {
    low: 1e-5,
    high: 2,
    words: '0.01 mm to 2 m: 0.2 mm open water, 30 mm short grass, 1 m a suburb',
  });
  const frequencies = listOption('--frequency', options.frequency, (item) =>
    quantityWithin('--frequency', item, 'frequency', { low: 1e-4, high: 100, words: '0.0001 Hz to 100 Hz' }),
  );
  const range = { low: 0.001, high: 3600, words: '1 ms to 1 h' };
  const timeStep = quantityWithin('--step', options.step, 'time', range);
  const lasts = quantityWithin('--lasts', options.lasts, 'time', range);
  const seed = wholeOption('--seed', options.seed, 0, 2 ** 32 - 1);
  const at = (speed: number): WindyAir =>
    turbulenceOfDay({ speed, height: MEASURED_AT, roughnessLength }, height);
  const [likely, raised] = [at(wind), at(wind * (1 + WIND_SPREAD))];
  const banded = (of: (air: WindyAir) => number): Banded => {
    const value = of(likely);
    return {
      value,
      band: bandOf(value, Math.abs(of(raised) - value)),
      leansOn: [{ input: 'wind of the day', trust: 'inferred', share: 1 }],
    };
  };
  const components = gustComponents.map((name) => ({
    name,
    intensity: banded(({ turbulence }) => turbulence.intensity[name]),
    scale: likely.turbulence.scale[name],
    spectrum: frequencies.map((frequency) => ({
      frequency,
      // By hertz: 2 pi times that by radians a second.
      density: banded(
        ({ turbulence, wind: speed }) =>
          2 * Math.PI * drydenSpectrum(turbulence, name, 2 * Math.PI * frequency, speed),
      ),
    })),
  }));
  if (options.json) {
    const count = Math.max(1, Math.min(MOST_SAMPLES, Math.round(lasts / timeStep) + 1));
    const trace = drydenTrace(
      { turbulence: likely.turbulence, airspeed: likely.wind, timeStep, count },
      xoroshiro128plus(seed),
    );
    const speeds = Object.fromEntries(gustComponents.map((name) => [name, [...trace[name]]]));
    io.writeOut(
      `${JSON.stringify({ wind: banded((air) => air.wind), turbulenceHeight: likely.turbulenceHeight, components, trace: { seed, timeStep, ...speeds } }, null, 2)}\n`,
    );
    return;
  }
  const header = [
    'gusts',
    'root mean square',
    'scale',
    ...frequencies.map((each) => `(m/s)2/Hz at ${formatQuantity(each, 'frequency')}`),
  ];
  const table = narrowTable(
    header,
    components.map(({ name, intensity, scale, spectrum }) => [
      NAMES[name],
      bandedCell(intensity, 'speed'),
      formatQuantity(scale, 'length'),
      ...spectrum.map(({ density }) => densityCell(density)),
    ]),
    header.map((_, i) => (i === 0 ? 'left' : 'right')),
  );
  const far =
    Math.abs(likely.turbulenceHeight - height) < 1e-9
      ? ''
      : ` The model is given from 3 m to 305 m: turbulence of ${formatQuantity(likely.turbulenceHeight, 'length')}.`;
  const starts = lawStartsAt(roughnessLength);
  const low = Math.min(MEASURED_AT, height);
  const rough =
    starts <= low
      ? ''
      : ` Over such ground the law of the wind is meant for ${formatQuantity(starts, 'length')} and more, and lower is ` +
        `not told less than there or at ${formatQuantity(MEASURED_AT, 'length')}${
          starts > MEASURED_AT ? '; higher, a station among obstacles tells less than the band says' : ''
        }.`;
  io.writeOut(
    `Mean wind at ${formatQuantity(height, 'length')}: ${bandedCell(
      banded((air) => air.wind),
      'speed',
    )}\n\n${table}\n\n` +
      `MIL-F-8785C, Dryden form, as the mean wind carries it past a craft that keeps its place.${far}${rough} Bands are 10th to 90th percentile of a forecast ` +
      'wind that is known to a quarter (inferred); in the lee of obstacles it is rougher. `--json` adds a seeded stretch of it; `ask wind` and `ask fly` tell what a craft makes of it.\n',
  );
}

function densityCell({ value, band: [low, high] }: Banded): string {
  const places = decimalsForBand([low, high]);
  const text = (each: number) => roundedText(each, places);
  return `${text(value)} (${text(low)} to ${text(high)})`;
}

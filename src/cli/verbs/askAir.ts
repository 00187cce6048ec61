import { airOfDay, standardAtmosphere } from '../../air/standardAtmosphere.ts';
import type { Io } from '../io.ts';
import { HEIGHTS, quantityWithin } from '../options.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskAirOptions {
  readonly height: string;
  readonly temperature?: string;
  readonly humidity?: string;
  readonly json?: boolean;
}

/** `ask air`: ISO 2533 air at a height, or of a day whose temperature and humidity are known. */
export function askAir(options: AskAirOptions, io: Io): void {
  const height = quantityWithin('--height', options.height, 'length', HEIGHTS);
  const humidity = quantityWithin('--humidity', options.humidity ?? '0 %', 'share', {
    low: 0,
    high: 1,
    words: '0 % to 100 %',
  });
  const air =
    options.temperature === undefined
      ? standardAtmosphere({ height, relativeHumidity: humidity })
      : airOfDay(
          height,
          quantityWithin('--temperature', options.temperature, 'temperature', {
            low: 213.15,
            high: 333.15,
            words: '-60 degC to 60 degC',
          }),
          humidity,
        );
  if (options.json) {
    io.writeOut(`${JSON.stringify({ height, ...air }, null, 2)}\n`);
    return;
  }
  io.writeOut(
    `${narrowTable(
      ['air', 'value', 'unit'],
      [
        ['temperature', (air.temperature - 273.15).toFixed(1), 'degC'],
        ['pressure', (air.pressure / 100).toFixed(0), 'hPa'],
        ['density', air.density.toFixed(3), 'kg/m3'],
        ['dynamic viscosity', (air.dynamicViscosity * 1e6).toFixed(1), 'uPa s'],
        ['speed of sound', air.speedOfSound.toFixed(0), 'm/s'],
      ],
      ['left', 'right', 'left'],
    )}\n\nISO 2533:1975${options.temperature === undefined ? '' : ', pressure of the height, temperature as given'}. Weather moves the pressure of a height by 1 % or 2 %, and the density with it.\n`,
  );
}

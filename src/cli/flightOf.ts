import type { Flight, PartContext } from '../assess/parts/types.ts';
import { BadInput, type Io } from './io.ts';
import { quantityWithin } from './options.ts';
import { type AskPartOptions, loadPartContext } from './partContext.ts';

/** Options of every question asked of a build in the air. */
export interface AskFlightOptions extends AskPartOptions {
  readonly wind?: string;
  readonly how?: boolean;
}

/** As `loadPartContext`, with another wind where one is given; bad input when it has no hover. */
export function flightOf(
  file: string,
  options: AskFlightOptions,
  io: Io,
): PartContext & { readonly flight: Flight } {
  const { flight, ...context } = loadPartContext(file, options, io);
  if (flight === undefined) {
    throw new BadInput(`${file}: it has no hover. \`quadwright assess ${file}\` says why.`);
  }
  if (options.wind === undefined) return { ...context, flight };
  const range = { low: 0, high: 30, words: '0 m/s to 30 m/s' };
  const wind = { value: quantityWithin('--wind', options.wind, 'speed', range) };
  const { brief } = context;
  return { ...context, flight, brief: { ...brief, site: { ...brief.site, wind } } };
}

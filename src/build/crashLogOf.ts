import type { CrashLog } from '../knocks/types.ts';
import type { Money } from '../units/parseMoney.ts';
import type { CrashNotes } from './schema/crashLogFile.ts';

/**
 * A pilot's notes as the forecast takes them. Apart from their schema, which the page fetches for files only.
 *
 * @param inCurrency the money in the currency of the forecast, undefined where it has no rate
 */
export function crashLogOf(file: CrashNotes, inCurrency: (money: Money) => number | undefined): CrashLog {
  const spent = file.money === undefined ? undefined : inCurrency(file.money);
  return {
    flights: file.flights,
    crashedOn: file.crashedOn,
    ...(spent === undefined ? {} : { money: spent }),
    ...(file.broken === undefined ? {} : { broken: file.broken }),
  };
}

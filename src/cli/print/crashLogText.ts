import type { LogAgainstForecast, Surprise } from '../../knocks/crashLog.ts';
import { narrowTable } from './narrow.ts';

/** A pilot's log against the forecast, for people. */
export function crashLogLines(
  { crashes, pilotFactor, money, broken }: LogAgainstForecast,
  inMoney: (value: number) => string,
): readonly string[] {
  const plain = (value: number) => value.toFixed(1);
  const row = (what: string, { found, forecast, atLeast, atMost }: Surprise, say = plain) => [
    what,
    say(found),
    say(forecast),
    percent(atLeast),
    percent(atMost),
  ];
  const rows = [
    row('crashes', crashes),
    ...(money === undefined ? [] : [row('money', money, inMoney)]),
    ...broken.map((each) => row(each.id, each)),
  ];
  const { mean, p10, p90 } = pilotFactor;
  return [
    '',
    'Against your log:',
    narrowTable(['', 'found', 'forecast', 'chance of as many', 'or as few'], rows, [
      'left',
      'right',
      'right',
      'right',
      'right',
    ]),
    `By this log you crash ${plain(mean)} times as often as the forecast's pilot (10th to 90th ${plain(p10)} to ${plain(p90)}).`,
  ];
}

const percent = (share: number) => `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`;

import type { ShakeReport } from '../../assess/parts/airframeData.ts';
import { shakePart } from '../../assess/parts/shake/shakePart.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { roundedText } from '../../units/significance.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import type { Io } from '../io.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
import { narrowTable } from '../print/narrow.ts';
import { measuresText } from '../print/partText.ts';

/** `ask shake`: the frame's modes, where the propellers meet them, and what gyro and cameras feel. */
export function askShake(file: string, options: AskPartOptions, io: Io): void {
  const context = loadPartContext(file, options, io);
  const result = shakePart.run(context);
  const report = result.data?.shake;
  if (options.json) {
    io.writeOut(partJson(result, report));
    return;
  }
  const lines =
    report === undefined
      ? []
      : [
          modes(report),
          '',
          FELT,
          ...response(report),
          ...changes(report, context.brief.currency),
          '',
          measuresText(result.measures),
        ];
  io.writeOut(`${[...lines, ...findingLines(result.findings)].join('\n')}\n`);
}

const right = (header: readonly string[], left: number) =>
  header.map((_, column) => (column === left ? 'left' : 'right') as 'left' | 'right');

function modes({ modes: list, crossings }: ShakeReport): string {
  const header = ['Hz', '10th to 90th', 'shape', 'felt', 'rings at throttle'];
  const rows = list.map(({ frequency, band, shape, felt }, mode) => [
    frequency.toFixed(0),
    `${band[0].toFixed(0)} to ${band[1].toFixed(0)}`,
    shape,
    felt.toFixed(1),
    crossings
      .filter((each) => each.mode === mode && each.what !== 'motor ripple')
      .map(({ throttle, order }) => `${wholePercent(throttle)}${order === 1 ? '' : ` (${order} blades)`}`)
      .join(', '),
  ]);
  return narrowTable(header, rows, ['right', 'right', 'left', 'right', 'left']);
}

function response({ response: points, cameras }: ShakeReport): readonly string[] {
  if (points.length === 0) return ['', 'It has no hover: no shake is told.'];
  const header = ['throttle', 'rpm', 'board g', 'gyro g', 'gyro deg/s', 'nicked deg/s'];
  const rows = points
    .filter((_, i) => i % 4 === 0)
    .map((point) => [
      wholePercent(point.throttle),
      roundedText((point.angularSpeed * 30) / Math.PI, -2),
      (point.acceleration / 9.80665).toPrecision(2),
      (point.gyroAcceleration / 9.80665).toPrecision(2),
      degrees(point.gyroTurnRate),
      degrees(point.nickedTurnRate),
    ]);
  const seen = cameras.map(
    ({ role, blur, wobble, nickedBlur, nickedWobble }) =>
      `${role} camera in hover: blur about ${blur.toPrecision(1)} px, jello ${wobble.toPrecision(1)} px of 720; with a nicked blade ${nickedBlur.toPrecision(1)} px and ${nickedWobble.toPrecision(1)} px.`,
  );
  return ['', narrowTable(header, rows, right(header, -1)), '', FORECAST, '', ...seen];
}

const FELT =
  'felt: how many times as hard the flight controller shakes at it as it would without the mode; near 1 it is not felt.';

/** The measures' bands lean on damping and balance, each unknown by a half or so. */
const FORECAST =
  'The most likely case at a usual balance; damping and balance differ between craft by half and more, and these numbers with them: their place over throttle is surer than their size. The gyro in hover has its band below.';

function changes({ changes: list, now }: ShakeReport, currency: string): readonly string[] {
  const header = ['change', 'up and down Hz', 'sideways Hz', 'mass g', 'price'];
  const rows = list.map(({ what, upright, sideways, mass, price }) => [
    what,
    upright.toFixed(0),
    sideways.toFixed(0),
    (1000 * mass).toFixed(1),
    price === undefined ? 'no price' : formatQuantity(price, 'money', { currency }),
  ]);
  const asIs = ['as it is', now.upright.toFixed(0), now.sideways.toFixed(0), '', ''];
  return ['', narrowTable(header, [asIs, ...rows], right(header, 0))];
}

const degrees = (rate: number) => ((rate * 180) / Math.PI).toPrecision(2);

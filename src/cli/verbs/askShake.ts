import type { ShakeReport } from '../../assess/parts/airframeData.ts';
import { shakePart } from '../../assess/parts/shake/shakePart.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import type { Io } from '../io.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
import { narrowTable } from '../print/narrow.ts';

/** `ask shake`: the frame's modes, where the propellers meet them, and what gyro and cameras feel. */
export function askShake(file: string, options: AskPartOptions, io: Io): void {
  const result = shakePart.run(loadPartContext(file, options, io));
  const report = result.data?.shake;
  if (options.json) {
    io.writeOut(partJson(result, report));
    return;
  }
  const lines = report === undefined ? [] : [modes(report), ...response(report), ...changes(report)];
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
      ((point.angularSpeed * 30) / Math.PI).toPrecision(3),
      (point.acceleration / 9.80665).toPrecision(2),
      (point.gyroAcceleration / 9.80665).toPrecision(2),
      degrees(point.gyroTurnRate),
      degrees(point.nickedTurnRate),
    ]);
  const seen = cameras.map(
    ({ role, blur, wobble, nickedBlur, nickedWobble }) =>
      `${role} camera in hover: blur ${blur.toPrecision(2)} px, jello ${wobble.toPrecision(2)} px of 720; with a nicked blade ${nickedBlur.toPrecision(2)} and ${nickedWobble.toPrecision(2)}.`,
  );
  return ['', narrowTable(header, rows, right(header, -1)), '', ...seen];
}

function changes({ changes: list, now }: ShakeReport): readonly string[] {
  const header = ['change', 'up and down Hz', 'sideways Hz', 'mass g', 'money'];
  const rows = list.map(({ what, upright, sideways, mass, price }) => [
    what,
    upright.toFixed(0),
    sideways.toFixed(0),
    (1000 * mass).toFixed(1),
    price === undefined ? 'no price' : price.toFixed(2),
  ]);
  const asIs = ['as it is', now.upright.toFixed(0), now.sideways.toFixed(0), '', ''];
  return ['', narrowTable(header, [asIs, ...rows], right(header, 0))];
}

const degrees = (rate: number) => ((rate * 180) / Math.PI).toPrecision(2);

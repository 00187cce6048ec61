import { COVER_GROUPS } from '../../assess/occluders.ts';
import type { PictureChange, PictureReport } from '../../assess/parts/airframeData.ts';
import { picturePart } from '../../assess/parts/picture/picturePart.ts';
import type { Io } from '../io.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
import { narrowTable } from '../print/narrow.ts';

/** `ask picture`: what each camera loses to the aircraft, and the smallest change that clears it. */
export function askPicture(file: string, options: AskPartOptions, io: Io): void {
  const result = picturePart.run(loadPartContext(file, options, io));
  const pictures = result.data?.pictures ?? [];
  if (options.json) {
    io.writeOut(partJson(result, pictures));
    return;
  }
  if (pictures.length === 0) {
    io.writeOut('There is no camera on board.\n');
    return;
  }
  const header = ['camera', 'light lost', 'discs touch', ...COVER_GROUPS];
  const table = narrowTable(
    header,
    pictures.map((report) => [
      report.role,
      percent(report.covered),
      percent(report.discsTouch),
      ...COVER_GROUPS.map((group) => percent(report.byGroup[group])),
    ]),
    header.map((_, column) => (column === 0 ? 'left' : 'right')),
  );
  const lines = [table, ...pictures.flatMap(clearingLines), ...findingLines(result.findings)];
  io.writeOut(`${lines.join('\n')}\n`);
}

function clearingLines({ role, clearing, oneSizeDown }: PictureReport): readonly string[] {
  if (clearing === undefined) return [];
  const rows = clearing.map(({ change, amount, reason, staysClear }: PictureChange) => [
    change,
    amount === undefined ? (reason ?? '') : said(change, amount) + (staysClear ? '' : ', no further'),
  ]);
  if (oneSizeDown !== undefined) {
    const left = oneSizeDown.clears ? 'clears it' : `leaves ${percent(oneSizeDown.touched)} touched`;
    rows.push(['one size smaller', left]);
  }
  return [
    '',
    `What each change alone would do to clear the propellers from the ${role} camera:`,
    narrowTable(['change', 'by'], rows),
  ];
}

function said(change: PictureChange['change'], amount: number): string {
  switch (change) {
    case 'tilt up':
    case 'tilt down':
      return `${((amount * 180) / Math.PI).toFixed(1)} degrees`;
    case 'smaller propellers':
      return `${(2000 * amount).toFixed(1)} mm off the diameter`;
    case 'forward':
    case 'up':
      return `${(1000 * amount).toFixed(1)} mm`;
  }
}

/** Two digits: lenses and mounts are known no better. */
const percent = (share: number) => `${(100 * share).toFixed(share > 0 && share < 0.1 ? 1 : 0)} %`;

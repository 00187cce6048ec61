import type { HitReport, HitsReport } from '../../assess/parts/airframeData.ts';
import { hitsPart } from '../../assess/parts/hits/hitsPart.ts';
import { loadPathWords } from '../../report/loadPath.ts';
import { roundedText } from '../../units/significance.ts';
import type { Io } from '../io.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
import { bandedNumber } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskHitsOptions extends AskPartOptions {
  readonly all?: boolean;
}

/** `ask hits`: what a square hit does to the arms, the weakest for each way and surface or all of them. */
export function askHits(file: string, options: AskHitsOptions, io: Io): void {
  const result = hitsPart.run(loadPartContext(file, options, io));
  const report = result.data?.hits;
  if (options.json) {
    io.writeOut(partJson(result, report));
    return;
  }
  if (report === undefined) {
    io.writeOut('The arms have no answer to that.\n');
    return;
  }
  const shown = options.all ? report.hits : weakest(report.hits);
  const header = ['struck', 'arm', 'speed m/s', 'peak N', 'reserve', 'breaks', 'would break at m/s', 'by'];
  const rows = shown.map((hit) => [
    hit.way === 'prop strike' ? `prop on ${hit.surface}` : `${hit.way}, ${hit.surface}`,
    hit.arm.replace(/ arm$/, ''),
    roundedText(hit.speed, 1),
    twoDigits(hit.peakForce),
    twoDigits(hit.reserve),
    chanceText(hit.chance),
    breakingCell(hit),
    hit.weakest,
  ]);
  const { stopping } = report;
  const lines = [
    narrowTable(header, rows, ['left', 'left', 'right', 'right', 'right', 'right', 'right', 'left']),
    '',
    'Reserve: median strength over stress, below 1 it breaks. In brackets the speeds at which one and nine arms in ten would break; force and reserve are the most likely ones, and how hard a surface is is common practice without a source. `--json` has the stresses.',
    '',
    loadPathWords(report, millimetres),
    ...(stopping === undefined ? [] : [stoppingLine(stopping)]),
    ...findingLines(result.findings),
  ];
  io.writeOut(`${lines.join('\n')}\n`);
}

/** Of each way and surface the arm with the least reserve. */
function weakest(hits: readonly HitReport[]): readonly HitReport[] {
  const found = new Map<string, HitReport>();
  for (const hit of hits) {
    const key = `${hit.way} ${hit.surface}`;
    const known = found.get(key);
    if (known === undefined || hit.reserve < known.reserve) found.set(key, hit);
  }
  return [...found.values()];
}

const stoppingLine = (stopping: NonNullable<HitsReport['stopping']>) =>
  `A blade bears about ${twoDigits(stopping.bladeForce)} N: ${twoDigits(stopping.torque)} N m stop a propeller at ${twoDigits((stopping.angularSpeed * 30) / Math.PI)} rpm in ${twoDigits(1000 * stopping.time)} ms, pushing its arm aside by ${twoDigits(stopping.impulse)} N s and pulling a motor screw by ${twoDigits(stopping.screwPull)} N; more breaks the blade.`;

/** 90th percentile of the standard normal. */
const Z90 = 1.2816;

/** The speed at which half the arms break, and what their scatter leaves open; no speed raises the load of a propeller. */
function breakingCell({ breakingSpeed, logDeviation }: HitReport): string {
  if (breakingSpeed === undefined) return '-';
  const band = [-1, 1].map((sign) => breakingSpeed * Math.exp(sign * Z90 * logDeviation));
  return bandedNumber({ value: breakingSpeed, band: [band[0] ?? 0, band[1] ?? 0] }, (speed) => speed);
}

/** Chances at the ends are never sure. */
function chanceText(chance: number): string {
  if (chance < 0.01) return 'under 1 %';
  return chance > 0.99 ? 'over 99 %' : `${Math.round(100 * chance)} %`;
}

const twoDigits = (value: number): string =>
  roundedText(value, 1 - Math.floor(Math.log10(Math.max(value, 1e-9))));
const millimetres = (length: number) =>
  length < 1e-3 ? 'less than 1 mm' : `${(1000 * length).toFixed(0)} mm`;

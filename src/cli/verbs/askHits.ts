import type { HitReport, HitsReport } from '../../assess/parts/airframeData.ts';
import { hitsPart } from '../../assess/parts/hits/hitsPart.ts';
import { loadPathWords } from '../../report/loadPath.ts';
import type { Io } from '../io.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
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
  const header = ['struck', 'on', 'arm', 'm/s', 'peak N', 'reserve', 'breaks', 'half break at m/s', 'by'];
  const rows = shown.map((hit) => [
    hit.way,
    hit.surface,
    hit.arm,
    inMetres(hit.speed),
    hit.peakForce.toPrecision(3),
    hit.reserve.toPrecision(2),
    `${Math.round(100 * hit.chance)} %`,
    hit.breakingSpeed === undefined ? '' : inMetres(hit.breakingSpeed),
    hit.weakest,
  ]);
  const { stopping } = report;
  const lines = [
    narrowTable(header, rows, ['left', 'left', 'left', 'right', 'right', 'right', 'right', 'right', 'left']),
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
  `A blade bears ${stopping.bladeForce.toPrecision(2)} N: ${stopping.torque.toPrecision(2)} N m stop a propeller at ${stopping.angularSpeed.toPrecision(2)} rad/s in ${(1000 * stopping.time).toPrecision(2)} ms, pushing its arm aside by ${stopping.impulse.toPrecision(2)} N s and pulling a motor screw by ${stopping.screwPull.toPrecision(2)} N; more breaks the blade.`;

const inMetres = (speed: number) => speed.toPrecision(3);
const millimetres = (length: number) => `${(1000 * length).toFixed(1)} mm`;

import { type AssessContext, assess } from '../../assess/assess.ts';
import { airOf } from '../../assess/dayOf.ts';
import { type PreparedRotors, prepareRotors } from '../../assess/prepareRotors.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import { BRIEF_FORMAT } from '../../build/schema/brief.ts';
import { type Cause, causes } from '../../choose/causes.ts';
import { type Comparison, compare } from '../../choose/compare.ts';
import { drawBuilds } from '../../choose/drawBuilds.ts';
import { rankStability } from '../../choose/rankStability.ts';
import { sectionTables } from '../../rotor/sections.ts';
import type { ComparisonReport } from '../comparisonReport.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { BadInput, type ExitCode, exitCode, type Io } from '../io.ts';
import { comparisonText } from '../print/comparisonText.ts';
import { paintFor } from '../print/paint.ts';
import { wantOptions } from '../searchOptions.ts';

export interface CompareOptions {
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly want: readonly string[];
  readonly full?: boolean;
  readonly all?: boolean;
  readonly json?: boolean;
}

/** `compare`: two to eight builds side by side under one brief. */
export function compareBuilds(given: readonly string[], options: CompareOptions, io: Io): ExitCode {
  // A folder's files given at once may hold the brief too; it then serves as the brief.
  const briefs = given.filter((file) => isBrief(io.readText(file)));
  const files = given.filter((file) => !briefs.includes(file));
  if (files.length < 2 || files.length > 8) {
    throw new BadInput(`compare: ${files.length} builds given. Allowed: 2 to 8 files.`);
  }
  const told = [...new Set([...briefs, ...(options.brief === undefined ? [] : [options.brief])])];
  if (told.length > 1) throw new BadInput(`compare: several briefs given (${told.join(', ')}). Give one.`);
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(told[0], options.for, io);
  const wants = wantOptions(options.want, brief);
  const builds = files.map((file) => loadBuild(file, io));
  const blades = loadBlades(options.shelf, io);
  const sections = sectionTables();
  const air = airOf(brief);
  let rotors: PreparedRotors = new Map();
  const crafts = builds.map((read) => mustRead(resolveBuild(read.build, shelf, read, blades)));
  for (const craft of crafts) {
    const prepared = prepareRotors(craft, air, sections, rotors);
    if (prepared.ok) rotors = prepared.value;
  }
  const context: AssessContext = { brief, shelf, sections, rotors };
  const tier = options.full ? 'full' : 'quick';
  const assessments = builds.map((read) => mustRead(assess(read.build, { ...context, where: read, tier })));
  const comparison = compare(assessments, wants);
  const report: ComparisonReport = {
    comparison,
    causes: causesOfLead(
      comparison,
      builds.map((read) => read.build),
      context,
    ),
    assessments,
    stability: rankStability(drawBuilds(crafts, context), wants),
  };
  io.writeOut(
    options.json
      ? `${JSON.stringify(report, null, 2)}\n`
      : comparisonText(report, {
          paint: paintFor(io.colours),
          all: options.all ?? false,
          currency: brief.currency,
        }),
  );
  const stopped = assessments.some((each) => each.findings.some((finding) => finding.severity === 'stop'));
  return stopped ? exitCode.stopFindings : exitCode.fine;
}

const isBrief = (text: string) => new RegExp(`^\\s*"?format"?:\\s*"?${BRIEF_FORMAT}`, 'm').test(text);

function causesOfLead(
  { order }: Comparison,
  builds: readonly Parameters<typeof causes>[0][],
  context: AssessContext,
): readonly Cause[] {
  const [leader, second] = [builds[order[0] ?? 0], builds[order[1] ?? 0]];
  if (leader === undefined || second === undefined) return [];
  return causes(leader, second, context) ?? [];
}

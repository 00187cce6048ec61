import { assess } from '../../assess/assess.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { type ExitCode, exitCode, type Io } from '../io.ts';
import { assessmentText } from '../print/assessmentText.ts';
import { paintFor } from '../print/paint.ts';

export interface AssessOptions {
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly full?: boolean;
  readonly how?: boolean;
  readonly notes?: boolean;
  readonly json?: boolean;
}

/** `assess`: one build under a brief, everything computed of it. */
export function assessBuild(file: string, options: AssessOptions, io: Io): ExitCode {
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(options.brief, options.for, io);
  const read = loadBuild(file, io);
  const assessment = mustRead(
    assess(read.build, {
      brief,
      shelf,
      sections: sectionTables(),
      where: read,
      blades: loadBlades(options.shelf, io),
      tier: options.full ? 'full' : 'hover',
    }),
  );
  io.writeOut(
    options.json
      ? `${JSON.stringify(assessment, null, 2)}\n`
      : assessmentText(assessment, {
          paint: paintFor(io.colours),
          how: options.how ?? false,
          notes: options.notes ?? false,
        }),
  );
  return assessment.findings.some((finding) => finding.severity === 'stop')
    ? exitCode.stopFindings
    : exitCode.fine;
}

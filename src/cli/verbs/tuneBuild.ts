import { airOf } from '../../assess/dayOf.ts';
import { prepareRotors } from '../../assess/prepareRotors.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import { buildData } from '../../build/write/buildData.ts';
import { yamlText } from '../../build/write/yamlText.ts';
import { evaluationContext } from '../../choose/shortlist/evaluate.ts';
import { spaceOf } from '../../choose/shortlist/space.ts';
import { RISK_COST } from '../../choose/standing.ts';
import { cannotTurn, KNOBS, type Knob, type KnobRange, type Tuned, tune } from '../../choose/tune.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { nearestName } from '../../units/nearestName.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { BadInput, type ExitCode, exitCode, type Io } from '../io.ts';
import { numberOption, quantityOption, wholeOption } from '../options.ts';
import { tuneText } from '../print/tuneText.ts';
import { limitOptions, wantOptions } from '../searchOptions.ts';
import type { TuneReport } from '../tuneReport.ts';
import { writeFile } from '../writeFile.ts';

export interface TuneOptions {
  readonly turn: readonly string[];
  readonly want: readonly string[];
  readonly limit: readonly string[];
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly most: string;
  readonly write?: string;
  readonly json?: boolean;
}

/** `tune`: continuous choices of a build set so that it stands highest under the wants, with the way there. */
export function tuneBuild(file: string, options: TuneOptions, io: Io): ExitCode {
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(options.brief, options.for, io);
  const read = loadBuild(file, io);
  const ranges = options.turn.map(knobOption);
  if (ranges.length === 0) {
    throw new BadInput(
      `--turn: nothing to turn. Give at least one of ${KNOB_NAMES.join(', ')}, such as "pack-position=-20 mm..20 mm".`,
    );
  }
  const twice = ranges.find(({ knob }, index) => ranges.findIndex((each) => each.knob === knob) < index);
  if (twice !== undefined) throw new BadInput(`--turn: ${twice.knob} is given twice. Give it once.`);
  for (const { knob } of ranges) {
    const why = cannotTurn(knob, read.build, shelf);
    if (why !== undefined) throw new BadInput(`--turn: ${knob} has nothing to turn: ${why}. Leave it out.`);
  }
  const craft = mustRead(resolveBuild(read.build, shelf, read, loadBlades(options.shelf, io)));
  const sections = sectionTables();
  const air = airOf(brief);
  const rotors = prepareRotors(craft, air, sections);
  if (!rotors.ok)
    throw new BadInput(`${file}: its propeller has no map. \`quadwright assess ${file}\` says why.`);
  const context = evaluationContext({ brief, shelf, sections, rotors: rotors.value }, air);
  const question = {
    template: read.build,
    space: spaceOf(read.build, shelf, []),
    wants: wantOptions(options.want, brief),
    limits: limitOptions(options.limit),
    riskCost: RISK_COST,
    top: 1,
    front: [],
  };
  const found = tune(read.build, ranges, question, context, wholeOption('--most', options.most, 10, 10000));
  const { write } = options;
  if (write !== undefined) writeFile('--write', write, yamlText(buildData(found.build)), io);
  const report = reportOf(read.build.name, ranges, question, found, write);
  io.writeOut(options.json ? `${JSON.stringify(report, null, 2)}\n` : tuneText(report, brief.currency));
  return report.after === null ? exitCode.stopFindings : exitCode.fine;
}

const KNOB_NAMES = Object.keys(KNOBS) as readonly Knob[];

/** `camera-tilt=10 deg..40 deg`, `layout-size=0.9..1.1`. */
function knobOption(text: string): KnobRange {
  const [, name = '', low = '', high = ''] = /^\s*([a-z-]+)\s*=\s*(.+?)\s*\.\.\s*(.+?)\s*$/.exec(text) ?? [];
  const knob = KNOB_NAMES.find((each) => each === name);
  if (knob === undefined) {
    const near = nearestName(name === '' ? text : name, KNOB_NAMES);
    throw new BadInput(
      `--turn: "${text.slice(0, 60)}" does not read. Write one of ${KNOB_NAMES.join(', ')} with its ends, such as "pack-position=-20 mm..20 mm".${near ? ` Did you mean "${near}"?` : ''}`,
    );
  }
  const range = { knob, low: endOption(knob, low), high: endOption(knob, high) };
  if (!(range.high > range.low))
    throw new BadInput(`--turn: "${text}": the second end must lie above the first.`);
  return range;
}

function endOption(knob: Knob, text: string): number {
  const { quantity, least, most } = KNOBS[knob];
  const option = `--turn ${knob}`;
  const value =
    quantity === 'ratio'
      ? numberOption(option, text, least.value, most.value)
      : quantityOption(option, text, quantity);
  if (value >= least.value && value <= most.value) return value;
  throw new BadInput(`${option}: "${text}" is out of range. Allowed: ${least.text} to ${most.text}.`);
}

function reportOf(
  build: string,
  ranges: readonly KnobRange[],
  { wants, limits }: Pick<TuneReport, 'wants' | 'limits'>,
  { before, standing, stoppedBy, values, start, settings, minimum }: Tuned,
  write: string | undefined,
): TuneReport {
  const finite = (value: number) => (Number.isFinite(value) ? value : null);
  return {
    build,
    wants,
    limits,
    knobs: ranges.map((range) => ({
      ...range,
      before: start[range.knob] ?? 0,
      after: settings[range.knob] ?? 0,
    })),
    before: finite(before),
    after: finite(standing),
    ...(stoppedBy === undefined ? {} : { stoppedBy }),
    valuesBefore: values[0],
    valuesAfter: values[1],
    evaluations: minimum.evaluations,
    settled: minimum.settled,
    trace: minimum.trace
      .filter(({ value }) => Number.isFinite(value))
      .map(({ evaluations, point, value }) => ({ evaluations, settings: point, standing: -value })),
    ...(write === undefined ? {} : { written: write }),
  };
}

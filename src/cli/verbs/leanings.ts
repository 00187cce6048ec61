import { assessCraft } from '../../assess/assess.ts';
import { airOf } from '../../assess/dayOf.ts';
import type { FigureName } from '../../assess/figures.ts';
import { prepareRotors } from '../../assess/prepareRotors.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import { doubtedCraft } from '../../choose/doubtedCraft.ts';
import { sensitivities } from '../../choose/sensitivities.ts';
import { tornado } from '../../choose/tornado.ts';
import css from '../../report/drawing.css?raw';
import { tornadoDrawing } from '../../report/tornadoDrawing.ts';
import { writeSvg } from '../../report/writeSvg.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { nearestName } from '../../units/nearestName.ts';
import { shownIn } from '../../units/shownUnits.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { BadInput, type ExitCode, exitCode, type Io } from '../io.ts';
import type { LeaningsReport } from '../leaningsReport.ts';
import { wholeOption } from '../options.ts';
import { leaningsText } from '../print/leaningsText.ts';
import { writeFile } from '../writeFile.ts';

export interface LeaningsOptions {
  readonly of: string;
  readonly rows: string;
  readonly seed: string;
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly svg?: string;
  readonly json?: boolean;
}

const SVG_WIDTH = 640;

/** `leanings`: which inputs a figure of a build leans on, one at a time and by their share of its variance. */
export function tellLeanings(file: string, options: LeaningsOptions, io: Io): ExitCode {
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(options.brief, options.for, io);
  const read = loadBuild(file, io);
  const rows = wholeOption('--rows', options.rows, 16, 4096);
  const seed = wholeOption('--seed', options.seed, 0, 2 ** 31 - 1);
  const craft = mustRead(resolveBuild(read.build, shelf, read, loadBlades(options.shelf, io)));
  const sections = sectionTables();
  const rotors = prepareRotors(craft, airOf(brief), sections);
  const context = { brief, shelf, sections, ...(rotors.ok ? { rotors: rotors.value } : {}) };
  const doubted = doubtedCraft(craft, context);
  if (!doubted.ok) {
    throw new BadInput(
      `${file}: it has no hover, and so no figures. \`quadwright assess ${file}\` says why.`,
    );
  }
  const figure = figureOption(options.of, Object.keys(doubted.value.figures) as FigureName[]);
  const measure = assessCraft(craft, { ...context, tier: 'hover' }).measures.find(({ id }) => id === figure);
  const nominal = doubted.value.figures[figure];
  if (measure === undefined || nominal === undefined) {
    throw new BadInput(`--of: ${figure} has no value for this build.`);
  }
  const report: LeaningsReport = {
    build: read.build.name,
    figure,
    label: measure.label,
    quantity: measure.quantity,
    nominal,
    band: measure.band,
    tornado: tornado(doubted.value, figure),
    sobol: sensitivities(doubted.value, figure, rows, seed),
    rows,
    seed,
  };
  if (options.svg !== undefined) writeFile('--svg', options.svg, svgOf(report), io);
  io.writeOut(options.json ? `${JSON.stringify(report, null, 2)}\n` : leaningsText(report));
  return exitCode.fine;
}

function figureOption(text: string, known: readonly FigureName[]): FigureName {
  const found = known.find((each) => each === text);
  if (found !== undefined) return found;
  const near = nearestName(text, known);
  throw new BadInput(
    `--of: "${text}" is not a figure with doubt in this build. Allowed: ${known.join(', ')}.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

function svgOf({ build, label, quantity, nominal, tornado: bars }: LeaningsReport): string {
  const { text, convert } = shownIn(quantity, nominal, {});
  const rows = bars.map(({ label: name, trust, low, high }) => ({
    name: `${name} (${trust})`,
    ...(low === undefined ? {} : { low: convert(low) }),
    ...(high === undefined ? {} : { high: convert(high) }),
  }));
  const axis = text === '' ? label : `${label}, ${text}`;
  const says = `${build}: ${label} with each input alone at its 10th and 90th percentile`;
  return writeSvg(tornadoDrawing(rows, convert(nominal), axis, SVG_WIDTH, says), css);
}

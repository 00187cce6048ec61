import { FLIGHTS, flyWithBands } from '../../assess/fly/flyWithBands.ts';
import { type Flown, SCENES, type Scene } from '../../assess/fly/types.ts';
import css from '../../report/drawing.css?raw';
import { traceDrawings } from '../../report/traceDrawing.ts';
import { writeSvgColumn } from '../../report/writeSvg.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { nearestName } from '../../units/nearestName.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import { BadInput, type Io } from '../io.ts';
import { quantityWithin, wholeOption } from '../options.ts';
import { bandedCell } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';
import { writeFile } from '../writeFile.ts';

export interface AskFlyOptions extends AskFlightOptions {
  readonly scene: string;
  readonly lasts?: string;
  readonly seed: string;
  readonly svg?: string;
}

const SVG_WIDTH = 640;

/** `ask fly`: one scene flown by the six-degree-of-freedom simulation, beside what the closed forms say of it. */
export function askFly(file: string, options: AskFlyOptions, io: Io): void {
  const scene = sceneOption(options.scene);
  const seed = wholeOption('--seed', options.seed, 0, 2 ** 32 - 1);
  const range = { low: 1, high: 300, words: '1 s to 300 s' };
  const duration =
    options.lasts === undefined ? undefined : quantityWithin('--lasts', options.lasts, 'time', range);
  if (duration !== undefined && (scene === 'gust' || scene === 'bank')) {
    throw new BadInput(
      `--lasts: a ${scene} takes the time it takes. Leave it out, or ask for another scene.`,
    );
  }
  const context = flightOf(file, options, io);
  const wind = context.brief.site.wind.value;
  const flying = flyWithBands(context, {
    scene,
    wind,
    seed,
    ...(duration === undefined ? {} : { duration }),
  });
  let step = flying.next();
  while (step.done !== true) step = flying.next();
  const found = step.value;
  if (!found.ok) throw new BadInput(`${file}: it cannot be flown: ${found.reason}.`);
  const flown = found.value;
  if (options.svg !== undefined) {
    const drawings = traceDrawings(flown.trace, flown.motors, flown.says, SVG_WIDTH);
    writeFile('--svg', options.svg, writeSvgColumn(drawings, css), io);
  }
  io.writeOut(options.json ? `${JSON.stringify({ ...flown, wind, seed }, null, 2)}\n` : textOf(flown));
}

function sceneOption(text: string): Scene {
  const found = SCENES.find((each) => each === text);
  if (found !== undefined) return found;
  const near = nearestName(text, SCENES);
  throw new BadInput(
    `--scene: "${text}" is not one. Allowed: ${SCENES.join(', ')}.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

function textOf({ says, figures, trace }: Flown): string {
  const rows = figures.map(({ label, quantity, closedForm, simulated, band }) => [
    label,
    // No finer than what is told beside it.
    closedForm === undefined
      ? ''
      : formatQuantity(closedForm, quantity, closedForm === 0 || !band ? {} : { band }),
    band === undefined
      ? formatQuantity(simulated, quantity)
      : bandedCell({ value: simulated, band }, quantity),
  ]);
  const table = narrowTable(['', 'closed form', 'simulated'], rows, ['left', 'right', 'right']);
  const notes = figures.map(({ label, how }) => `  ${label}: ${how}`).join('\n');
  const last = trace.time.at(-1) ?? 0;
  return `${says}\n\n${table}\n\n${notes}\n\n${methodOf(formatQuantity(last, 'time'))}\n`;
}

const methodOf = (time: string): string =>
  `Half charge, every input at its most likely value; ${time} flown. The two columns check each other. Bands are 10th to 90th percentile: the scene is flown ${FLIGHTS} times more with every unsure input a step up or down at once (rough air in gusts of its own each time); the wind is taken as told.`;

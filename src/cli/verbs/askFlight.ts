import type { PartData } from '../../assess/parts/data.ts';
import { levelFlight } from '../../assess/parts/levelFlight.ts';
import { controlInReserve } from '../../assess/parts/reserve.ts';
import type { AssessPart, PartResult } from '../../assess/parts/types.ts';
import { windHolding } from '../../assess/parts/wind.ts';
import { type BandedSpeed, type SpeedBands, speedBands } from '../../assess/speedBands.ts';
import { formatQuantity, withUnit } from '../../units/formatQuantity.ts';
import { shownIn } from '../../units/shownUnits.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import type { Io } from '../io.ts';
import { partJson } from '../print/answerText.ts';
import { bandedIn, OPEN_NOTE } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';
import { measuresText, withFindings } from '../print/partText.ts';

/** `ask speed`: the power curve, top speed, endurance and range of a build, motors at speed, each with its band. */
export function askSpeed(file: string, options: AskFlightOptions, io: Io): void {
  const context = flightOf(file, options, io);
  const result = levelFlight.run(context);
  const found = speedBands(context, result, options.json === true);
  const bands: SpeedBands = found.ok ? found.value : { curve: [] };
  if (options.json) {
    io.writeOut(partJson(result, { ...result.data, bands }));
    return;
  }
  const names = context.flight.model.stations.map(({ name }) => name);
  const tables = [
    curveTable(bands),
    'Half charge; throttle and winding of the motor that works hardest. `ask trim` tells the rest of any speed.',
    ...(bands.cruise === undefined ? [] : [motorTable('furthest, at', bands.cruise, names)]),
    ...(bands.top === undefined ? [] : [motorTable('top speed,', bands.top, names)]),
  ];
  const starred = tables.some((table) => table.includes('*'));
  io.writeOut(
    textOf(result, bands.curve.length === 0 ? [] : [...tables, ...(starred ? [OPEN_NOTE] : [])], options.how),
  );
}

/** Narrow enough for 80 columns. */
const curveTable = ({ curve }: SpeedBands): string =>
  narrowTable(
    ['m/s', 'tilt deg', 'power W', 'throttle %', 'winding degC'],
    curve.map(({ speed, craft }) => [
      speed.toFixed(1),
      bandedIn(craft.tilt, 'angle'),
      bandedIn(craft.power, 'power'),
      bandedIn(craft.hardestThrottle, 'share'),
      bandedIn(craft.hottestWinding, 'temperature'),
    ]),
    ['right', 'right', 'right', 'right', 'right'],
  );

const motorTable = (title: string, { speed, motors }: BandedSpeed, names: readonly string[]): string =>
  narrowTable(
    [`${title} ${formatQuantity(speed, 'speed')}`, 'thrust gf', 'current A', 'winding degC'],
    motors.map((motor, i) => [
      names[i] ?? '',
      bandedIn(motor.thrust, 'force'),
      bandedIn(motor.motorCurrent, 'current'),
      bandedIn(motor.winding, 'temperature'),
    ]),
    ['left', 'right', 'right', 'right'],
  );

/** `ask wind`: station holding, the largest wind held, gusts and sway of a build. */
export function askWind(file: string, options: AskFlightOptions, io: Io): void {
  answer(windHolding, file, options, io, () => []);
}

/** `ask reserve`: control moments of a build, how quickly they come, and what one lost or hot motor leaves. */
export function askReserve(file: string, options: AskFlightOptions, io: Io): void {
  answer(controlInReserve, file, options, io, ({ motorOut = [], motorHot = [] }) => [
    narrowTable(
      ['motor out', 'can be held', 'weakest moment left %', 'lift over weight', 'turning'],
      motorOut.map(({ motor, held, share, liftToWeight, turning }) => [
        motor,
        held,
        share > 0 ? (100 * share).toFixed(0) : '-',
        liftToWeight > 0 ? liftToWeight.toFixed(1) : '-',
        turning === undefined ? '-' : turnText(turning),
      ]),
      ['left', 'left', 'right', 'right', 'right'],
    ),
    narrowTable(
      ['motor held to what it bears for good', 'can be held', 'weakest moment left %'],
      motorHot.map(({ motor, held, share }) => [motor, held, share > 0 ? (100 * share).toFixed(0) : '-']),
      ['left', 'left', 'right'],
    ),
    'The tables are the most likely case by what the moments allow; a controller that does not share the load anew holds less. What is left after the worst has its band below.',
  ]);
}

function answer(
  part: AssessPart,
  file: string,
  options: AskFlightOptions,
  io: Io,
  tables: (data: PartData) => readonly string[],
): void {
  const result = part.run(flightOf(file, options, io));
  io.writeOut(
    options.json
      ? partJson(result, result.data ?? {})
      : textOf(result, tables(result.data ?? {}), options.how),
  );
}

function textOf({ measures, findings }: PartResult, tables: readonly string[], how = false): string {
  return withFindings([...tables, measures.length > 0 ? measuresText(measures, how) : ''], findings);
}

/** Known to a third or so: two digits at most. */
function turnText(rate: number): string {
  const { text, convert } = shownIn('angularSpeed', rate, {});
  const shown = convert(rate);
  return withUnit(shown < 100 ? Math.round(shown) : Number(shown.toPrecision(2)), text);
}

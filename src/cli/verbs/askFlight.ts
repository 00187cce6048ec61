import type { PartData } from '../../assess/parts/data.ts';
import { levelFlight } from '../../assess/parts/levelFlight.ts';
import { controlInReserve } from '../../assess/parts/reserve.ts';
import type { AssessPart, PartResult } from '../../assess/parts/types.ts';
import { windHolding } from '../../assess/parts/wind.ts';
import { isAtOnce } from '../../units/atOnce.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { shownIn } from '../../units/shownUnits.ts';
import { roundedText } from '../../units/significance.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import type { Io } from '../io.ts';
import { partJson } from '../print/answerText.ts';
import { measuresText, withFindings } from '../print/partText.ts';
import { printTable } from '../print/table.ts';

/** `ask speed`: the power curve, top speed, endurance and range of a build, motors at speed. */
export function askSpeed(file: string, options: AskFlightOptions, io: Io): void {
  answer(levelFlight, file, options, io, ({ powerCurve = [], motorsAtSpeed = [] }) => [
    printTable(
      ['speed m/s', 'tilt deg', 'power W', 'pack A', 'largest duty %'],
      powerCurve.map(({ speed, tilt, power, packCurrent, largestDuty }) => [
        speed.toFixed(1),
        ((tilt * 180) / Math.PI).toFixed(1),
        threeDigits(power),
        threeDigits(packCurrent),
        (100 * largestDuty).toFixed(0),
      ]),
      ['right', 'right', 'right', 'right', 'right'],
    ),
    printTable(
      ['motor', 'cruise N', 'A', 'winding degC', 'top speed N', 'A', 'winding degC', 'too hot after s'],
      motorsAtSpeed.map(({ motor, cruise, top }) => [
        motor,
        threeDigits(cruise.thrust),
        threeDigits(cruise.motorCurrent),
        celsius(cruise.windingTemperature),
        threeDigits(top.thrust),
        threeDigits(top.motorCurrent),
        celsius(top.windingTemperature),
        top.timeToLimit === undefined
          ? 'never'
          : isAtOnce(top.timeToLimit)
            ? 'at once'
            : threeDigits(top.timeToLimit),
      ]),
      ['left', 'right', 'right', 'right', 'right', 'right', 'right', 'right'],
    ),
    'The two tables are the most likely case, to draw; `ask trim` has the bands at any of these speeds.',
  ]);
}

/** `ask wind`: station holding, the largest wind held, gusts and sway of a build. */
export function askWind(file: string, options: AskFlightOptions, io: Io): void {
  answer(windHolding, file, options, io, () => []);
}

/** `ask reserve`: control moments of a build, how quickly they come, and what one lost motor leaves. */
export function askReserve(file: string, options: AskFlightOptions, io: Io): void {
  answer(controlInReserve, file, options, io, ({ motorOut = [] }) => [
    printTable(
      ['motor out', 'can be held', 'weakest moment left %', 'lift over weight', 'turning'],
      motorOut.map(({ motor, held, share, liftToWeight, turning }) => [
        motor,
        held,
        share > 0 ? (100 * share).toFixed(0) : '-',
        liftToWeight > 0 ? liftToWeight.toFixed(2) : '-',
        turning === undefined ? '-' : turnText(turning),
      ]),
      ['left', 'left', 'right', 'right', 'right'],
    ),
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

/** Three digits at most, never an exponent. */
const threeDigits = (value: number): string => roundedText(value, undefined);

/** Known to a third or so: two digits at most. */
function turnText(rate: number): string {
  const { text, convert } = shownIn('angularSpeed', rate, {});
  const shown = convert(rate);
  return withUnit(shown < 100 ? Math.round(shown) : Number(shown.toPrecision(2)), text);
}

const celsius = (kelvin: number | undefined): string =>
  kelvin === undefined ? 'runs away' : (kelvin - 273.15).toFixed(0);

import { fastTip } from '../../assess/tipMach.ts';
import { type TrimPoint, trimmer } from '../../assess/trimPoint.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import { BadInput, type Io } from '../io.ts';
import { listOption, quantityWithin } from '../options.ts';
import { bandedCell, bandedIn, OPEN_NOTE } from '../print/bandedCell.ts';
import { leansOnText } from '../print/leansOnText.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskTrimOptions extends AskFlightOptions {
  readonly speed: string;
  readonly climb: string;
  readonly charge: string;
}

/** `ask trim`: what every motor of a build does in steady flight at given speeds, hover and climb among them. */
export function askTrim(file: string, options: AskTrimOptions, io: Io): void {
  const speeds = listOption('--speed', options.speed, (item) =>
    quantityWithin('--speed', item, 'speed', { low: 0, high: 100, words: '0 m/s to 100 m/s' }),
  );
  const climb = quantityWithin('--climb', options.climb, 'speed', {
    low: 0,
    high: 50,
    words: '0 m/s to 50 m/s; of a descent `ask rotor` knows the rotor alone',
  });
  const charge = quantityWithin('--charge', options.charge, 'share', {
    low: 0,
    high: 1,
    words: '0 % to 100 %',
  });
  const context = flightOf(file, options, io);
  const names = context.flight.model.stations.map(({ name }) => name);
  const trims = trimmer(context, options.json === true);
  if (!trims.ok) throw new BadInput(`${file}: it has no trim: ${trims.reason}.`);
  const answers = speeds.map((speed) => ({ speed, found: trims.value({ speed, climb, charge }) }));
  if (options.json) {
    const points = answers.map(({ speed, found }) => ({
      speed,
      climb,
      charge,
      ...(found.ok ? jsonOf(found.value, names) : { noSolution: found.reason }),
    }));
    io.writeOut(`${JSON.stringify(points, null, 2)}\n`);
    return;
  }
  const blocks = answers.map(({ speed, found }) => {
    const says = `At ${formatQuantity(speed, 'speed')}${climb > 0 ? `, climbing at ${formatQuantity(climb, 'speed')}` : ''}`;
    if (found.ok) {
      const fast = fastTip(context.flight, 'Here', found.value.trim.load.angularSpeed);
      return `${says}: ${textOf(found.value, names)}${fast === undefined ? '' : `\n${fast.says}`}`;
    }
    return `${says}: not flown: ${found.reason}.`;
  });
  // Faster flight leans on more.
  const first = answers.findLast(({ found }) => found.ok)?.found;
  const leaning = first?.ok
    ? leansOnText([
        ['tilt', first.value.figures.craft.tilt],
        ['pack current', first.value.figures.craft.packCurrent],
        ['winding', first.value.figures.motors[0]?.winding],
      ])
    : '';
  io.writeOut(`${blocks.join('\n\n')}\n\n${leaning}`);
}

function jsonOf({ figures, cells, servoLimit }: TrimPoint, names: readonly string[]) {
  return {
    ...(cells === undefined ? {} : { cells }),
    ...(servoLimit === undefined ? {} : { servoLimit }),
    craft: figures.craft,
    motors: names.map((name, i) => ({ name, ...figures.motors[i] })),
  };
}

function textOf(
  { figures: { craft, motors }, cells, servoLimit }: TrimPoint,
  names: readonly string[],
): string {
  const header = [
    'motor',
    'net thrust gf',
    'turns at rpm',
    'throttle %',
    'current A',
    'winding degC',
    'case degC',
    'others’ wash m/s',
  ];
  const table = narrowTable(
    header,
    names.map((name, i) => {
      const of = motors[i] ?? {};
      return [
        name,
        bandedIn(of.thrust, 'force'),
        bandedIn(of.angularSpeed, 'angularSpeed', FAST),
        bandedIn(of.throttle, 'share'),
        bandedIn(of.motorCurrent, 'current'),
        bandedIn(of.winding, 'temperature'),
        bandedIn(of.case, 'temperature'),
        bandedIn(of.wash, 'speed'),
      ];
    }),
    header.map((_, i) => (i === 0 ? 'left' : 'right')),
  );
  return [
    `tilt ${bandedCell(craft.tilt, 'angle')}, pack ${bandedCell(craft.packCurrent, 'current')} at ${bandedCell(craft.packVoltage, 'voltage')}${cells === undefined ? '' : `, ${cells}`}, ` +
      `drag of the body ${bandedCell(craft.bodyDrag, 'force')}, in-plane drag of the propellers ${bandedCell(craft.rotorDrag, 'force')}`,
    ...servoLines(motors, names, servoLimit),
    table,
    ...(table.includes('*') ? [OPEN_NOTE] : []),
  ].join('\n');
}

/** Shafts are told in rpm [rad/s]. */
const FAST = 1000;

/** How far a tail servo leans its motor against the yaw, and how far it could. */
function servoLines(
  motors: TrimPoint['figures']['motors'],
  names: readonly string[],
  limit: number | undefined,
): readonly string[] {
  if (limit === undefined) return [];
  return motors.flatMap(({ servoLean }, i) => {
    if (servoLean === undefined) return [];
    const [low, high] = servoLean.band;
    const left = servoLean.value < 0;
    const lean = left ? { ...servoLean, value: -servoLean.value, band: [-high, -low] as const } : servoLean;
    const across = low < 0 && high > 0 ? `, below 0 to the ${left ? 'right' : 'left'}` : '';
    return [
      `${names[i]}: the servo leans it ${bandedCell(lean, 'angle')} to the ${left ? 'left' : 'right'}${across}, seen from behind, to hold the yaw; it goes to ${formatQuantity(limit, 'angle')} either way (common practice, no source)`,
    ];
  });
}

import { bandOf } from '../../assess/propagate.ts';
import { fitFromTable } from '../../build/infer/fitFromTable.ts';
import { type Choice, matchPropeller, type SourcedPoint } from '../../build/infer/matchPropeller.ts';
import { type MotorFacts, motorFacts } from '../../build/infer/motorFacts.ts';
import { type MotorKnown, motorKnown } from '../../build/infer/motorKnown.ts';
import { type MotorDoubt, propellerPoints } from '../../build/infer/motorTable.ts';
import type { PartOf } from '../../build/schema/part.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import type { Fitted, MotorFit } from '../../drive/fitMotor.ts';
import { STAND_SPREAD } from '../../rotor/spreads.ts';
import { decimalsForBand, roundedText } from '../../units/significance.ts';
import type { Trusted } from '../../units/trusted.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';
import { matchText } from '../print/matchText.ts';
import { shelfPart } from '../shelfPart.ts';

export interface CalibrateOptions {
  readonly motor: string;
  readonly propeller: string;
  readonly keepOld?: boolean;
  readonly replace?: boolean;
  readonly shelf: readonly string[];
}

/**
 * `calibrate`: a motor's thrust table turned into measured points of the propeller it was taken with, beside those it has, and
 * the motor's own numbers weighed by it, as a shelf file to lay over: the main road to numbers narrower than a nameplate's.
 */
export function calibrate(options: CalibrateOptions, io: Io): void {
  const shelf = loadShelf(options.shelf, io);
  const motor = shelfPart(shelf, 'motor', options.motor, '--motor');
  const propeller = shelfPart(shelf, 'propeller', options.propeller, '--propeller');
  const choice = choiceOf(options, propeller);
  const table = motor.thrustTables.find((each) => sameSize(each.propeller, propeller.size));
  if (table === undefined) {
    const told = motor.thrustTables.map((each) => sizeText(each.propeller)).join(', ') || 'none';
    throw new BadInput(
      `calibrate: ${motor.id} has no thrust table with a propeller of ${sizeText(propeller.size)}. ` +
        `Tables it has: ${told}. Enter the table under thrustTables, with angularSpeed, voltage, current and thrust.`,
    );
  }
  const facts = motorFacts(motor);
  const fit = fitFromTable(motor, facts, table);
  const source = `thrust table of ${motor.id} (${table.source ?? motor.source})`.slice(0, 200);
  const points = propellerPoints(
    fit?.model ?? facts.model,
    table,
    doubtOf(fit ?? motorKnown(motor, facts)),
  ).map(
    (point): SourcedPoint => ({ ...point, source, trust: motor.trust === 'measured' ? 'measured' : 'maker' }),
  );
  if (points.length === 0) {
    throw new BadInput(
      `calibrate: no line of ${motor.id}'s table tells angularSpeed, voltage and current beside thrust, or the motor's ` +
        'losses would be more than was supplied. Check the lines.',
    );
  }
  const match = matchPropeller(propeller, points, choice);
  if (!match.ok) throw new BadInput(`calibrate: ${match.reason}`);
  const told = fit !== undefined && FIELDS.some(([name]) => fit[name].untold === undefined) ? fit : undefined;
  io.writeError(
    matchText(match.value, propeller, table, points.length, choice) +
      (fit === undefined ? 'No line at full throttle: the motor stays as it was.\n' : motorText(fit, facts)) +
      `Save this, lay it over with --shelf, and name ${propeller.id}-matched${told === undefined ? '' : ` and ${motor.id}-matched`} in the build.\n`,
  );
  io.writeOut(
    `format: ${SHELF_FORMAT}\n` +
      `note: ${JSON.stringify(`${propeller.name} matched to the thrust table of ${motor.name}`)}\n` +
      `parts:\n  - id: ${propeller.id}-matched\n    basedOn: ${propeller.id}\n    name: ${JSON.stringify(`${propeller.name}, matched`)}\n` +
      `    measured:\n${match.value.kept.map(pointLine).join('')}${told === undefined ? '' : motorPart(motor, told)}`,
  );
}

function choiceOf({ keepOld, replace }: CalibrateOptions, propeller: PartOf<'propeller'>): Choice {
  if (keepOld && replace) throw new BadInput('calibrate: --keep-old and --replace: give one of the two.');
  if (keepOld && propeller.measured.length === 0) {
    throw new BadInput(`calibrate: --keep-old: ${propeller.id} has no older points. Leave it out.`);
  }
  return keepOld ? 'old' : replace ? 'new' : 'both';
}

function doubtOf({ resistance, noLoadCurrent, resistanceRise }: MotorKnown): MotorDoubt {
  const of = ({ value, deviation }: Trusted) => (value > 0 ? deviation / value : 0);
  return {
    resistance: of(resistance),
    noLoadCurrent: of(noLoadCurrent),
    resistanceRise: of(resistanceRise),
  };
}

function pointLine({
  angularSpeed,
  thrust,
  power,
  thrustSpread,
  powerSpread,
  source,
  trust,
}: SourcedPoint): string {
  const known = (value: string, spread = STAND_SPREAD) =>
    `{ value: ${value}, spread: ${(100 * spread).toFixed(1)} %, trust: ${trust} }`;
  return (
    `      - { angularSpeed: ${((angularSpeed * 30) / Math.PI).toFixed(0)} rpm, thrust: ${known(`${thrust.toFixed(3)} N`, thrustSpread)}, ` +
    `power: ${known(`${power.toFixed(1)} W`, powerSpread)}, source: ${JSON.stringify(source)} }\n`
  );
}

const FIELDS = [
  ['speedConstant', 'speed constant', 30 / Math.PI, 'rpm/V'],
  ['resistance', 'winding', 1000, 'mohm'],
  ['noLoadCurrent', 'idle current', 1, 'A'],
] as const;

/** Of the motor with bands; what the table does not tell says why. */
function motorText(fit: MotorFit, facts: MotorFacts): string {
  let before: string | undefined;
  const lines = FIELDS.map(([name, label, scale, unit]) => {
    const { value, deviation, untold }: Fitted = fit[name];
    const [low, high] = bandOf(value, deviation);
    const places = decimalsForBand([low * scale, high * scale]);
    const text = (each: number) => roundedText(each * scale, places);
    const why =
      untold === undefined
        ? name === 'resistance'
          ? ', fitted, at whatever warmth the winding had: 20 K are 8 %'
          : ', fitted'
        : untold === before
          ? ': hardly told either'
          : `: hardly told, ${untold}`;
    before = untold;
    return `  ${label} ${text(value)} (${text(low)} to ${text(high)}) ${unit}${why}\n`;
  });
  const rise = facts.riseFromTable ? "  what it loses at speed: its table's\n" : '';
  return `Motor by its full-throttle lines, 10th to 90th percentile:\n${lines.join('')}${rise}`;
}

function motorPart(motor: PartOf<'motor'>, { speedConstant, resistance, noLoadCurrent }: MotorFit): string {
  const field = (name: string, { value, deviation, trust, source }: Trusted, scale: number, unit: string) =>
    `    ${name}: { value: ${Number((value * scale).toPrecision(4))} ${unit}, spread: ${((100 * deviation) / value).toFixed(1)} %, trust: ${trust}, source: ${JSON.stringify(source)} }\n`;
  return (
    `  - id: ${motor.id}-matched\n    basedOn: ${motor.id}\n    name: ${motor.name}, matched\n` +
    field('speedConstant', speedConstant, 30 / Math.PI, 'rpm/V') +
    field('windingResistance', resistance, 1000, 'mohm') +
    field('noLoadCurrent', noLoadCurrent, 1, 'A')
  );
}

type Size = PartOf<'propeller'>['size'];

const near = (a: number, b: number) => Math.abs(a - b) < 0.6e-3;
const sameSize = (a: Size, b: Size) =>
  near(a.diameter, b.diameter) && near(a.pitch, b.pitch) && a.bladeCount === b.bladeCount;
const sizeText = ({ diameter, pitch, bladeCount }: Size) =>
  `${(diameter / 0.0254).toFixed(1)} x ${(pitch / 0.0254).toFixed(1)} x ${bladeCount}`;

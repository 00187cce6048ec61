import { bandOf } from '../../assess/propagate.ts';
import { fitFromTable } from '../../build/infer/fitFromTable.ts';
import { motorFacts } from '../../build/infer/motorFacts.ts';
import { propellerPoints } from '../../build/infer/motorTable.ts';
import { rotorFacts } from '../../build/infer/rotorFacts.ts';
import type { PartOf } from '../../build/schema/part.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import { partsOf } from '../../build/shelf.ts';
import type { MotorFit } from '../../drive/fitMotor.ts';
import { fitBlade } from '../../rotor/fitBlade.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { nearestName } from '../../units/nearestName.ts';
import { decimalsForBand, roundedText } from '../../units/significance.ts';
import type { Trusted } from '../../units/trusted.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';

export interface CalibrateOptions {
  readonly motor: string;
  readonly propeller: string;
  readonly shelf: readonly string[];
}

/**
 * `calibrate`: a motor's thrust table turned into measured points of the propeller it was taken with, and the motor's own
 * numbers weighed by it, as a shelf file to lay over: the main road to numbers narrower than a nameplate's.
 */
export function calibrate(options: CalibrateOptions, io: Io): void {
  const shelf = loadShelf(options.shelf, io);
  const motor = named(partsOf(shelf, 'motor'), options.motor, '--motor');
  const propeller = named(partsOf(shelf, 'propeller'), options.propeller, '--propeller');
  const table = motor.thrustTables.find((each) => sameSize(each.propeller, propeller.size));
  if (table === undefined) {
    const told = motor.thrustTables.map((each) => sizeText(each.propeller)).join(', ') || 'none';
    throw new BadInput(
      `calibrate: ${motor.id} has no thrust table with a propeller of ${sizeText(propeller.size)}. ` +
        `Tables it has: ${told}. Enter the table under thrustTables, with angularSpeed, voltage, current and thrust.`,
    );
  }
  const facts = motorFacts(motor);
  const points = propellerPoints(facts.model, table);
  if (points.length === 0) {
    throw new BadInput(
      `calibrate: no line of ${motor.id}'s table tells angularSpeed, voltage and current beside thrust, or the motor's ` +
        'losses would be more than was supplied. Check the lines.',
    );
  }
  const { blade } = rotorFacts({ ...propeller, measured: [] });
  const fitted = fitBlade(blade, sectionTables(), points);
  if (!fitted.ok) throw new BadInput(`calibrate: ${fitted.reason}`);
  const turn = ((fitted.value.pitchOffset - blade.pitchOffset) * 180) / Math.PI;
  const told = fitFromTable(motor, facts, table);
  io.writeError(
    `${points.length} lines: pitch turned by ${turn.toFixed(1)} deg, drag x ${(fitted.value.dragScale / blade.dragScale).toFixed(2)}` +
      `${facts.riseFromTable ? "; the motor's losses at speed are its table's" : ''}. Save this, lay it over with --shelf, and name ${propeller.id}-matched${told === undefined ? '' : ` and ${motor.id}-matched`} in the build.\n` +
      `${told === undefined ? 'No line at full throttle: the motor stays as it was.\n' : motorText(told)}`,
  );
  const lines = points.map(
    ({ angularSpeed, thrust, power }) =>
      `      - { angularSpeed: ${((angularSpeed * 30) / Math.PI).toFixed(0)} rpm, thrust: ${thrust.toFixed(3)} N, power: ${power.toFixed(1)} W }`,
  );
  io.writeOut(
    `format: ${SHELF_FORMAT}\n` +
      `note: ${propeller.name} matched to the thrust table of ${motor.name}\n` +
      `parts:\n  - id: ${propeller.id}-matched\n    basedOn: ${propeller.id}\n    name: ${propeller.name}, matched\n` +
      `    measured:\n${lines.join('\n')}\n${told === undefined ? '' : motorPart(motor, told)}`,
  );
}

/** Of the motor with bands; what the table does not tell is said to be as before. */
function motorText({ speedConstant, resistance, noLoadCurrent }: MotorFit): string {
  const shown = (name: string, { value, deviation, source }: Trusted, scale: number, unit: string) => {
    const [low, high] = bandOf(value, deviation);
    const places = decimalsForBand([low * scale, high * scale]);
    const text = (each: number) => roundedText(each * scale, places);
    const from = source.startsWith('fitted') ? '' : ', hardly told by the table';
    return `${name} ${text(value)} (${text(low)} to ${text(high)}) ${unit}${from}`;
  };
  return (
    `Motor from its full-throttle lines: ${shown('speed constant', speedConstant, 30 / Math.PI, 'rpm/V')}; ` +
    `${shown('winding', resistance, 1000, 'mohm')}; ${shown('idle current', noLoadCurrent, 1, 'A')}. Bands are 10th to 90th percentile.\n`
  );
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

function named<P extends { readonly id: string }>(parts: readonly P[], id: string, option: string): P {
  const found = parts.find((part) => part.id === id);
  if (found !== undefined) return found;
  const near = nearestName(
    id,
    parts.map((part) => part.id),
  );
  throw new BadInput(
    `${option}: there is none named "${id}" on the shelf.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

type Size = PartOf<'propeller'>['size'];

const near = (a: number, b: number) => Math.abs(a - b) < 0.6e-3;
const sameSize = (a: Size, b: Size) =>
  near(a.diameter, b.diameter) && near(a.pitch, b.pitch) && a.bladeCount === b.bladeCount;
const sizeText = ({ diameter, pitch, bladeCount }: Size) =>
  `${(diameter / 0.0254).toFixed(1)} x ${(pitch / 0.0254).toFixed(1)} x ${bladeCount}`;

import { motorFacts } from '../../build/infer/motorFacts.ts';
import { propellerPoints } from '../../build/infer/motorTable.ts';
import { rotorFacts } from '../../build/infer/rotorFacts.ts';
import type { PartOf } from '../../build/schema/part.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import { partsOf } from '../../build/shelf.ts';
import { fitBlade } from '../../rotor/fitBlade.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { nearestName } from '../../units/nearestName.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';

export interface CalibrateOptions {
  readonly motor: string;
  readonly propeller: string;
  readonly shelf: readonly string[];
}

/**
 * `calibrate`: a motor's thrust table turned into measured points of the propeller it was taken with, as a
 * shelf file to lay over: the main road to numbers narrower than a nameplate's.
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
  io.writeError(
    `${points.length} lines: pitch turned by ${turn.toFixed(1)} deg, drag x ${(fitted.value.dragScale / blade.dragScale).toFixed(2)}` +
      `${facts.riseFromTable ? "; the motor's losses at speed are its table's" : ''}. Save this, lay it over with --shelf, and name ${propeller.id}-matched in the build.\n`,
  );
  const lines = points.map(
    ({ angularSpeed, thrust, power }) =>
      `      - { angularSpeed: ${((angularSpeed * 30) / Math.PI).toFixed(0)} rpm, thrust: ${thrust.toFixed(3)} N, power: ${power.toFixed(1)} W }`,
  );
  io.writeOut(
    `format: ${SHELF_FORMAT}\n` +
      `note: ${propeller.name} matched to the thrust table of ${motor.name}\n` +
      `parts:\n  - id: ${propeller.id}-matched\n    basedOn: ${propeller.id}\n    name: ${propeller.name}, matched\n` +
      `    measured:\n${lines.join('\n')}\n`,
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

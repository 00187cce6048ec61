import type { BandedFigures } from '../../assess/bandedFigures.ts';
import { airOf } from '../../assess/dayOf.ts';
import { prepareRotors } from '../../assess/prepareRotors.ts';
import { rotorDoubt } from '../../assess/rotorDoubt.ts';
import { throttlePoint } from '../../assess/throttlePoint.ts';
import { fastTip } from '../../assess/tipMach.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { MotorTemperatures } from '../../drive/motorHeat.ts';
import { borne, type StationHeat } from '../../flight/heat.ts';
import type { FlightModel } from '../../flight/types.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { BadInput, type Io } from '../io.ts';
import { quantityWithin } from '../options.ts';
import { bandedCell, bandedIn, limitCell, OPEN_NOTE } from '../print/bandedCell.ts';
import { leansOnText } from '../print/leansOnText.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskPointOptions {
  readonly throttle: string;
  readonly charge: string;
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly json?: boolean;
}

/** `ask point`: every motor of a build at one throttle on its sagging pack, static. */
export function askPoint(file: string, options: AskPointOptions, io: Io): void {
  const share = { low: 0, high: 1, words: '0 % to 100 %' };
  const throttle = quantityWithin('--throttle', options.throttle, 'share', share);
  const charge = quantityWithin('--charge', options.charge, 'share', share);
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(options.brief, options.for, io);
  const read = loadBuild(file, io);
  const craft = mustRead(resolveBuild(read.build, shelf, read, loadBlades(options.shelf, io)));
  const air = airOf(brief);
  const sections = sectionTables();
  const prepared = prepareRotors(craft, air, sections);
  if (!prepared.ok) throw new BadInput(`${file}: propellers: ${prepared.reason}`);
  const rotors = craft.rotors.flatMap(({ partId }) => prepared.value.get(partId) ?? []);
  const [first] = rotors;
  if (first === undefined) throw new BadInput(`${file}: no propeller is on board.`);
  const readers = rotors.map(({ read }) => read);
  const model = flightModelOf(craft, readers, air, brief.reserve);
  const doubtAt = (angularSpeed: number) => rotorDoubt(craft, first, sections, air, angularSpeed);
  const found = throttlePoint(craft, model, doubtAt, throttle, charge);
  if (!found.ok) throw new BadInput(`${file}: no such operating point: ${found.reason}`);
  const { point, heat, figures, cells } = found.value;
  if (options.json) {
    const stations = point.stations.map((station, i) => ({
      name: model.stations[i]?.name,
      ...station,
      ...heatOf(heat[i]),
      banded: figures.motors[i] ?? {},
    }));
    io.writeOut(
      `${JSON.stringify({ ...point, ...(cells === undefined ? {} : { cells }), stations, banded: figures.craft }, null, 2)}\n`,
    );
    return;
  }
  const fast = fastTip(
    { model, air },
    'At this throttle',
    point.stations.map(({ angularSpeed }) => angularSpeed),
  );
  io.writeOut(`${pointText(model, figures, cells)}${fast === undefined ? '' : `${fast.says}\n`}`);
}

const heatOf = (heat: StationHeat | undefined) => ({
  ...settledOf(borne(heat)),
  ...(heat !== undefined && Number.isFinite(heat.timeToLimit) ? { timeToLimit: heat.timeToLimit } : {}),
});

const settledOf = (settled: MotorTemperatures | undefined) =>
  settled === undefined ? {} : { windingTemperature: settled.winding, caseTemperature: settled.case };

/** Shafts are told in rpm [rad/s]. */
const FAST = 1000;

function pointText(model: FlightModel, { craft, motors }: BandedFigures, cells: string | undefined): string {
  const names = model.stations.map(({ name }) => name);
  const right = (header: readonly string[]) => header.map((_, i) => (i === 0 ? 'left' : 'right'));
  const table = (header: readonly string[], cells: (i: number) => readonly string[]) =>
    narrowTable(
      header,
      names.map((name, i) => [name, ...cells(i)]),
      right(header),
    );
  const speeds = table(
    ['motor', 'turns at rpm', 'net thrust gf', 'motor current A', 'motor voltage V', 'shaft power W'],
    (i) => [
      bandedIn(motors[i]?.angularSpeed, 'angularSpeed', FAST),
      bandedIn(motors[i]?.thrust, 'force'),
      bandedIn(motors[i]?.motorCurrent, 'current'),
      bandedIn(motors[i]?.motorVoltage, 'voltage'),
      bandedIn(motors[i]?.shaftPower, 'power'),
    ],
  );
  const losses = table(['lost in', 'copper W', 'iron W', 'controller W', 'leads W'], (i) => [
    bandedIn(motors[i]?.copperLoss, 'power'),
    bandedIn(motors[i]?.ironLoss, 'power'),
    bandedIn(motors[i]?.controllerLoss, 'power'),
    bandedIn(motors[i]?.leadLoss, 'power'),
  ]);
  const heats = table(['heated', 'winding degC', 'case degC', 'too hot after'], (i) => [
    bandedIn(motors[i]?.winding, 'temperature'),
    bandedIn(motors[i]?.case, 'temperature'),
    limitCell(motors[i]?.timeToLimit),
  ]);
  return (
    `${speeds}\n\n${losses}\n\n${heats}\n\n${`${speeds}${losses}${heats}`.includes('*') ? `${OPEN_NOTE}\n\n` : ''}` +
    `Pack ${bandedCell(craft.packVoltage, 'voltage')}, ${bandedCell(craft.packCurrent, 'current')}${cells === undefined ? '' : `, ${cells}`}; ` +
    `all motors ${bandedCell(craft.netThrust, 'force')}. Settled at that throttle for a minute or two: out of a hover the pack sags less, which ` +
    'is what `assess` tells. Motor amps are in the winding; the pack gives about throttle times as many. Temperatures from the air up.\n' +
    leansOnText([
      ['thrust', motors[0]?.thrust],
      ['pack current', craft.packCurrent],
      ['winding', motors[0]?.winding],
    ])
  );
}

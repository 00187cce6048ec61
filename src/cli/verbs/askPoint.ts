import { airOf } from '../../assess/dayOf.ts';
import { prepareRotors } from '../../assess/prepareRotors.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import { pointForThrottles } from '../../flight/operatingPoint.ts';
import { neutralLevers } from '../../flight/types.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { BadInput, type Io } from '../io.ts';
import { quantityWithin } from '../options.ts';
import { printTable } from '../print/table.ts';

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
  const prepared = prepareRotors(craft, air, sectionTables());
  if (!prepared.ok) throw new BadInput(`${file}: propellers: ${prepared.reason}`);
  const readers = craft.rotors.flatMap((rotor) => prepared.value.get(rotor.partId)?.read ?? []);
  const model = flightModelOf(craft, readers, air, brief.reserve);
  const point = pointForThrottles(
    model,
    neutralLevers,
    model.stations.map(() => throttle),
    { charge },
  );
  if (!point.ok) throw new BadInput(`${file}: no such operating point: ${point.reason}`);
  if (options.json) {
    const stations = point.value.stations.map((station, i) => ({
      name: model.stations[i]?.name,
      ...station,
    }));
    io.writeOut(`${JSON.stringify({ ...point.value, stations }, null, 2)}\n`);
    return;
  }
  const rows = point.value.stations.map((station, i) => [
    model.stations[i]?.name ?? '',
    String(Number(((station.angularSpeed * 30) / Math.PI).toPrecision(3))),
    station.netThrust.toPrecision(3),
    station.motorCurrent.toPrecision(3),
    station.motorVoltage.toPrecision(3),
    station.shaftPower.toPrecision(3),
    (station.copperLoss + station.ironLoss + station.controllerLoss + station.leadLoss).toPrecision(3),
  ]);
  const header = ['motor', 'rpm', 'net thrust N', 'motor A', 'motor V', 'shaft W', 'lost W'];
  io.writeOut(
    `${printTable(
      header,
      rows,
      header.map((_, column) => (column === 0 ? 'left' : 'right')),
    )}\n\n` +
      `Pack ${point.value.packVoltage.toPrecision(3)} V, ${point.value.packCurrent.toPrecision(3)} A; ` +
      'at the most likely value of every input, settled at that throttle for a minute or two: out of a hover the pack sags less, which is ' +
      'what `assess` tells, with bands. Motor amps are in the winding; the pack gives about throttle times as many.\n',
  );
}

import type { MissionLegReport, MissionReport } from '../../assess/parts/data.ts';
import { dragOf } from '../../assess/parts/dragOf.ts';
import { missionAnswers } from '../../assess/parts/mission/missionFigures.ts';
import { missionReport, usualMission } from '../../assess/parts/mission.ts';
import { neutralLevers } from '../../flight/types.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import { BadInput, type Io } from '../io.ts';
import { partJson } from '../print/answerText.ts';
import { measuresText, withFindings } from '../print/partText.ts';
import { printTable } from '../print/table.ts';
import { readLegs } from '../readLegs.ts';

export interface AskMissionOptions extends AskFlightOptions {
  readonly legs?: string;
}

/** `ask mission`: legs flown one after another on one pack; the purpose's usual flight when none are given. */
export function askMission(file: string, options: AskMissionOptions, io: Io): void {
  const legs = options.legs === undefined ? undefined : readLegs(options.legs);
  const context = flightOf(file, options, io);
  if (legs === undefined) {
    const result = usualMission.run(context);
    const { measures, findings, data } = result;
    const tables = [
      data?.mission ? legsTable(data.mission) : '',
      measures.length > 0 ? measuresText(measures, options.how) : '',
    ];
    io.writeOut(options.json ? partJson(result, data ?? {}) : withFindings(tables, findings));
    return;
  }
  const found = missionAnswers(context.flight.model, neutralLevers, dragOf(context.craft), legs);
  if (!found.ok) throw new BadInput(`${file}: the mission cannot be flown: ${found.reason}.`);
  const { flown, figures } = found.value;
  const mission = missionReport(legs, flown);
  if (options.json) {
    const { duration, chargeLeft, intoReserve } = flown;
    const energy = figures['mission-energy'];
    io.writeOut(`${JSON.stringify({ mission, duration, chargeLeft, energy, intoReserve }, null, 2)}\n`);
    return;
  }
  const ended =
    flown.end === 'landed'
      ? `Landed after ${(flown.duration / 60).toFixed(1)} min with ${wholePercent(flown.chargeLeft)} left`
      : `Over after ${(flown.duration / 60).toFixed(1)} min with ${wholePercent(flown.chargeLeft)} left: ${flown.end}`;
  io.writeOut(
    `${legsTable(mission)}\n\n${ended}${flown.intoReserve ? ', into the landing reserve' : ''}; ` +
      `${((figures['mission-energy'] ?? 0) / 3600).toPrecision(3)} Wh, at the most likely value of every input.\n`,
  );
}

function legsTable({ legs }: MissionReport): string {
  return printTable(
    ['leg', 'time s', 'way m', 'mean A', 'lowest V', 'left %'],
    roundsTogether(legs).map(({ what, duration, distance, meanCurrent, lowestVoltage, chargeLeft }) => [
      what,
      duration.toFixed(1),
      distance > 0 ? distance.toFixed(0) : '',
      meanCurrent.toPrecision(3),
      lowestVoltage.toPrecision(3),
      (100 * chargeLeft).toFixed(1),
    ]),
    ['left', 'right', 'right', 'right', 'right', 'right'],
  );
}

/** The rounds of a style, which go through the same pulls again and again, as one row a pull. */
function roundsTogether(legs: readonly MissionLegReport[]): readonly MissionLegReport[] {
  const rows: MissionLegReport[] = [];
  for (const leg of legs) {
    const at = leg.what.includes(', ') ? rows.findIndex(({ what }) => what === leg.what) : -1;
    const before = rows[at];
    if (before === undefined) {
      rows.push(leg);
      continue;
    }
    const duration = before.duration + leg.duration;
    rows[at] = {
      ...leg,
      duration,
      meanCurrent: (before.meanCurrent * before.duration + leg.meanCurrent * leg.duration) / duration,
      lowestVoltage: Math.min(before.lowestVoltage, leg.lowestVoltage),
    };
  }
  return rows;
}

import type { MissionLegReport, MissionReport } from '../../assess/parts/data.ts';
import { legsFlown, missionReport, usualMission } from '../../assess/parts/mission.ts';
import { roundedText } from '../../units/significance.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import { BadInput, type Io } from '../io.ts';
import { partJson } from '../print/answerText.ts';
import { narrowTable } from '../print/narrow.ts';
import { measuresText, withFindings } from '../print/partText.ts';
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
      ...(data?.mission ? [legsTable(data.mission), MOST_LIKELY] : []),
      measures.length > 0 ? measuresText(measures, options.how) : '',
    ];
    io.writeOut(options.json ? partJson(result, data ?? {}) : withFindings(tables, findings));
    return;
  }
  const found = legsFlown(context, legs);
  if (!found.ok) throw new BadInput(`${file}: the mission cannot be flown: ${found.reason}.`);
  const { flown, energy, measures, findings } = found.value;
  const mission = missionReport(legs, flown);
  if (options.json) {
    const { duration, chargeLeft, intoReserve } = flown;
    io.writeOut(
      `${JSON.stringify({ mission, duration, chargeLeft, energy, intoReserve, measures, findings }, null, 2)}\n`,
    );
    return;
  }
  const tables = [legsTable(mission), MOST_LIKELY, measuresText(measures, options.how)];
  io.writeOut(withFindings(tables, findings));
}

const MOST_LIKELY = 'The table is the most likely case; the figures below have their bands.';

function legsTable({ legs }: MissionReport): string {
  return narrowTable(
    ['leg', 'time s', 'way m', 'mean A', 'lowest V', 'winding degC', 'left %'],
    roundsTogether(legs).map((leg) => [
      leg.eased === undefined ? leg.what : `${leg.what}, eased to ${wholePercent(leg.eased)}`,
      leg.duration.toFixed(0),
      leg.distance > 0 ? leg.distance.toFixed(0) : '',
      roundedText(leg.meanCurrent, leg.meanCurrent < 10 ? 1 : 0),
      leg.lowestVoltage.toFixed(1),
      leg.hottestWinding === undefined ? 'burnt' : (leg.hottestWinding - 273.15).toFixed(0),
      (100 * leg.chargeLeft).toFixed(0),
    ]),
    ['left', 'right', 'right', 'right', 'right', 'right', 'right'],
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
    const { hottestWinding: _, ...rest } = leg;
    rows[at] = {
      ...rest,
      duration,
      meanCurrent: (before.meanCurrent * before.duration + leg.meanCurrent * leg.duration) / duration,
      lowestVoltage: Math.min(before.lowestVoltage, leg.lowestVoltage),
      ...hottestOf(before, leg),
      ...leastEased(before, leg),
    };
  }
  return rows;
}

/** The hotter of two legs of one name; nothing where a motor is burnt in either. */
function hottestOf(one: MissionLegReport, other: MissionLegReport): Pick<MissionLegReport, 'hottestWinding'> {
  const [first, second] = [one.hottestWinding, other.hottestWinding];
  return first === undefined || second === undefined ? {} : { hottestWinding: Math.max(first, second) };
}

/** What two legs of one name were eased to, the less of them; nothing where neither was. */
function leastEased(a: MissionLegReport, b: MissionLegReport): Pick<MissionLegReport, 'eased'> {
  const eased = Math.min(a.eased ?? 1, b.eased ?? 1);
  return eased < 1 ? { eased } : {};
}

import type { Brief } from '../../../build/schema/brief.ts';
import type { MissionEnd, MissionFlown } from '../../../flight/mission/types.ts';
import { formatQuantity } from '../../../units/formatQuantity.ts';
import { wholePercent } from '../../../units/wholePercent.ts';
import type { Finding } from '../../types.ts';
import { usualDistance } from '../../windows.ts';
import { TURN_BACK } from './missionFigures.ts';
import { MISSION_SOURCE as SOURCE } from './missionForms.ts';

export function noMission(reason: string): Finding {
  return {
    id: 'no-usual-flight',
    sheet: 'flight',
    severity: 'risk',
    says: `The flight that this purpose usually is cannot be flown: ${reason}.`,
    remedy: 'A calmer day, less mass, or thrust to spare.',
    source: SOURCE,
    parts: ['motors', 'propellers', 'pack'],
  };
}

/** `the cells are at their cut-off voltage`: what ended a flight in the air. */
export function endInWords(end: Exclude<MissionEnd, 'landed'>): string {
  switch (end) {
    case 'empty':
      return 'the pack is empty';
    case 'cut-off voltage':
      return 'the cells are at their cut-off voltage and not even a steady leg or a hover can be held';
    case 'thrust runs short':
      return 'the sagging pack no longer feeds the thrust';
  }
}

/** Of legs as flown, whatever they are. */
export function flownFindings(name: string, flown: MissionFlown, reserve: number): readonly Finding[] {
  const findings: Finding[] = [];
  const base = { sheet: 'flight', source: SOURCE, parts: ['pack'] } as const;
  if (flown.end !== 'landed') {
    findings.push({
      ...base,
      id: 'flight-ends-in-air',
      severity: 'risk',
      says: `${name} ends in the air after ${formatQuantity(flown.duration, 'time')}: ${endInWords(flown.end)}. What is left in the pack then, ${wholePercent(flown.chargeLeft)}, cannot be flown with, and no turn-back point holds.`,
      remedy: 'A pack of lower resistance or larger, a warmer one, a shorter flight, or a gentler one.',
    });
  } else if (flown.intoReserve) {
    findings.push({
      ...base,
      id: 'usual-flight-short',
      severity: 'risk',
      says: `${name} lands with ${wholePercent(flown.chargeLeft)} of the charge; ${wholePercent(reserve)} is asked.`,
      number: { value: flown.chargeLeft, limit: reserve, quantity: 'share' },
      remedy: 'A larger pack, a shorter flight, or a gentler one.',
    });
  }
  const eased = Math.min(...flown.legs.map((leg) => leg.eased ?? 1));
  if (eased < 1) {
    findings.push({
      ...base,
      id: 'bursts-eased',
      severity: 'note',
      says: `Flown as asked its bursts would pull the cells below their cut-off voltage: they are eased to ${wholePercent(eased)} of the throttle at the least.`,
      remedy:
        'A pack of lower resistance, or one kept warm until it is flown (in a pocket, never on a heater, and as its maker allows).',
    });
  }
  return findings;
}

export function missionFindings(
  flown: MissionFlown,
  brief: Brief,
  turnBack: number | undefined,
): readonly Finding[] {
  const findings = [...flownFindings('A usual flight for this purpose', flown, brief.reserve)];
  const farthest = brief.farthest ?? usualDistance(brief.purpose);
  if (turnBack !== undefined && turnBack < farthest) {
    findings.push({
      id: 'turn-back-short',
      sheet: 'flight',
      severity: brief.farthest === undefined ? 'note' : 'risk',
      says: `Against the wind ${wholePercent(TURN_BACK)} of the charge is used after ${formatQuantity(turnBack, 'length')}; it is meant to go ${formatQuantity(farthest, 'length')} out.`,
      number: { value: turnBack, limit: farthest, quantity: 'length' },
      remedy: 'Stay nearer, or take a larger pack or one of higher energy.',
      source: SOURCE,
      parts: ['pack'],
    });
  }
  return findings;
}

export function downwindFinding(used: number | undefined, brief: Brief): readonly Finding[] {
  // Who stays near never gets so far out.
  if (brief.purpose !== 'cruising' || used === undefined || used <= 1 - brief.reserve) return [];
  return [
    {
      id: 'downwind-trap',
      sheet: 'wind',
      severity: 'note',
      says:
        used > 1
          ? `Flown out with the wind until ${wholePercent(TURN_BACK)} is used it does not come home against it.`
          : `Flown out with the wind until ${wholePercent(TURN_BACK)} is used it comes home with ${wholePercent(1 - used)} left.`,
      number: { value: used, limit: 1 - brief.reserve, quantity: 'share' },
      remedy: 'Fly out against the wind and home with it.',
      source: SOURCE,
      parts: ['pack'],
    },
  ];
}

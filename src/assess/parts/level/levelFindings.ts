import type { Brief } from '../../../build/schema/brief.ts';
import { isRinged, KNOWN_RING_TILT } from '../../../flight/forward/ringDrag.ts';
import { borne } from '../../../flight/heat.ts';
import type { FlightModel } from '../../../flight/types.ts';
import { formatQuantity, withUnit } from '../../../units/formatQuantity.ts';
import type { Finding } from '../../types.ts';
import { heatExcess, type LevelNominal } from './levelNominal.ts';
import { crossing } from './onCurve.ts';

const LEVEL = 'level trim, docs/method/flight.md';
const HEAT = 'two-lump heat balance, docs/method/drive.md';
/** Windings of one end hotter than the other's by this much are worth a word [K] (common practice, no source). */
const APART = 12;

/** What level flight says beyond its numbers. */
export function levelFindings(nominal: LevelNominal, brief: Brief): readonly Finding[] {
  return [
    ...guardsAtSpeed(nominal),
    ...heatLimits(nominal),
    ...unevenHeat(nominal),
    ...cameraSays(nominal, brief),
  ];
}

const speedText = (speed: number): string => formatQuantity(speed, 'speed');
const degC = (kelvin: number): string => withUnit(Math.round(kelvin - 273.15), 'degC');

/** Rings were measured in hover and slow side winds only: beyond, top speed and wind held are what could at best be. */
function guardsAtSpeed({ craft, points, top }: LevelNominal): readonly Finding[] {
  if (!isRinged(craft.model) || top.at.tilt <= KNOWN_RING_TILT) return [];
  const known = points.findLast(({ tilt }) => tilt <= KNOWN_RING_TILT)?.speed ?? 0;
  return [
    {
      id: 'guards-at-speed',
      sheet: 'flight',
      severity: 'risk',
      says: `With guards nothing is known of flight steeper than ${formatQuantity(KNOWN_RING_TILT, 'angle')}, from about ${speedText(known)} on: top speed and wind held are upper bounds.`,
      number: { value: top.at.speed, limit: known, quantity: 'speed' },
      remedy: `Take ${speedText(known)} for the wind to stay under until it was flown, away from people.`,
      source: 'momentum of the air through the rings, docs/method/flight.md',
      parts: ['frame'],
    },
  ];
}

function heatLimits(nominal: LevelNominal): readonly Finding[] {
  const { craft, cruise, cruiseHeat, held, top } = nominal;
  if (heatExcess(craft, cruiseHeat) > 0) {
    return [
      {
        id: 'cruise-too-hot',
        sheet: 'heat',
        severity: 'risk',
        says: `Held at the best range speed of ${speedText(cruise.speed)} a motor passes its temperature limit.`,
        number: { value: cruise.speed, limit: held?.at.speed ?? 0, quantity: 'speed' },
        remedy: 'Fly slower, a larger motor, or less pitch.',
        source: HEAT,
        parts: ['motors', 'propellers'],
      },
    ];
  }
  if (held === undefined) return [];
  return [
    {
      id: 'heat-limits-speed',
      sheet: 'heat',
      severity: 'note',
      says: `Faster than ${speedText(held.at.speed)} a motor gets too hot when it is held; it flies ${speedText(top.at.speed)} for a while.`,
      number: { value: top.at.speed, limit: held.at.speed, quantity: 'speed' },
      remedy: 'Full speed in bursts; less pitch or a larger motor to hold it.',
      source: HEAT,
      parts: ['motors', 'propellers'],
    },
  ];
}

function unevenHeat(nominal: LevelNominal): readonly Finding[] {
  const { stations } = nominal.craft.model;
  const hot = stations.map((station, i) => ({
    station,
    winding: borne(nominal.cruiseHeat[i])?.winding ?? Number.NaN,
  }));
  const ordered = hot.filter(({ winding }) => Number.isFinite(winding)).sort((a, b) => b.winding - a.winding);
  const [most, least] = [ordered[0], ordered.at(-1)];
  if (most === undefined || least === undefined || most.winding - least.winding < APART) return [];
  const front = most.station.position[0] > 0;
  return [
    {
      id: 'uneven-cruise-heat',
      sheet: 'heat',
      severity: 'note',
      says: `In cruise the ${most.station.name} motor settles at ${degC(most.winding)}, the ${least.station.name} one at ${degC(least.winding)}.`,
      number: { value: most.winding, limit: least.winding + APART, quantity: 'temperature' },
      remedy: `Slide the pack ${front ? 'back' : 'forward'} until both ends work alike, or accept it as the price of the layout.`,
      source: HEAT,
      place: { x: most.station.position[0], y: most.station.position[1] },
      parts: ['pack', 'motors'],
    },
  ];
}

function cameraSays(nominal: LevelNominal, brief: Brief): readonly Finding[] {
  const { cameraTilt, points, top, cruise } = nominal;
  if (cameraTilt === undefined) return [];
  const speed = crossing(
    points.map((point) => point.speed),
    points.map(({ tilt }) => tilt),
    cameraTilt,
  );
  const tilt = formatQuantity(cameraTilt, 'angle');
  if (speed === undefined) {
    return [
      {
        id: 'camera-never-level',
        sheet: 'flight',
        severity: 'note',
        says: `In level flight it never leans the ${tilt} of its flying camera; at top speed it leans ${formatQuantity(top.at.tilt, 'angle')}.`,
        number: { value: cameraTilt, limit: top.at.tilt, quantity: 'angle' },
        remedy: 'Tilt the camera less.',
        source: LEVEL,
        parts: ['cameras'],
      },
    ];
  }
  const far = speed > 1.4 * cruise.speed || speed < 0.6 * cruise.speed;
  if (brief.purpose !== 'cruising' || !far) return [];
  return [
    {
      id: 'camera-against-cruise',
      sheet: 'flight',
      severity: 'note',
      says: `Its camera looks level at ${speedText(speed)}; it gets furthest at ${speedText(cruise.speed)}.`,
      number: { value: speed, limit: cruise.speed, quantity: 'speed' },
      remedy: `Tilt the camera ${formatQuantity(cruise.tilt, 'angle')} for cruising.`,
      source: LEVEL,
      parts: ['cameras'],
    },
  ];
}

/** What becomes of a craft that hovers but does not fly level. */
export function noLevelFlight(reason: string, model: FlightModel): Finding {
  return {
    id: 'no-level-flight',
    sheet: 'flight',
    severity: 'risk',
    says: `It hovers, but level flight has no solution: ${reason}.`,
    remedy: `Less mass, or thrust to spare: ${model.stations.length} motors carry it now.`,
    source: LEVEL,
    parts: ['motors', 'propellers', 'pack'],
  };
}

import type { Brief } from '../build/schema/brief.ts';
import { WINDING_BEARS } from '../drive/insulation.ts';
import { borne } from '../flight/heat.ts';
import type { HoverStory } from '../flight/hoverStory.ts';
import { isAtOnce } from '../units/atOnce.ts';
import { formatQuantity, withUnit } from '../units/formatQuantity.ts';
import { wholePercent } from '../units/wholePercent.ts';
import type { StationReport } from './assessment.ts';
import { namedStates } from './openEnd.ts';
import type { Finding, Measure } from './types.ts';
import { hoverThrottleStop } from './windows.ts';

const TRADE = 'common practice, no source';

/** Findings about how it hovers, lasts and heats. */
export function hoverFindings(
  story: HoverStory,
  measures: readonly Measure[],
  stations: readonly StationReport[],
  brief: Brief,
): readonly Finding[] {
  const findings: Finding[] = [];
  const hover = measures.find(({ id }) => id === 'hover-throttle');
  if (hover !== undefined && hover.value > hoverThrottleStop) {
    findings.push({
      id: 'hover-throttle-stop',
      sheet: 'lift',
      severity: 'stop',
      says: `It hovers at ${formatQuantity(hover.value, 'share', { band: hover.band })} throttle: nothing is left to fly with.`,
      number: { value: hover.value, limit: hoverThrottleStop, quantity: 'share' },
      remedy: 'Less mass, more pitch or diameter, higher K_V or another cell.',
      source: TRADE,
      parts: ['motors', 'propellers', 'pack'],
    });
  }
  findings.push(...hoverInDoubt(measures));
  findings.push(...unevenLoad(stations));
  findings.push(...heatFindings(story, stations));
  if (story.endurance.end !== 'landing reserve') {
    findings.push({
      id: 'hover-ends-early',
      sheet: 'flight',
      severity: 'risk',
      says:
        story.endurance.end === 'cut-off voltage'
          ? `The pack reaches its cut-off voltage with ${wholePercent(story.endurance.chargeLeft)} of its charge left.`
          : `Thrust runs short with ${wholePercent(story.endurance.chargeLeft)} of the charge left.`,
      number: { value: story.endurance.chargeLeft, limit: brief.reserve, quantity: 'share' },
      remedy: 'A pack of lower resistance, more cells, or land earlier.',
      source: 'energy balance of the hover',
      parts: ['pack'],
    });
  }
  return findings;
}

/** It hovers as it is told, and not in every state of doubt. */
function hoverInDoubt(measures: readonly Measure[]): readonly Finding[] {
  const lost = measures.find(({ id }) => id === 'hover-throttle')?.lost;
  if (lost === undefined) return [];
  const { states, of } = lost;
  return [
    {
      id: 'hover-in-doubt',
      sheet: 'lift',
      severity: 'risk',
      says: `It hovers as it is told, but in ${states.length} of ${of} states of doubt (one input a step, a standard deviation, off) it cannot: ${namedStates(lost)}.`,
      number: { value: states.length, limit: 0, quantity: 'count' },
      remedy:
        'Weigh it and measure its thrust before it is trusted; or less mass, more thrust, another cell.',
      source: 'JCGM 100:2008, inputs moved one at a time; docs/method/README.md',
      parts: ['motors', 'propellers', 'pack'],
    },
  ];
}

/** One note for the motor that works hardest, at its place on the drawing. */
function unevenLoad(stations: readonly StationReport[]): readonly Finding[] {
  const hovering = stations.flatMap((station) =>
    station.hover ? [{ station, thrust: station.hover.thrust }] : [],
  );
  const mean = hovering.reduce((sum, each) => sum + each.thrust, 0) / Math.max(hovering.length, 1);
  const hardest = [...hovering].sort((a, b) => b.thrust - a.thrust)[0];
  if (hardest === undefined || hardest.thrust < 1.1 * mean) return [];
  const ratio = hardest.thrust / mean;
  const front = hardest.station.place[0] > 0;
  return [
    {
      id: 'uneven-motor-load',
      sheet: 'lift',
      severity: ratio > 1.25 ? 'risk' : 'note',
      says: `The ${hardest.station.name} motor carries ${wholePercent(ratio - 1)} more than the mean: it runs hotter and saturates first.`,
      number: { value: ratio, limit: 1.1, quantity: 'ratio' },
      remedy: `Slide the pack ${front ? 'back' : 'forward'}, or accept it as the price of the layout.`,
      source: 'static equilibrium about the true centre of gravity',
      place: { x: hardest.station.place[0], y: hardest.station.place[1] },
      parts: ['pack', 'motors'],
    },
  ];
}

function heatFindings(story: HoverStory, stations: readonly StationReport[]): readonly Finding[] {
  const findings: Finding[] = [];
  const burnt = stations.findIndex(({ hover }, i) => hover && borne(story.hoverHeat[i]) === undefined);
  const runaway = stations[burnt];
  if (runaway !== undefined) {
    const never = story.hoverHeat[burnt]?.settled === undefined;
    findings.push({
      id: 'hover-heat-runaway',
      sheet: 'heat',
      severity: 'stop',
      says: never
        ? `In hover the ${runaway.name} motor never settles: its losses outgrow the cooling.`
        : `In hover the ${runaway.name} motor would settle only over ${formatQuantity(WINDING_BEARS, 'temperature')}: its winding is burnt before.`,
      remedy: 'A larger motor, a smaller propeller or less mass.',
      source: 'two-lump heat balance, docs/method/drive.md',
      place: { x: runaway.place[0], y: runaway.place[1] },
      parts: ['motors'],
    });
  }
  const soonest = Math.min(...story.punchHeat.map((heat) => heat.timeToLimit));
  if (soonest < 20) {
    const index = story.punchHeat.findIndex((heat) => heat.timeToLimit === soonest);
    const station = stations[index];
    findings.push({
      id: 'full-throttle-heat',
      sheet: 'heat',
      severity: soonest < 6 ? 'risk' : 'note',
      says: isAtOnce(soonest)
        ? `Held at full throttle, the ${station?.name ?? 'hottest'} motor is too hot at once: a hover alone brings it to its limit.`
        : `Held at full throttle, the ${station?.name ?? 'hottest'} motor is too hot after ${soonest < 1 ? 'less than a second' : `about ${withUnit(Math.round(soonest), 's')}`}.`,
      number: { value: soonest, limit: 20, quantity: 'time' },
      remedy: `Short bursts; feel the motors after the first flights: over ${withUnit(80, 'degC')} is too hot.`,
      source: 'two-lump heat balance, docs/method/drive.md',
      ...(station === undefined ? {} : { place: { x: station.place[0], y: station.place[1] } }),
      parts: ['motors'],
    });
  }
  return findings;
}

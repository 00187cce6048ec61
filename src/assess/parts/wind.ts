import type { Brief } from '../../build/schema/brief.ts';
import { forwardTrim } from '../../flight/forward/forwardTrim.ts';
import { neutralLevers } from '../../flight/types.ts';
import { formatQuantity, withUnit } from '../../units/formatQuantity.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import type { Finding } from '../types.ts';
import { bandedMeasures, type MeasureForm, type Numbers } from './banded.ts';
import { dragOf } from './dragOf.ts';
import { type KnownTop, knownTop, raisedTop } from './level/knownTop.ts';
import { dayStates, forwardOf, onlyElectrical } from './speedStates.ts';
import { type AssessPart, NOTHING, type PartContext, type PartResult } from './types.ts';
import { gustFigures, gustOfDay, joltOfDay, stationFigures } from './wind/windFigures.ts';

/** Largest duty that leaves something to steer with. */
const STEERING_DUTY = 0.8;
const LEVEL = 'level flight at the speed of the wind; docs/method/flight.md';
const GUSTS = 'MIL-F-8785C (Dryden gusts at 10 m over grass), Hoerner 1965 (drag)';

/** Holding station in the brief's wind, the largest wind held, gusts and sway. */
export const windHolding: AssessPart = {
  id: 'wind',
  label: 'wind and gusts',
  run: ({ craft, brief, flight }: PartContext): PartResult => {
    if (flight === undefined) return NOTHING;
    const drag = dragOf(craft);
    const wind = brief.site.wind.value;
    const made = forwardOf(flight, drag, { levers: neutralLevers, balanceShift: 0 });
    if (!made.ok) return NOTHING; // level flight says why
    const nominal = made.value;
    const lastCharge = Math.max(brief.reserve, 0.1);
    const found = knownTop(nominal, lastCharge, STEERING_DUTY);
    const held = found.ok ? found.value : undefined;
    const inWind = forwardTrim(nominal, wind);
    const trim = inWind.ok ? inWind.value : undefined;
    const figures = {
      ...stationFigures(nominal, trim),
      ...gustFigures(nominal, trim, wind),
      'wind-held': held?.at.speed,
    };
    const measures = bandedMeasures(
      windForms(wind),
      figures,
      dayStates(craft, brief, flight),
      (state): Numbers => {
        const raised = forwardOf(flight, drag, state, nominal.wakes);
        if (!raised.ok) return {};
        const electrical = onlyElectrical(state);
        const calm = electrical && state.wind === wind;
        const found = calm ? inWind : forwardTrim(raised.value, state.wind);
        const windTrim = found.ok ? found.value : undefined;
        return {
          ...(calm ? figures : gustFigures(raised.value, windTrim, state.wind)),
          ...stationFigures(raised.value, windTrim),
          'wind-held': held && raisedTop(held, nominal, raised.value, electrical),
        };
      },
    );
    const struck = inWind.ok ? joltOfDay(nominal, inWind.value, wind) : inWind;
    return {
      measures,
      findings: [
        ...windFindings(wind, held, found.ok ? '' : found.reason, brief),
        ...(wind > 0 && !struck.ok ? [joltUntold(wind, struck.reason)] : []),
      ],
    };
  },
};

function windFindings(
  wind: number,
  held: KnownTop | undefined,
  reason: string,
  brief: Brief,
): readonly Finding[] {
  const base = { sheet: 'wind', source: LEVEL, parts: ['motors', 'propellers', 'pack'] } as const;
  const remedy = 'Fly on calmer days, land earlier, or take less mass, less drag or more cells.';
  if (held === undefined) {
    return [
      {
        ...base,
        id: 'no-wind-held',
        severity: 'risk',
        says: `At the landing reserve it has no steering left in any wind: ${reason}.`,
        number: { value: wind, limit: 0, quantity: 'speed' },
        remedy,
      },
    ];
  }
  const most = held.at.speed;
  const show = (speed: number) => formatQuantity(speed, 'speed');
  const peak = wind + gustOfDay(wind);
  if (peak <= most) return [];
  return [
    {
      ...base,
      id: 'wind-not-held',
      severity: wind > most ? 'stop' : 'risk',
      says:
        wind > most
          ? `With ${wholePercent(brief.reserve)} left it holds ${show(most)} of wind and still steers; the brief has ${show(wind)}: it is blown away.`
          : `Gusts of the brief's wind of ${show(wind)} reach ${show(peak)} (three standard deviations over the mean, ${(peak / wind).toFixed(1)} times it); with ${wholePercent(brief.reserve)} left it holds ${show(most)} and still steers.`,
      number: { value: wind > most ? wind : peak, limit: most, quantity: 'speed' },
      remedy,
    },
  ];
}

/** Without level flight in the wind there is no lean to be struck at. */
function joltUntold(wind: number, reason: string): Finding {
  return {
    sheet: 'wind',
    source: LEVEL,
    parts: ['motors', 'propellers'],
    id: 'gust-untold',
    severity: 'note',
    says: `Jolt and push of a sharp gust are not told, as there is no steady flight in ${formatQuantity(wind, 'speed')} of wind for it to strike: ${reason}.`,
    remedy: 'Tell a wind that it can stand in, or take less drag, less mass or more cells.',
  };
}

function windForms(wind: number): readonly MeasureForm[] {
  const blows = formatQuantity(wind, 'speed');
  const gust = withUnit(gustOfDay(wind).toFixed(1), 'm/s');
  return [
    {
      id: 'wind-held',
      label: 'largest steady wind held, at the reserve',
      sheet: 'wind',
      quantity: 'speed',
      better: 'more',
      how: 'Fastest level flight with no duty above 80 %, the pack down to the landing reserve: a fifth is left to steer with. A steady wind: hold it against the gusts, which reach three standard deviations over the mean wind.',
      source: LEVEL,
    },
    {
      id: 'wind-tilt',
      label: `tilt to hold station in ${blows}`,
      sheet: 'wind',
      quantity: 'angle',
      better: 'less',
      how: 'Weight x sine of the tilt = drag of body and propellers along the tilted craft, at the speed of the wind.',
      source: LEVEL,
    },
    {
      id: 'wind-throttle',
      label: `hardest motor's throttle in ${blows}`,
      sheet: 'wind',
      quantity: 'share',
      better: 'less',
      how: 'At that tilt, half charge.',
      source: LEVEL,
    },
    {
      id: 'gust-jolt',
      label: `jolt of a sharp gust of ${gust}`,
      sheet: 'wind',
      quantity: 'acceleration',
      better: 'less',
      how: 'Forces of the new flow less those of the old, over the mass, the craft leaning and its rotors turning as the wind asks; three standard deviations along and up at once. Flow along the discs and the updraught both add to the lift of the rotors. Flown by the simulation it rises about a tenth less far in 0.3 s, as it goes with the updraught.',
      source: GUSTS,
    },
    {
      id: 'gust-push',
      label: 'pushed by it before it answers',
      sheet: 'wind',
      quantity: 'length',
      better: 'less',
      how: 'Half the acceleration x the square of 0.3 s of reaction, its lean kept: flown, up to a tenth less, as it eases; micros are tipped back by their hub moments and pushed up to half as far again.',
      source: `${GUSTS}; reaction time: common practice, no source`,
    },
    {
      id: 'hold-sway',
      label: `sway holding place in ${blows}`,
      sheet: 'wind',
      quantity: 'length',
      better: 'less',
      how: 'Root mean square along the wind, plain place hold in Dryden turbulence: transfer function over the spectrum.',
      source: 'MIL-F-8785C; Hoblit 1988; docs/method/reserve.md',
    },
    {
      id: 'hold-speed',
      label: 'speed of that sway',
      sheet: 'wind',
      quantity: 'speed',
      better: 'less',
      how: 'Root mean square, as the sway.',
      source: 'MIL-F-8785C; Hoblit 1988; docs/method/reserve.md',
    },
    {
      id: 'hold-tilt',
      label: 'tilt that works against it',
      sheet: 'wind',
      quantity: 'angle',
      better: 'less',
      how: 'Root mean square about the mean tilt, as the sway.',
      source: 'MIL-F-8785C; Hoblit 1988; docs/method/reserve.md',
    },
  ];
}

import { type ForwardCraft, forwardTrim } from '../../flight/forward/forwardTrim.ts';
import { gustJolt } from '../../flight/gustJolt.ts';
import { holdInGusts, plainHold } from '../../flight/gustResponse.ts';
import { pointForThrusts } from '../../flight/operatingPoint.ts';
import { neutralLevers } from '../../flight/types.ts';
import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { dayGust } from '../parts/wind/windFigures.ts';
import { CHARGE, type CraftInAir } from './craftInAir.ts';
import type { FlightTrace, FlownFigure } from './types.ts';

/** What a hover shows, beside the coupled operating point of the same thrusts. */
export function hoverFigures({ flight, agility }: CraftInAir, trace: FlightTrace): readonly FlownFigure[] {
  const { hover } = agility.onBus;
  const point = pointForThrusts(flight.model, neutralLevers, [...hover.thrusts], { charge: CHARGE });
  const told = point.ok ? point.value : undefined;
  const throttles = told?.stations.map(({ throttle }) => throttle) ?? [];
  const closed = (value: number | undefined) => (value === undefined ? {} : { closedForm: value });
  return [
    {
      id: 'hover-throttle',
      label: 'mean throttle',
      quantity: 'share',
      ...closed(told && meanOf(throttles)),
      simulated: meanOf(trace.throttle.map(meanOf)),
      how: 'Trim about the true centre of gravity against the same thrusts found by the controller.',
    },
    {
      id: 'hover-current',
      label: 'pack current',
      quantity: 'current',
      ...closed(told?.packCurrent),
      simulated: meanOf(trace.packCurrent),
      how: 'The simulation takes winding resistance and idle current at the speed of the hover.',
    },
    {
      id: 'pack-voltage',
      label: 'pack voltage',
      quantity: 'voltage',
      ...closed(told?.packVoltage),
      simulated: meanOf(trace.packVoltage),
      how: 'Half charge, settled.',
    },
    {
      id: 'hover-drift',
      label: 'largest drift',
      quantity: 'length',
      closedForm: 0,
      simulated: largest(trace.place[0].map((_, i) => Math.hypot(...trace.place.map((of) => of[i] ?? 0)))),
      how: 'A trim that is right leaves it where it is.',
    },
  ];
}

/** What a sharp gust shows, beside the jolt's closed form. */
export function gustFigures(craft: CraftInAir, wind: number, trace: FlightTrace): readonly FlownFigure[] {
  const gust = dayGust(wind);
  const trim = forwardTrim(craft.forward, wind);
  const told = trim.ok ? gustJolt(craft.forward, trim.value, gust) : trim;
  const asleep = trace.time.findIndex((time) => time >= gust.reactionTime);
  const back = [...trace.place[0]].map(Math.abs);
  return [
    {
      id: 'gust-push',
      label: `pushed in the first ${gust.reactionTime} s`,
      quantity: 'length',
      ...(told.ok ? { closedForm: told.value.drift } : {}),
      simulated: Math.abs(trace.place[0][asleep] ?? 0),
      how: told.ok
        ? "The closed form keeps the first moment's push. The simulation eases as it drifts, up to a tenth less; hub moments tip micros back by up to three degrees, which pushes them up to half as far again."
        : `No closed form: ${told.reason}.`,
    },
    {
      id: 'gust-rise',
      label: `thrown up in the first ${gust.reactionTime} s`,
      quantity: 'length',
      ...(told.ok ? { closedForm: 0.5 * told.value.heave * gust.reactionTime ** 2 } : {}),
      simulated: -(trace.place[2][asleep] ?? 0),
      how: told.ok
        ? "The closed form keeps the first moment's lift; the simulation's is less as it rises with the updraught, a tenth."
        : `No closed form: ${told.reason}.`,
    },
    {
      id: 'gust-farthest',
      label: 'farthest from its place',
      quantity: 'length',
      simulated: largest(back),
      how: 'With a plain place hold that answers after that.',
    },
    {
      id: 'gust-tilt',
      label: 'most pitch on the way',
      quantity: 'angle',
      simulated: largest(trace.pitch.map(Math.abs)),
      how: 'Nose down into the wind.',
    },
    {
      id: 'gust-throttle',
      label: "hardest motor's throttle",
      quantity: 'share',
      simulated: largest(trace.throttle.map(largest)),
      how: 'At 100 % it would have nothing left to steer with.',
    },
  ];
}

/** What a full roll shows, beside the agility of the same craft. @param mixed the same by the plain mixer */
export function bankFigures(
  { agility }: CraftInAir,
  trace: FlightTrace,
  mixed?: FlightTrace,
): readonly FlownFigure[] {
  const { time, rate } = passing(trace);
  const told = agility.bank.roll;
  const byMixer = mixed === undefined ? Number.NaN : passing(mixed).time;
  const figures: FlownFigure[] = [
    {
      id: 'lowest-pack-voltage',
      label: 'lowest pack voltage on the way',
      quantity: 'voltage',
      simulated: -largest(trace.packVoltage.map((each) => -each)),
      how: 'All motors on one sagging pack.',
    },
  ];
  if (!Number.isFinite(time)) return figures;
  return [
    {
      id: 'roll-bank-time',
      label: 'until it passes 90 degrees',
      quantity: 'time',
      closedForm: told.toPass,
      simulated: time,
      how: "The closed form lags all moments alike by the slowest motor's hover lag and leaves out that the rotors damp the roll.",
    },
    {
      id: 'roll-rate-passing',
      label: 'turn rate then',
      quantity: 'angularSpeed',
      closedForm: told.rateWhenPassing,
      simulated: rate,
      how: 'As the time.',
    },
    ...(Number.isFinite(byMixer)
      ? [
          {
            id: 'roll-bank-time-mixed',
            label: 'until 90 degrees by a plain mixer',
            quantity: 'time',
            simulated: byMixer,
            how: 'Common flight controllers share a moment by the levers of the motors, so that the inner ones of six or eight give less than they could.',
          } as const,
        ]
      : []),
    ...figures,
  ];
}

/** When the roll passes 90 degrees and how fast it turns then; no numbers when it does not. */
function passing({ roll, time }: FlightTrace): { readonly time: number; readonly rate: number } {
  const passes = roll.findIndex((each) => each >= Math.PI / 2);
  const [before, after] = [roll[passes - 1] ?? 0, roll[passes] ?? Number.NaN];
  const [from, to] = [time[passes - 1] ?? 0, time[passes] ?? Number.NaN];
  const rate = (after - before) / (to - from);
  return { time: from + (Math.PI / 2 - before) / rate, rate };
}

/** What a dash shows, beside steady level flight at the tilt it settles at [rad] and the speed aimed for [m/s]. */
export function dashFigures(
  { forward }: CraftInAir,
  speed: number,
  tilt: number,
  trace: FlightTrace,
): readonly FlownFigure[] {
  const settled = -meanOf(trace.pitch.slice(-Math.ceil(trace.pitch.length / 10)));
  const told = speedAtTilt(forward, settled, 1.5 * speed);
  const most = largest(trace.speed);
  const nearly = trace.time[trace.speed.findIndex((each) => each >= 0.9 * most)] ?? 0;
  return [
    {
      id: 'dash-tilt',
      label: 'tilt at the end',
      quantity: 'angle',
      closedForm: tilt,
      simulated: settled,
      how: 'The plain tilt loop has no integral: the moments of the drag lean it a little off the tilt it is asked for. Too fast, it asks for less.',
    },
    {
      id: 'dash-speed',
      label: 'speed at the end',
      quantity: 'speed',
      ...(told === undefined ? {} : { closedForm: told }),
      simulated: trace.speed.at(-1) ?? 0,
      how: "The closed form is the steady level flight at the simulated tilt, rotors apart from each other's wakes as in the simulation; rings keep there what they give in hover, and drag by the air they turn.",
    },
    {
      id: 'dash-time',
      label: 'nine tenths of the most after',
      quantity: 'time',
      simulated: nearly,
      how: 'Stick forward in one and a half seconds.',
    },
    {
      id: 'dash-height',
      label: 'height lost or gained, at most',
      quantity: 'length',
      simulated: largest(trace.place[2].map(Math.abs)),
      how: 'Height is held by throttle alone, with no integral.',
    },
  ];
}

/** Speed of the level flight that leans so far [m/s]; undefined where none does. */
function speedAtTilt(forward: ForwardCraft, tilt: number, most: number): number | undefined {
  const excess = (speed: number): number => {
    const trim = forwardTrim(forward, speed);
    return trim.ok ? trim.value.tilt - tilt : Number.NaN;
  };
  const found = bracketedRoot(excess, 1, most, 1e-3);
  return found.ok ? found.value : undefined;
}

/** What rough air shows, beside the sway that the gusts' spectrum gives. */
export function roughFigures(craft: CraftInAir, wind: number, trace: FlightTrace): readonly FlownFigure[] {
  const { turbulence } = dayGust(wind);
  const hold = holdInGusts({ ...craft.gust, wind, turbulence, controller: plainHold });
  const along = hold.ok ? hold.value.longitudinal : undefined;
  const figure = (
    id: string,
    label: string,
    quantity: FlownFigure['quantity'],
    closedForm: number | undefined,
    simulated: number,
    how: string,
  ): FlownFigure => ({
    id,
    label,
    quantity,
    ...(closedForm === undefined ? {} : { closedForm }),
    simulated,
    how,
  });
  const SAMPLING = 'Root mean square; a minute of rough air scatters by some 20 % from seed to seed.';
  const north = trace.place[0];
  const step = (trace.time[1] ?? 1) - (trace.time[0] ?? 0);
  const rates = north.slice(1).map((each, i) => (each - (north[i] ?? 0)) / step);
  return [
    figure('hold-sway', 'sway along the wind', 'length', along?.place, scatter(north), SAMPLING),
    figure('hold-speed', 'speed of that sway', 'speed', along?.speed, scatter(rates), SAMPLING),
    figure(
      'hold-tilt',
      'pitch that works against it',
      'angle',
      along?.answer,
      scatter(trace.pitch),
      SAMPLING,
    ),
    figure(
      'rough-throttle',
      "hardest motor's throttle",
      'share',
      undefined,
      largest(trace.throttle.map(largest)),
      'At 100 % it would have nothing left to steer with.',
    ),
  ];
}

const meanOf = (of: readonly number[]): number =>
  of.reduce((sum, each) => sum + each, 0) / Math.max(1, of.length);

const largest = (of: readonly number[]): number =>
  of.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY);

/** Root mean square about the mean. */
function scatter(of: readonly number[]): number {
  const middle = meanOf(of);
  return Math.sqrt(meanOf(of.map((each) => (each - middle) ** 2)));
}

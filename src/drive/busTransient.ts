import { type BrakedMotors, type BrakingPoint, brakeOnBus, type DutyDrop } from './busBraking.ts';
import { type Bus, busModel } from './busCircuit.ts';
import { cutOnBus } from './busCut.ts';
import { busRinging, type Ringing } from './busRinging.ts';
import { busRipple, widestRipple } from './busRipple.ts';

export interface BusTransientRequest extends Bus {
  /** At full throttle on that pack. */
  readonly motors: readonly BrakedMotors[];
  readonly drop: DutyDrop;
  /** At which the controllers chop [Hz], > 0. */
  readonly pulseFrequency: number;
}

/** What the throttle's drop and the chopping do to a bus. */
export interface BusTransient {
  /** Highest bus voltage [V], and which of the two reaches it; the pack's own where neither lifts the bus over it. */
  readonly peak: number;
  readonly governs: 'cut' | 'braking';
  /** After that began [s]; absent where the bus only comes back to the pack's voltage. */
  readonly time?: number;
  /** Full throttle that stops drawing at once: a controller that lets its motor coast. */
  readonly cut: {
    readonly peak: number;
    readonly time?: number;
    /** [A] */
    readonly current: number;
  };
  /** Full throttle that drops to the lowest duty under controllers that brake, at its highest moment. */
  readonly braking: {
    readonly peak: number;
    readonly time: number;
    readonly duty: number;
    /** Mean over a pulse then, and what the pulses add on top [V]. */
    readonly mean: number;
    readonly ripple: number;
    /** Most that comes back to the bus in the whole drop, mean over a pulse, and in the most braked motor [A]. */
    readonly returned: number;
    readonly motorCurrent: number;
  };
  /** Full throttle's motor current chopped at the worst duty, as when it spins up: from peak to peak. */
  readonly ripple: { readonly swing: number; readonly duty: number };
  readonly ringing: Ringing;
}

/**
 * Peak volts of a bus with every intermediate: the cut of full throttle (`cutOnBus`), braking into the pack (`brakeOnBus`) and the
 * ripple of the chopped current (`busRipple`). Electronics draw nothing in it. The nanoseconds of a switch's own loop on the board
 * are not in it.
 *
 * @throws RangeError as `busModel`, `busRipple` and `brakeOnBus` do
 */
export function busTransient(request: BusTransientRequest): BusTransient {
  const { packVoltage, motors, drop, pulseFrequency } = request;
  const model = busModel(request);
  const ripple = busRipple(model, pulseFrequency);
  const { points } = brakeOnBus(model, request, motors, drop, ripple);
  const current = Math.max(0, -(points[0]?.returned ?? 0));
  const cut = cutOnBus(model, current);
  const highest = points.reduce((most, point) => (point.crest > most.crest ? point : most));
  const most = (of: (point: BrakingPoint) => number) =>
    points.reduce((least, point) => Math.max(least, of(point)), 0);
  const widest = widestRipple(ripple);
  const cutPeak = packVoltage + cut.rise;
  const braking = highest.crest > cut.rise;
  const brakingPeak = packVoltage + Math.max(0, highest.crest);
  const time = braking ? highest.time : cut.time;
  return {
    peak: Math.max(cutPeak, brakingPeak),
    governs: braking ? 'braking' : 'cut',
    ...(time === undefined ? {} : { time }),
    cut: { peak: cutPeak, ...(cut.time === undefined ? {} : { time: cut.time }), current },
    braking: {
      peak: brakingPeak,
      time: highest.time,
      duty: highest.duty,
      mean: packVoltage + highest.rise,
      ripple: highest.crest - highest.rise,
      returned: most(({ returned }) => returned),
      motorCurrent: most(({ motorCurrent }) => motorCurrent),
    },
    ripple: { swing: widest.swing * current, duty: widest.duty },
    ringing: busRinging(request, pulseFrequency),
  };
}

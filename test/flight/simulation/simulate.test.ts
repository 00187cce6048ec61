import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { drydenLowAltitude } from '../../../src/air/dryden.ts';
import { drydenTrace } from '../../../src/air/drydenTrace.ts';
import { axialThrustSlope } from '../../../src/flight/gustCraft.ts';
import { holdInGusts, plainHold } from '../../../src/flight/gustResponse.ts';
import { spinTime } from '../../../src/flight/reserve/spinUp.ts';
import { timeToBank } from '../../../src/flight/reserve/timeToBank.ts';
import { makeMixer } from '../../../src/flight/simulation/mixer.ts';
import { prepareCraft } from '../../../src/flight/simulation/prepare.ts';
import { hoverState, simulate } from '../../../src/flight/simulation/simulate.ts';
import {
  type Command,
  plainGains,
  type RotorDrive,
  type SimulationModel,
} from '../../../src/flight/simulation/types.ts';
import { windFromTrace } from '../../../src/flight/simulation/windFromTrace.ts';
import { flyer, plainRotor } from './crafts.ts';

const fly = (
  request: Partial<Parameters<typeof simulate>[0]> & Pick<Parameters<typeof simulate>[0], 'model' | 'pilot'>,
) => {
  const outcome = simulate({ gains: plainGains, timeStep: 1e-3, duration: 1, sampleEvery: 1, ...request });
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

const mixerOf = (model: SimulationModel) => {
  const craft = prepareCraft(model);
  if (!craft.ok) throw new Error(craft.reason);
  const mixer = makeMixer(craft.value);
  if (!mixer.ok) throw new Error(mixer.reason);
  return mixer.value;
};

const rms = (x: Float64Array, from: number): number => {
  let sum = 0;
  for (let i = from; i < x.length; i++) sum += x[i]! ** 2;
  return Math.sqrt(sum / (x.length - from));
};

describe('hover', () => {
  it('stays where it is with the trim thrusts alone, wherever the weight sits', () => {
    for (const centreOfGravity of [
      [0, 0, 0],
      [0.012, -0.006, 0.01],
    ] as const) {
      const model = { ...flyer({ rotor: plainRotor }), centreOfGravity };
      const { hoverThrust } = mixerOf(model);
      expect(hoverThrust.reduce((a, b) => a + b, 0)).toBeCloseTo(0.7 * 9.80665, 9);
      const traces = fly({ model, pilot: () => ({ kind: 'thrusts', thrusts: hoverThrust }) });
      for (const i of [0, 1, 2] as const) {
        expect(Math.abs(traces.place[i].at(-1)!)).toBeLessThan(1e-6);
        expect(Math.abs(traces.attitude[i].at(-1)!)).toBeLessThan(1e-6);
      }
    }
  });

  it('is found again from a knock, by the plain controller', () => {
    const model = flyer({ rotor: plainRotor });
    const start = hoverState(mixerOf(model), [1, -1, 0.5], [0.6, -0.5, 0.4]);
    const traces = fly({
      model,
      start,
      timeStep: 4e-3,
      duration: 40,
      pilot: () => ({ kind: 'place', place: [0, 0, -2], heading: 0 }),
    });
    expect(traces.place[0].at(-1)!).toBeCloseTo(0, 3);
    expect(traces.place[2].at(-1)!).toBeCloseTo(-2, 3);
    expect(traces.attitude[2].at(-1)!).toBeCloseTo(0, 3);
  });

  it('flies six, eight and coaxial craft', () => {
    for (const layout of [
      { kind: 'hexa X', diagonal: 0.3 },
      { kind: 'octo', diagonal: 0.4 },
      { kind: 'X8 coaxial', width: 0.2, length: 0.2, discSpacing: 0.05 },
    ] as const) {
      const traces = fly({
        model: flyer({ layout, rotor: plainRotor }),
        duration: 10,
        pilot: () => ({ kind: 'place', place: [1, 1, -1], heading: 0.5 }),
      });
      expect(traces.place[0].at(-1)!).toBeCloseTo(1, 2);
      expect(traces.attitude[2].at(-1)!).toBeCloseTo(0.5, 2);
    }
  });

  it('says why not when a motor would have to pull down, or rotors cannot be mixed', () => {
    const pilot = (): Command => ({ kind: 'moments', moments: [0, 0, 0], lift: 7 });
    const request = { gains: plainGains, pilot, timeStep: 1e-3, duration: 0.01, sampleEvery: 1 };
    const tipped = simulate({ ...request, model: { ...flyer(), centreOfGravity: [0.3, 0, 0] } });
    expect(tipped.ok).toBe(false);
    const three = simulate({ ...request, model: { ...flyer(), rotors: flyer().rotors.slice(0, 3) } });
    expect(three.ok).toBe(false);
    expect(() => simulate({ ...request, model: flyer(), timeStep: 1 })).toThrow(/timeStep/);
    expect(() => simulate({ ...request, model: flyer(), sampleEvery: 0.5 })).toThrow(/sampleEvery/);
  });
});

describe('time to bank', () => {
  /** Steps until the roll passes the angle, open loop at the given moment. */
  function simulated(model: SimulationModel, moment: number, angle: number): number {
    const lift = model.mass * model.gravity;
    const pilot = (): Command => ({ kind: 'moments', moments: [moment, 0, 0], lift });
    const traces = fly({ model, pilot, timeStep: 2e-4, duration: 2 });
    const roll = traces.attitude[0];
    const after = roll.findIndex((value) => value >= angle);
    const [a, b] = [roll[after - 1]!, roll[after]!];
    return traces.time[after - 1]! + ((angle - a) / (b - a)) * 2e-4;
  }

  const closed = (acceleration: number, angle: number): number => {
    const outcome = timeToBank({ angle, acceleration, deceleration: acceleration, lag: 0.03 });
    if (!outcome.ok) throw new Error(outcome.reason);
    return outcome.value.toPass;
  };

  it('of a gentle command agrees to 0.5 % with the closed form', () => {
    // A small share of hover speed: thrust follows speed linearly, and the lag of speed is the lag of thrust.
    const moment = 0.02;
    expect(Math.abs(simulated(flyer(), moment, 1.2) / closed(moment / 0.003, 1.2) - 1)).toBeLessThan(0.005);
  });

  it('of a full command agrees to 5 %, thrust going with the square of speed', () => {
    const { hoverThrust, lowestThrust } = mixerOf(flyer());
    const moment = 4 * (0.11 / Math.SQRT2) * (hoverThrust[0]! - lowestThrust[0]!);
    const ratio = simulated(flyer(), moment, Math.PI / 2 - 0.01) / closed(moment / 0.003, Math.PI / 2 - 0.01);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.05);
  });

  it('is longer with rotors that feel the roll, which the closed form leaves out', () => {
    const { hoverThrust, lowestThrust } = mixerOf(flyer());
    const moment = 4 * (0.11 / Math.SQRT2) * (hoverThrust[0]! - lowestThrust[0]!);
    const numb = simulated(flyer(), moment, 1.5);
    const damped = simulated(flyer({ rotor: plainRotor }), moment, 1.5);
    expect(damped / numb).toBeGreaterThan(1);
    expect(damped / numb).toBeLessThan(1.25);
  });
});

describe('gusts', () => {
  it('a sharp one from below lifts as the closed form to 0.5 %', () => {
    const model = flyer({ rotor: plainRotor });
    const { hoverThrust, hoverSpeed } = mixerOf(model);
    const traces = fly({
      model,
      pilot: () => ({ kind: 'thrusts', thrusts: hoverThrust }),
      wind: (_, out) => {
        out[2] = -2;
      },
      timeStep: 1e-4,
      duration: 1e-3,
    });
    const slope = 0.95 * 4 * axialThrustSlope(plainRotor, hoverSpeed[0]!);
    const heave = (slope * 2 + 0.5 * 1.225 * 0.02 * 2 ** 2) / 0.7;
    expect(Math.abs(-traces.velocity[2].at(-1)! / 1e-3 / heave - 1)).toBeLessThan(5e-3);
  });

  it('a sharp one along the wind pushes as the closed form to 0.1 %', () => {
    const model = flyer();
    const { hoverThrust, hoverSpeed } = mixerOf(model);
    const traces = fly({
      model,
      pilot: () => ({ kind: 'thrusts', thrusts: hoverThrust }),
      wind: (_, out) => {
        out[0] = -6;
      },
      timeStep: 1e-4,
      duration: 1e-3,
    });
    const rotorDragSlope = 0.011 * 4 * 1.2e-6 * hoverSpeed[0]! ** 2;
    const push = (rotorDragSlope * 6 + 0.5 * 1.225 * 0.012 * 6 ** 2) / 0.7;
    expect(Math.abs(-traces.velocity[0].at(-1)! / 1e-3 / push - 1)).toBeLessThan(1e-3);
  });

  it('Dryden turbulence sways it as the spectrum says', () => {
    // 20 min of flight, some 250 scale lengths along the wind: a variance is good to sqrt(2/250) = 9 %, the rms to 4.5 %; three of
    // these allowed.
    const wind = 6;
    const turbulence = drydenLowAltitude(8, wind);
    const step = 0.004;
    const duration = 1200;
    const gust = drydenTrace(
      { turbulence, airspeed: wind, timeStep: step / 2, count: 2 * Math.round(duration / step) + 1 },
      xoroshiro128plus(2),
    );
    const drive: RotorDrive = { kind: 'lag', timeConstant: 0.005, lowestSpeed: 300, highestSpeed: 3200 };
    const model = { ...flyer({ drive }), dragArea: [0.012, 0.012, 0.02] as const };
    const traces = fly({
      model,
      gains: { ...plainGains, tiltFrequency: plainHold.tiltFrequency, tiltDamping: plainHold.tiltDamping },
      pilot: () => ({ kind: 'place', place: [0, 0, 0], heading: 0 }),
      wind: windFromTrace(wind, 0, gust, step / 2),
      timeStep: step,
      duration,
      sampleEvery: 5,
    });
    const expected = holdInGusts({
      mass: 0.7,
      gravity: 9.80665,
      airDensity: 1.225,
      dragArea: 0.012,
      rotorDragSlope: (0.011 * 0.7 * 9.80665) / 0.95,
      axialThrustSlope: 0,
      wind,
      turbulence,
      controller: plainHold,
    });
    if (!expected.ok) throw new Error(expected.reason);
    const settled = 1000;
    const speed = rms(traces.velocity[0], settled);
    expect(Math.abs(speed / expected.value.longitudinal.speed - 1)).toBeLessThan(0.14);
    const mean =
      traces.attitude[1].slice(settled).reduce((a, b) => a + b, 0) / (traces.attitude[1].length - settled);
    const tilt = rms(
      traces.attitude[1].map((v) => v - mean),
      settled,
    );
    expect(Math.abs(tilt / expected.value.longitudinal.answer - 1)).toBeLessThan(0.14);
  });
});

describe('motor drive', () => {
  const drive: RotorDrive = {
    kind: 'motor',
    speedConstant: (1850 * Math.PI) / 30,
    resistance: 0.09,
    noLoadTorque: 0.004,
    lowestVoltage: 0.8,
    highestVoltage: 15,
  };

  it('spins up in the time of the closed integral', () => {
    const model = flyer({ drive });
    const { hoverSpeed } = mixerOf(model);
    const traces = fly({
      model,
      pilot: () => ({ kind: 'thrusts', thrusts: [30, 30, 30, 30] }),
      timeStep: 1e-4,
      duration: 0.2,
    });
    const speeds = traces.rotorSpeed[0]!;
    const target = 2000;
    const after = speeds.findIndex((w) => w >= target);
    const [a, b] = [speeds[after - 1]!, speeds[after]!];
    const time = traces.time[after - 1]! + ((target - a) / (b - a)) * 1e-4;
    const closed = spinTime(
      {
        rotatingInertia: 6e-6,
        speedConstant: drive.speedConstant,
        resistance: 0.09,
        noLoadTorque: 0.004,
        torqueFactor: 1.6e-8,
      },
      hoverSpeed[0]!,
      target,
      15,
    );
    if (!closed.ok) throw new Error(closed.reason);
    expect(time / closed.value).toBeCloseTo(1, 4);
  });

  it('cannot be asked for more thrust than its volts give', () => {
    const { highestThrust } = mixerOf(flyer({ drive }));
    const traces = fly({
      model: flyer({ drive }),
      pilot: () => ({ kind: 'thrusts', thrusts: [30, 30, 30, 30] }),
      duration: 1,
    });
    const w = traces.rotorSpeed[0]!.at(-1)!;
    expect((0.95 * 1.2e-6 * w * w) / highestThrust[0]!).toBeCloseTo(1, 6);
  });
});

import { describe, expect, it } from 'vitest';
import type { MassItem } from '../../../src/airframe/types.ts';
import { type BarDrag, bodyDragOf } from '../../../src/flight/forward/bodyDrag.ts';
import { glauertRotor } from '../../../src/flight/forward/edgewise.ts';
import { forwardCraft } from '../../../src/flight/forward/forwardPoint.ts';
import { forwardTrim } from '../../../src/flight/forward/forwardTrim.ts';
import { topSpeed } from '../../../src/flight/forward/speeds.ts';
import { quaternionOf } from '../../../src/flight/simulation/attitude.ts';
import { writeDerivative } from '../../../src/flight/simulation/derivative.ts';
import { simulationModel } from '../../../src/flight/simulation/fromFlight.ts';
import { obliqueRead } from '../../../src/flight/simulation/obliqueRead.ts';
import { prepareCraft } from '../../../src/flight/simulation/prepare.ts';
import { simulate } from '../../../src/flight/simulation/simulate.ts';
import {
  at,
  plainGains,
  type SimulationModel,
  type SimulationState,
} from '../../../src/flight/simulation/types.ts';
import { emptyObliqueLoads, type FlightModel, neutralLevers } from '../../../src/flight/types.ts';
import { exampleQuad, idealRotor } from '../exampleModel.ts';
import { realPropeller } from '../realPropeller.ts';

const inertia = [
  [0.003, 0, 0],
  [0, 0.0035, 0],
  [0, 0, 0.006],
] as const;

/** Arms of a true X, 12 by 5 mm. */
const fourArms = [45, 135, 225, 315].map(
  (degrees): MassItem => ({
    name: 'arm',
    part: 'frame',
    primitive: { kind: 'taperedBar', length: 0.1, rootWidth: 0.012, tipWidth: 0.012, thickness: 0.005 },
    place: [0, 0, 0],
    orientation: { yaw: (degrees * Math.PI) / 180 },
    amount: { mass: 0.01 },
  }),
);

/** A level flight (rotors apart from each other's wakes, as the simulation has them) trimmed by `forward/`, and the same aircraft for the simulation with rotors of a given speed. */
function levelFlight(
  frontArea: number,
  topArea: number,
  speed: number | 'top',
  bars: readonly BarDrag[] = [],
  quad: FlightModel = exampleQuad(),
  climb = 0,
) {
  const drag = {
    front: { area: frontArea, coefficient: 1 },
    side: { area: frontArea, coefficient: 1 },
    top: { area: topArea, coefficient: 1 },
  };
  const forward = forwardCraft(quad, neutralLevers, drag, { bars, wakes: 'left out' });
  if (!forward.ok) throw new Error(forward.reason);
  const found = speed === 'top' ? topSpeed(forward.value, 0.8) : forwardTrim(forward.value, speed, climb);
  if (!found.ok) throw new Error(found.reason);
  const trim = 'at' in found.value ? found.value.at : found.value;
  const body = {
    inertia,
    dragArea: [frontArea, frontArea, topArea],
    inPlaneDragPerThrust: 0,
    bars,
  } as const;
  const motors = simulationModel(quad, neutralLevers, forward.value.trim, body, 25, glauertRotor);
  const drive = { kind: 'lag', timeConstant: 0.004, lowestSpeed: 100, highestSpeed: 6000 } as const;
  const model: SimulationModel = {
    ...motors,
    rotors: motors.rotors.map((rotor) => ({ ...rotor, drive })),
  };
  const speeds = trim.rotors.map((rotor) => rotor.angularSpeed);
  const state = (share: number): SimulationState =>
    Float64Array.from([
      0,
      0,
      0,
      share * trim.speed,
      0,
      -share * climb,
      ...quaternionOf([0, -trim.tilt, 0]),
      0,
      0,
      0,
      ...speeds,
    ]);
  return { trim, model, state, speeds };
}

describe('level flight against the equations of motion', () => {
  /** Accelerations of place [m/s2] and turning [rad/s2] at the trim. */
  function unrest({ model, state, speeds }: ReturnType<typeof levelFlight>): Float64Array {
    const craft = prepareCraft(model);
    if (!craft.ok) throw new Error(craft.reason);
    const out = new Float64Array(17);
    writeDerivative(craft.value, state(1), Float64Array.from(speeds), new Float64Array(3), out);
    return out;
  }

  it('the trim is a steady state of them, with and without body and arms, up to top speed', () => {
    const arms = bodyDragOf(fourArms).bars;
    for (const [body, bars] of [
      [1e-9, []],
      [0.011, []],
      [0.006, arms],
    ] as const) {
      for (const speed of [5, 12, 20, 'top'] as const) {
        const out = unrest(levelFlight(body, 2 * body, speed, bars));
        for (const i of [3, 4, 5]) expect(Math.abs(out[i]!)).toBeLessThan(1e-5 * 9.8);
        for (const i of [10, 11, 12]) expect(Math.abs(out[i]!)).toBeLessThan(1e-2);
      }
    }
  });

  it('so is a climb, straight up and slanting', () => {
    const arms = bodyDragOf(fourArms).bars;
    for (const [speed, climb] of [
      [0, 6],
      [1, 9],
      [8, 4],
      [15, 8],
    ] as const) {
      const still = exampleQuad({ centreOfGravity: [0.004, 0, 0.01] });
      const stations = still.stations.map((station) => ({ ...station, ...realPropeller }));
      const out = unrest(levelFlight(0.006, 0.015, speed, arms, { ...still, stations }, climb));
      for (const i of [3, 5]) expect(Math.abs(out[i]!)).toBeLessThan(1e-5 * 9.8);
      for (const i of [10, 11, 12]) expect(Math.abs(out[i]!)).toBeLessThan(1e-2);
    }
  });

  it('so is that of rotors with hub moments and side forces, in the middle and off it', () => {
    for (const [x, y] of [
      [0, 0],
      [0.008, 0.004],
    ] as const) {
      const still = exampleQuad({ centreOfGravity: [x, y, 0.01] });
      const stations = still.stations.map((station) => ({ ...station, ...realPropeller }));
      for (const speed of [5, 12, 20, 'top'] as const) {
        const flying = levelFlight(0.011, 0.022, speed, [], { ...still, stations });
        const out = unrest(flying);
        for (const rotor of flying.trim.rotors) expect(rotor.momentAdvancingUp).toBeGreaterThan(1e-3);
        // Unequal side forces of a craft out of balance would want a hair of bank.
        for (const i of [3, 5]) expect(Math.abs(out[i]!)).toBeLessThan(1e-5 * 9.8);
        expect(Math.abs(out[4]!)).toBeLessThan(x === 0 ? 1e-5 : 0.05 * 9.8);
        for (const i of [10, 11, 12]) expect(Math.abs(out[i]!)).toBeLessThan(1e-2);
      }
    }
  });

  /** Tilt held and height held, let go at 97 % of the trim's speed: the speed at which it settles over the trim's. */
  function settles(speed: number | 'top'): number {
    const { model, trim, state, speeds } = levelFlight(0.011, 0.02, speed);
    const loads = { thrust: 0, torque: 0 };
    const lift = speeds.reduce((sum, w, i) => {
      const rotor = model.rotors[i]!;
      rotor.rotor(w, 0, loads);
      return sum + loads.thrust * (1 - rotor.downloadShare);
    }, 0);
    const traces = simulate({
      model,
      // Stiff in tilt: without an integral the moments of drag lean it by moment / (I f^2).
      gains: { ...plainGains, tiltFrequency: 50, tiltDamping: 1 },
      start: state(0.97),
      pilot: (_, s) => ({
        kind: 'attitude',
        attitude: [0, -trim.tilt, 0],
        lift: lift + 0.7 * (3 * s[at.velocity + 2]! + 2 * s[at.place + 2]!),
      }),
      timeStep: 0.005,
      duration: 5,
      sampleEvery: 100,
    });
    if (!traces.ok) throw new Error(traces.reason);
    expect(Math.abs(traces.value.velocity[2].at(-1)!) / trim.speed).toBeLessThan(0.005);
    return traces.value.velocity[0].at(-1)! / trim.speed;
  }

  it('top speed comes out the same, to 2 %', () => {
    expect(Math.abs(settles('top') - 1)).toBeLessThan(0.02);
  });
});

describe('a rotor asked for its thrust at a speed', () => {
  const rotor = idealRotor(0.1295, 0.09);
  const disc = { diameter: 0.1295, airDensity: 1.225 };
  const read = obliqueRead(glauertRotor, rotor, disc);

  it('undoes the rotor asked for its speed at a thrust', () => {
    const out = emptyObliqueLoads();
    for (const [axialSpeed, edgewiseSpeed] of [
      [0, 4],
      [3, 12],
      [8, 15],
    ] as const) {
      const request = { ...disc, thrust: 3, axialSpeed, edgewiseSpeed, thrustScale: 1, torqueScale: 1 };
      const state = glauertRotor(rotor, request);
      if (!state.ok) throw new Error(state.reason);
      read(state.value.angularSpeed, axialSpeed, edgewiseSpeed, out);
      expect(out.thrust).toBeCloseTo(3, 8);
      expect(out.torque).toBeCloseTo(state.value.torque, 10);
      expect(out.inPlaneForce).toBeCloseTo(state.value.inPlaneForce, 10);
    }
  });

  it('is the axial rotor with no edgewise speed, and steady through level', () => {
    const out = emptyObliqueLoads();
    const axial = { thrust: 0, torque: 0 };
    for (const speed of [-2, 0, 4]) {
      read(1500, speed, 0, out);
      rotor(1500, speed, axial);
      expect(out.thrust).toBeCloseTo(axial.thrust, 12);
    }
    read(1500, -1e-6, 8, out);
    const sinking = out.thrust;
    read(1500, 1e-6, 8, out);
    expect(out.thrust).toBeCloseTo(sinking, 5);
  });
});

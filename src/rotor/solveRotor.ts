import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { withUnit } from '../units/formatQuantity.ts';
import { tooFastTip } from './corrections.ts';
import { solveElements } from './elements.ts';
import { type ElementWork, elementWork, setCondition } from './elementWork.ts';
import type { SectionTables } from './sections.ts';
import type { Blade, FlowRegime, RotorCondition, RotorState, RotorStations } from './types.ts';

/** Slow descent as a share of the hover induced velocity: beyond it the rotor sits in its own vortex ring (Johnson 2005, fig. 3, from memory). */
const VORTEX_RING_START = -0.4;
/** Momentum theory is whole again from here: Leishman, Principles of Helicopter Aerodynamics, 2006, eq. 2.100. */
const VORTEX_RING_END = -2;

/**
 * Thrust, torque and everything between, of one rotor in axial flow, by blade-element momentum.
 * Use `readRotorMap` where thousands of answers are needed.
 *
 * @returns words instead of a state in the vortex ring, where a blade brakes harder than momentum theory carries, and beyond
 * tip Mach 0.9
 * @throws RangeError angularSpeed outside (0, 20 000] rad/s, axialSpeed beyond +-200 m/s
 */
export function solveRotor(
  blade: Blade,
  sections: SectionTables,
  condition: RotorCondition,
): Outcome<RotorState> {
  const { angularSpeed, axialSpeed, air } = condition;
  if (!(angularSpeed > 0 && angularSpeed <= 20_000)) {
    throw new RangeError(
      `angularSpeed must be above 0 and at most 20 000 rad/s; found ${angularSpeed} rad/s`,
    );
  }
  if (!(Math.abs(axialSpeed) <= 200)) {
    throw new RangeError(`axialSpeed must be within 200 m/s either way; found ${axialSpeed} m/s`);
  }
  const fast = tooFastTip(Math.hypot((angularSpeed * blade.diameter) / 2, axialSpeed) / air.speedOfSound);
  if (fast !== undefined) return noSolution(fast);
  const work = elementWork(blade, sections);
  setCondition(work, angularSpeed, axialSpeed, air);
  const trouble = solveAxial(work, angularSpeed, axialSpeed, air.density);
  return trouble === undefined ? solved(stateOf(work, blade, condition)) : noSolution(trouble);
}

/** Solves a set condition on the branch that fits it; words of trouble, or nothing when it is solved. */
export function solveAxial(work: ElementWork, omega: number, V: number, density: number): string | undefined {
  if (solveElements(work, omega, V, density, false)) {
    const ratio = descentRatio(work, V, density);
    if (ratio > VORTEX_RING_START) return undefined;
    if (solveElements(work, omega, V, density, true) && descentRatio(work, V, density) < VORTEX_RING_END) {
      return undefined;
    }
    return `descending at ${withUnit((-V).toFixed(1), 'm/s')} puts the rotor in its own vortex ring, where momentum theory has no answer`;
  }
  return `at ${withUnit(V.toFixed(1), 'm/s')} the blade brakes harder than momentum theory carries`;
}

/** Axial speed over hover induced velocity, signed so that negative means air from behind the thrust. */
function descentRatio(work: ElementWork, V: number, density: number): number {
  const T = work.last[0] as number;
  if (V * T >= 0) return 0;
  // A pulling rotor sinks when V < 0; a rotor that pushes back while moving forward only brakes.
  if (T < 0) return 0;
  return V / Math.sqrt(T / (2 * density * Math.PI * work.R * work.R));
}

function stateOf(work: ElementWork, blade: Blade, condition: RotorCondition): RotorState {
  const { angularSpeed, axialSpeed, air } = condition;
  const thrust = work.last[0] as number;
  const torque = work.last[1] as number;
  const n = angularSpeed / (2 * Math.PI);
  const D = blade.diameter;
  const power = torque * angularSpeed;
  const stations = stationsOf(work, angularSpeed, axialSpeed);
  return {
    thrust,
    torque,
    power,
    thrustCoefficient: thrust / (air.density * n ** 2 * D ** 4),
    powerCoefficient: power / (air.density * n ** 3 * D ** 5),
    advanceRatio: axialSpeed / (n * D),
    regime: regimeOf(thrust, axialSpeed),
    tipMach: Math.hypot(angularSpeed * work.R, axialSpeed) / air.speedOfSound,
    reynolds75: nearest75(stations, stations.reynolds),
    stations,
  };
}

function regimeOf(thrust: number, axialSpeed: number): FlowRegime {
  if (axialSpeed === 0) return 'hover';
  if (axialSpeed < 0) return 'descent';
  return thrust >= 0 ? 'climb' : 'windmill';
}

function nearest75(stations: RotorStations, values: Float64Array): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) {
    const here = Math.abs((stations.radiusRatio[i] as number) - 0.75);
    if (here < Math.abs((stations.radiusRatio[best] as number) - 0.75)) best = i;
  }
  return values[best] as number;
}

function stationsOf(work: ElementWork, omega: number, V: number): RotorStations {
  const { phi, W, r } = work;
  return {
    radiusRatio: r.map((radius) => radius / work.R),
    inflowAngle: phi.slice(),
    angleOfAttack: work.theta.map((theta, i) => theta - (phi[i] as number)),
    reynolds: work.reynolds.slice(),
    mach: work.mach.slice(),
    liftCoefficient: work.cl.slice(),
    dragCoefficient: work.cd.slice(),
    lossFactor: work.F.slice(),
    thrustPerSpan: work.dT.slice(),
    torquePerSpan: work.dQ.slice(),
    axialInduced: W.map((speed, i) => speed * Math.sin(phi[i] as number) - V),
    swirlInduced: W.map((speed, i) => omega * (r[i] as number) - speed * Math.cos(phi[i] as number)),
  };
}

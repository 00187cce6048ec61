import { type Outcome, solved } from '../../numerics/outcome.ts';
import { bluffAreas, writeBodyForce } from '../forward/bodyDrag.ts';
import { type ForwardCraft, forwardTrim } from '../forward/forwardTrim.ts';
import { emptyLoad, type Load, loadForThrusts } from '../load.ts';
import type { Leg } from './types.ts';

/** Duration [s] and ground speed [m/s] of a leg. */
export function timing(leg: Leg): { duration: number; groundSpeed: number } {
  switch (leg.kind) {
    case 'hover':
    case 'pull':
    case 'idle':
    case 'full throttle':
      return { duration: positive('duration', leg.duration), groundSpeed: 0 };
    case 'climb':
      return { duration: positive('height', leg.height) / positive('speed', leg.speed), groundSpeed: 0 };
    case 'cruise': {
      const groundSpeed = leg.airspeed - (leg.headwind ?? 0);
      if (!(groundSpeed > 0)) {
        throw new RangeError(
          `a cruise needs an airspeed above its headwind; found ${leg.airspeed} m/s against ${leg.headwind} m/s`,
        );
      }
      return { duration: positive('distance', leg.distance) / groundSpeed, groundSpeed };
    }
  }
}

function positive(name: string, value: number): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above 0; found ${value}`);
  return value;
}

/** Motor loads of a leg; undefined where the throttle is what is given. */
export function loadOfLeg(craft: ForwardCraft, leg: Leg): Outcome<Load | undefined> {
  const { circuit, trim } = craft;
  switch (leg.kind) {
    case 'hover':
      return solved(trim.load);
    case 'cruise': {
      const trimmed = forwardTrim(craft, leg.airspeed);
      return trimmed.ok ? solved(trimmed.value.load) : trimmed;
    }
    case 'climb': {
      const force = new Float64Array(3);
      const density = circuit.airDensity * craft.dragScale;
      writeBodyForce(bluffAreas(craft.drag), craft.bars, 0, 0, -leg.speed, density, force);
      const share = 1 + (force[2] as number) / circuit.weight;
      const load = emptyLoad(circuit.branches.length);
      load.angularSpeed.set(trim.load.angularSpeed);
      return loadForThrusts(
        circuit,
        trim.thrusts.map((thrust) => thrust * share),
        leg.speed,
        load,
      );
    }
    case 'pull': {
      const share = positive('thrustToWeight', leg.thrustToWeight);
      const load = emptyLoad(circuit.branches.length);
      load.angularSpeed.set(trim.load.angularSpeed);
      const pulled = loadForThrusts(
        circuit,
        trim.thrusts.map((thrust) => thrust * share),
        0,
        load,
      );
      // Beyond the propellers is beyond the pack: flown at full throttle.
      return pulled.ok ? pulled : solved(undefined);
    }
    case 'full throttle':
    case 'idle':
      return solved(undefined);
  }
}

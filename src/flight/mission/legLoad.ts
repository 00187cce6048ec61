import { type Outcome, solved } from '../../numerics/outcome.ts';
import { bluffAreas, writeBodyForce } from '../forward/bodyDrag.ts';
import { type ForwardCraft, type ForwardTrim, forwardTrim } from '../forward/forwardTrim.ts';
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

/** What a leg asks of the motors, whatever feeds them. */
export interface LegLoad {
  /** Absent where the throttle is what is given. */
  readonly load?: Load;
  /** Of a cruise. */
  readonly trim?: ForwardTrim;
  /** Straight up [m/s]. */
  readonly climb: number;
}

export function loadOfLeg(craft: ForwardCraft, leg: Leg): Outcome<LegLoad> {
  const { circuit, trim } = craft;
  const lifting = (share: number, climb: number): Outcome<LegLoad> => {
    const load = emptyLoad(circuit.branches.length);
    load.angularSpeed.set(trim.load.angularSpeed);
    const found = loadForThrusts(
      circuit,
      trim.thrusts.map((thrust) => thrust * share),
      climb,
      load,
    );
    return found.ok ? solved({ load, climb }) : found;
  };
  switch (leg.kind) {
    case 'hover':
      return solved({ load: trim.load, climb: 0 });
    case 'cruise': {
      const trimmed = forwardTrim(craft, leg.airspeed);
      return trimmed.ok ? solved({ load: trimmed.value.load, trim: trimmed.value, climb: 0 }) : trimmed;
    }
    case 'climb': {
      const force = new Float64Array(3);
      const density = circuit.airDensity * craft.dragScale;
      writeBodyForce(bluffAreas(craft.drag), craft.bars, 0, 0, -leg.speed, density, force);
      return lifting(1 + (force[2] as number) / circuit.weight, leg.speed);
    }
    case 'pull': {
      const pulled = lifting(positive('thrustToWeight', leg.thrustToWeight), 0);
      // Beyond the propellers is beyond the pack: flown at full throttle.
      return pulled.ok ? pulled : solved({ climb: 0 });
    }
    case 'full throttle':
    case 'idle':
      return solved({ climb: 0 });
  }
}

import { secantRoot } from '../../numerics/secantRoot.ts';
import type { ObliqueRotor } from '../forward/edgewise.ts';
import type { ObliqueRead, RotorRead } from '../types.ts';

/** The disc and the air that an `ObliqueRotor` wants to know. */
export interface ObliqueDisc {
  /** [m] */
  readonly diameter: number;
  /** [kg/m3] */
  readonly airDensity: number;
  /** See `ObliqueRequest`. */
  readonly inPlaneScale?: number;
}

/**
 * Turns a rotor that answers 'which speed for this thrust' into one that answers 'which thrust at this speed', as
 * the equations of motion ask. The rotor is known in oblique flow from above only (axial speed >= 0); sinking, the
 * axial reader's difference from level flight is added. Not a number where it has no answer, so that a run stops and
 * says so.
 *
 * @param rotor thrust and torque as they are, scales worked in
 */
export function obliqueRead(oblique: ObliqueRotor, rotor: RotorRead, disc: ObliqueDisc): ObliqueRead {
  const loads = { thrust: 0, torque: 0 };
  return (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
    const forward = Math.max(0, axialSpeed);
    rotor(angularSpeed, forward, loads);
    const [axialThrust, axialTorque] = [loads.thrust, loads.torque];
    out.thrust = loads.thrust;
    out.torque = loads.torque;
    out.inPlaneForce = out.sideForce = out.momentAdvancingUp = out.momentAftUp = 0;
    if (axialThrust > 0 && edgewiseSpeed > 0) {
      const at = (thrust: number) =>
        oblique(rotor, {
          ...disc,
          thrust,
          axialSpeed: forward,
          edgewiseSpeed,
          thrustScale: 1,
          torqueScale: 1,
        });
      const excess = (thrust: number): number => {
        const state = at(thrust);
        return state.ok ? state.value.angularSpeed - angularSpeed : Number.NaN;
      };
      // Edgewise flow at the same speed adds thrust, hardly ever more than doubling it; where the axial flow alone
      // leaves next to none, up to what the rotor gives at rest.
      rotor(angularSpeed, 0, loads);
      const most = Math.max(4 * axialThrust, loads.thrust);
      const thrust = secantRoot(excess, 0.2 * axialThrust, most, axialThrust);
      const state = at(thrust);
      out.thrust = state.ok ? thrust : Number.NaN;
      out.torque = state.ok ? state.value.torque : Number.NaN;
      out.inPlaneForce = state.ok ? state.value.inPlaneForce : Number.NaN;
    }
    if (axialSpeed >= 0) return;
    out.thrust -= axialThrust;
    out.torque -= axialTorque;
    rotor(angularSpeed, axialSpeed, loads);
    out.thrust += loads.thrust;
    out.torque += loads.torque;
  };
}

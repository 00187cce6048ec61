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
    if (edgewiseSpeed > 0) {
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
      const idle = at(0);
      if (idle.ok && idle.value.angularSpeed >= angularSpeed) {
        // Turning too slowly to pull: as much below nothing as the axial rotor is below where this one idles.
        rotor(idle.value.angularSpeed, forward, loads);
        out.thrust = axialThrust - loads.thrust;
        out.torque = idle.value.torque + axialTorque - loads.torque;
        out.inPlaneForce = idle.value.inPlaneForce;
      } else {
        // Edgewise flow adds to the thrust at the same speed of turning, in fast flight more than the axial flow leaves: by the
        // closed form up to some twice what the rotor gives at rest.
        rotor(angularSpeed, 0, loads);
        const most = Math.max(4 * axialThrust, 3 * loads.thrust);
        const thrust = secantRoot(excess, 0, most, Math.max(axialThrust, 0.1 * loads.thrust));
        const state = at(thrust);
        out.thrust = state.ok ? thrust : Number.NaN;
        out.torque = state.ok ? state.value.torque : Number.NaN;
        out.inPlaneForce = state.ok ? state.value.inPlaneForce : Number.NaN;
      }
    }
    if (axialSpeed >= 0) return;
    out.thrust -= axialThrust;
    out.torque -= axialTorque;
    rotor(angularSpeed, axialSpeed, loads);
    out.thrust += loads.thrust;
    out.torque += loads.torque;
  };
}

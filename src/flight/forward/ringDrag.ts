import type { Branch, Circuit } from '../circuit.ts';
import type { FlightModel } from '../types.ts';
import type { ObliqueState } from './edgewise.ts';

/** Tilt up to which what is known of rings in a wind is leant on [rad] (ours, no source): they were measured in slow side winds. */
export const KNOWN_RING_TILT = Math.PI / 4;

/** Whether any of its rotors turns in a ring. */
export const isRinged = ({ stations }: Pick<FlightModel, 'stations'>): boolean =>
  stations.some(({ guard }) => guard !== undefined);

/** Height above the disc at which that drag acts, over the diameter: the rounded lip and what it draws in (from memory; ours). */
const LEVER = 0.25;

/**
 * A rotor's answer with what its ring does along the disc: the air it swallows comes in along the disc and is turned along the
 * ring, so that a share of its momentum stays behind,
 *
 *   D = turning rho A (Vz + v) Vx
 *
 * acting above the disc, nose up (momentum theorem; `turningShare`). The ram pressure that a good inlet would win back is not
 * counted: at these lips the flow tears off (ours, no source). Measured on four shrouded rotors of 66 mm: drag and pitching
 * moment 2.5 times those of the open ones (Hrishikeshavan, Black and Chopra 2014, abstract).
 *
 * @param throughSpeed through the disc from above, before the rotor's own [m/s]
 */
export function withRing(
  state: ObliqueState,
  branch: Branch,
  { airDensity }: Pick<Circuit, 'airDensity'>,
  throughSpeed: number,
  edgewiseSpeed: number,
): ObliqueState {
  if (!(branch.guardTurning > 0 && edgewiseSpeed > 0)) return state;
  const { drag, noseUp } = ringDrag(branch, airDensity, throughSpeed, state.inducedSpeed, edgewiseSpeed);
  return {
    ...state,
    inPlaneForce: state.inPlaneForce + drag,
    momentAftUp: state.momentAftUp - noseUp,
  };
}

/** That drag [N] and its moment about the disc [N m]. */
export function ringDrag(
  branch: Branch,
  airDensity: number,
  throughSpeed: number,
  induced: number,
  edgewiseSpeed: number,
): { readonly drag: number; readonly noseUp: number } {
  const swallowed = airDensity * branch.discArea * Math.max(throughSpeed + branch.guardFlow * induced, 0);
  const drag = branch.guardTurning * swallowed * edgewiseSpeed;
  return { drag, noseUp: LEVER * Math.sqrt((4 / Math.PI) * branch.discArea) * drag };
}

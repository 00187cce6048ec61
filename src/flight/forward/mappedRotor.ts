import { secantRoot } from '../../numerics/secantRoot.ts';
import { emptyObliqueLoads, type ObliqueRead } from '../types.ts';
import {
  answerAt,
  endFor,
  FASTEST,
  LARGEST_ADVANCE,
  type ObliqueAnswer,
  type ObliqueRequest,
} from './edgewise.ts';
import { glauertInducedSpeed } from './glauert.ts';

/**
 * What a rotor must do for a thrust in oblique flow, where its loads are known at any speed: a map of blade elements
 * averaged over a turn. The induced speed is Glauert's for that thrust, as in the elements. A scale on the in-plane
 * force takes its work off the shaft's, since the airframe pushes it.
 */
export function mappedRotor(read: ObliqueRead, request: ObliqueRequest): ObliqueAnswer {
  const { thrust, axialSpeed, edgewiseSpeed, airDensity, diameter, thrustScale, torqueScale } = request;
  const loads = emptyObliqueLoads();
  const short = (angularSpeed: number): number => {
    read(angularSpeed, axialSpeed, edgewiseSpeed, loads);
    return loads.thrust * thrustScale - thrust;
  };
  const slowest = (2 * edgewiseSpeed) / (LARGEST_ADVANCE * diameter) + 1;
  const start = Math.max(request.start || 2500, slowest);
  const angularSpeed =
    endFor(short, slowest, start) ??
    secantRoot(short, slowest, FASTEST, start, (speed) => {
      return (2 * Math.max(loads.thrust * thrustScale, thrust)) / speed;
    });
  const miss = short(angularSpeed);
  const inPlaneForce = (request.inPlaneScale ?? 1) * loads.inPlaneForce;
  const pushed = ((inPlaneForce - loads.inPlaneForce) * edgewiseSpeed) / angularSpeed;
  const hoverSpeed = Math.sqrt(thrust / ((Math.PI / 2) * airDensity * diameter * diameter));
  return answerAt(request, slowest, miss, {
    angularSpeed,
    torque: loads.torque * torqueScale - pushed,
    inPlaneForce,
    sideForce: loads.sideForce,
    momentAdvancingUp: loads.momentAdvancingUp,
    momentAftUp: loads.momentAftUp,
    inducedSpeed: glauertInducedSpeed(hoverSpeed, edgewiseSpeed, axialSpeed),
  });
}

import type { Air } from '../../air/standardAtmosphere.ts';
import type { FlightModel, RotorRead, Station } from '../../flight/types.ts';
import { type GuardEffect, guardEffect } from '../../rotor/guard.ts';
import type { Craft } from '../craft.ts';

/** [m/s2], standard (ISO 80000-3). */
const GRAVITY = 9.80665;
/** How far a tail servo tilts its motor either way (common practice, no source) [rad]. */
const TAIL_TILT = 0.6;

/**
 * A craft ready to fly in the day's air. The rotors' readers are the caller's, since a rotor map is
 * dear: one for each of `craft.rotors`, in that air.
 *
 * @param landingReserve share of the charge to land with, 0 to 0.9
 * @throws RangeError when there is not a reader for every rotor
 */
export function flightModelOf(
  craft: Craft,
  readers: readonly RotorRead[],
  air: Air,
  landingReserve: number,
): FlightModel {
  if (readers.length !== craft.rotors.length) {
    throw new RangeError(`readers must be ${craft.rotors.length}, one a rotor; found ${readers.length}`);
  }
  const stations = craft.motors.map((motor): Station => {
    const reader = readers[motor.rotor];
    const rotor = craft.rotors[motor.rotor];
    if (!reader || !rotor) throw new RangeError(`readers: none for ${motor.place.name}`);
    const partner = craft.motors.findIndex(({ place }) => place.name === motor.place.coaxialWith);
    const inWake = partner >= 0 && motor.place.propSide === 'below';
    const guard = guardOf(craft, motor.place.name, rotor.blade.diameter / 2);
    return {
      name: motor.place.name,
      position: motor.discPlace,
      spin: motor.place.spin,
      rotor: reader,
      propDiameter: rotor.blade.diameter,
      downloadShare: motor.downloadShare,
      rotatingInertia: motor.rotatingInertia,
      motor: motor.model,
      controller: craft.controllerModel,
      supplyLead: motor.supplyLead,
      motorLead: motor.motorLead,
      ...(guard === undefined ? {} : { guard }),
      ...(inWake ? { inWakeOf: partner } : {}),
      ...(motor.place.tilts ? { servoTilt: TAIL_TILT } : {}),
    };
  });
  return {
    stations,
    pack: craft.packModel,
    packTemperature: air.temperature,
    mainWire: craft.wiring.main,
    connectorResistance: craft.wiring.connector.resistance,
    avionicsPower: craft.avionicsPower,
    mass: craft.massProperties.mass,
    centreOfGravity: craft.massProperties.centreOfGravity,
    gravity: GRAVITY,
    airDensity: air.density,
    airTemperature: air.temperature,
    landingReserve,
  };
}

/** Depth over diameter from which a straight ring keeps the wake from contracting (common practice, no source). */
const FULL_DEPTH = 0.2;
/** Struts that hold a ring, as thick as its wall and as long as the radius (common practice, no source). */
const STRUTS = 3;

/** What the ring round a motor does to its rotor; undefined without one, or where the propeller does not fit in. */
function guardOf(craft: Craft, motor: string, radius: number): GuardEffect | undefined {
  const ring = craft.frame.guards.find((each) => each.motor === motor);
  if (ring === undefined || ring.innerRadius <= radius) return undefined;
  return guardEffect(
    {
      tipGap: ring.innerRadius - radius,
      lipRadius: craft.parts.frame.guards?.lipRadius ?? 0,
      expansionRatio: 0.5 + 0.5 * Math.min(1, ring.height / (2 * radius) / FULL_DEPTH),
      depth: ring.height,
      blockedArea: STRUTS * ring.wallThickness * radius,
    },
    radius,
  );
}

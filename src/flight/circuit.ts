import { switchingShare } from '../drive/controller.ts';
import { windingResistanceAt } from '../drive/motor.ts';
import type { PackModel, WireModel } from '../drive/types.ts';
import { wireResistance } from '../drive/wire.ts';
import {
  type FlightModel,
  type Levers,
  neutralLevers,
  type ObliqueRead,
  type RotorRead,
  type Station,
} from './types.ts';

/** One station with the levers worked in, flat for the solvers. */
export interface Branch {
  readonly rotor: RotorRead;
  readonly oblique?: ObliqueRead;
  /** Of the reader's thrust; a ring's gain or loss in hover is in it. */
  readonly thrustScale: number;
  /** The ring's part of `thrustScale`, 1 when open. */
  readonly guardScale: number;
  /** Of the ring: share of the air's momentum along the disc that it takes, and speed through the disc over the open rotor's. */
  readonly guardTurning: number;
  readonly guardFlow: number;
  /** Of the reader's torque, and of its forces in the disc. */
  readonly torqueScale: number;
  readonly inPlaneScale: number;
  /** Net over gross thrust. */
  readonly netShare: number;
  /** [m2] */
  readonly discArea: number;
  /** Index of the branch that blows on this one, or -1. */
  readonly inWakeOf: number;
  /** How far below that one's disc it works, and how large it is, over that one's radius; 0 and 1 outside a wake. */
  readonly wakeDrop: number;
  readonly wakeSize: number;
  /** [rad/s per V] */
  readonly speedConstant: number;
  /** No-load current [A] = idleConstant + idleSlope x angularSpeed. */
  readonly idleConstant: number;
  readonly idleSlope: number;
  /** [ohm] */
  readonly windingResistance: number;
  readonly controllerResistance: number;
  readonly motorLeadResistance: number;
  readonly supplyResistance: number;
  /** Winding, controller and motor leads together at rest [ohm]; see `motorSide`. */
  readonly motorSideResistance: number;
  /** What speed adds to it [ohm s/rad]. */
  readonly resistanceSlope: number;
  readonly switchingShare: number;
  /** Of the controller [A]. */
  readonly idleCurrent: number;
  readonly idleDuty: number;
  /** First branch that is the same in everything but place and spin; equal load gives equal answers. */
  readonly sameAs: number;
}

/** Resistance between a controller's output and the back-EMF at a speed [ohm]. */
export const motorSide = (branch: Branch, angularSpeed: number): number =>
  branch.motorSideResistance + branch.resistanceSlope * angularSpeed;

/** Model and levers made ready for the solvers. */
export interface Circuit {
  readonly branches: readonly Branch[];
  /** Indices, every branch after the one that blows on it. */
  readonly order: readonly number[];
  readonly pack: PackModel;
  /** [K] */
  readonly packTemperature: number;
  /** Main wire and connector [ohm]. */
  readonly mainResistance: number;
  /** [W] */
  readonly avionicsPower: number;
  /** [N] */
  readonly weight: number;
  /** [kg/m3] */
  readonly airDensity: number;
}

/** Windings in flight are taken this much warmer than the air [K], unless told; `heat.ts` shows what they come to. */
export const WARM_WINDING = 40;

/**
 * @param windingTemperature at which the resistances are taken [K]
 * @throws RangeError when a number of the model, a station's wake index or a lever makes no sense
 */
export function circuitOf(
  model: FlightModel,
  levers: Levers,
  windingTemperature = model.airTemperature + WARM_WINDING,
): Circuit {
  checkModel(model);
  for (const name of leverNames) {
    const value = levers[name];
    if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`lever ${name} must be above 0; found ${value}`);
    }
  }
  const branches: Branch[] = [];
  for (const [index, station] of model.stations.entries()) {
    branches.push(branchOf(model, levers, station, index, windingTemperature));
  }
  return {
    branches,
    order: wakeOrder(model.stations),
    pack: {
      ...model.pack,
      capacity: model.pack.capacity * levers.packCapacityScale,
      resistance: model.pack.resistance * levers.packResistanceScale,
    },
    packTemperature: model.packTemperature,
    mainResistance: wireResistance(model.mainWire) * levers.wireResistanceScale + model.connectorResistance,
    avionicsPower: model.avionicsPower * levers.avionicsPowerScale,
    weight: model.mass * levers.massScale * model.gravity,
    airDensity: model.airDensity,
  };
}

const leverNames = Object.keys(neutralLevers) as readonly (keyof Levers)[];

function checkModel(model: FlightModel): void {
  if (model.stations.length === 0) throw new RangeError('stations must hold at least one motor; found none');
  const { mass, gravity, airDensity, airTemperature, avionicsPower, landingReserve } = model;
  for (const [name, value] of Object.entries({ mass, gravity, airDensity, airTemperature })) {
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be above 0; found ${value}`);
  }
  if (!(avionicsPower >= 0))
    throw new RangeError(`avionicsPower must be at least 0 W; found ${avionicsPower}`);
  if (!(landingReserve >= 0 && landingReserve <= 0.9)) {
    throw new RangeError(`landingReserve must be between 0 and 0.9; found ${landingReserve}`);
  }
}

function branchOf(
  model: FlightModel,
  levers: Levers,
  station: Station,
  index: number,
  windingTemperature: number,
): Branch {
  const { motor, controller } = station;
  const windingResistance = windingResistanceAt(motor, windingTemperature) * levers.windingResistanceScale;
  const controllerResistance = controller.resistance * levers.controllerResistanceScale;
  const motorLeadResistance = wireResistance(station.motorLead) * levers.wireResistanceScale;
  const guardScale = station.guard?.thrustAtEqualPower ?? 1;
  const noLoadCurrent = motor.noLoadCurrent * levers.noLoadCurrentScale;
  const above = model.stations[station.inWakeOf ?? -1];
  return {
    rotor: station.rotor,
    ...(station.oblique === undefined ? {} : { oblique: station.oblique }),
    thrustScale: levers.thrustScale * guardScale,
    guardScale,
    guardTurning: Math.min((station.guard?.turning ?? 0) * levers.guardTurningScale, 1),
    guardFlow: Math.sqrt(2 * (station.guard?.wakeRatio ?? 0.5)),
    torqueScale: levers.torqueScale,
    inPlaneScale: levers.inPlaneScale,
    netShare: 1 - Math.min(station.downloadShare * levers.downloadScale, 0.9),
    discArea: (Math.PI / 4) * station.propDiameter ** 2,
    inWakeOf: station.inWakeOf ?? -1,
    wakeDrop:
      above === undefined ? 0 : Math.abs(station.position[2] - above.position[2]) / (above.propDiameter / 2),
    wakeSize: above === undefined ? 1 : station.propDiameter / above.propDiameter,
    speedConstant: motor.speedConstant * levers.speedConstantScale,
    idleConstant: noLoadCurrent * (1 - motor.eddyShare),
    idleSlope: (noLoadCurrent * motor.eddyShare) / motor.noLoadSpeed,
    windingResistance,
    controllerResistance,
    motorLeadResistance,
    supplyResistance: wireResistance(station.supplyLead) * levers.wireResistanceScale,
    motorSideResistance: windingResistance + controllerResistance + motorLeadResistance,
    resistanceSlope: windingResistance * (motor.resistanceRise ?? 0) * levers.runningResistanceScale,
    switchingShare: switchingShare(controller) * levers.controllerIdleScale,
    idleCurrent: controller.idleCurrent * levers.controllerIdleScale,
    idleDuty: controller.idleDuty * levers.idleDutyScale,
    sameAs: model.stations.findIndex((other, k) => k === index || alike(other, station)),
  };
}

function alike(a: Station, b: Station): boolean {
  return (
    a.inWakeOf === undefined &&
    b.inWakeOf === undefined &&
    a.rotor === b.rotor &&
    a.oblique === b.oblique &&
    a.motor === b.motor &&
    a.controller === b.controller &&
    a.guard?.thrustAtEqualPower === b.guard?.thrustAtEqualPower &&
    a.guard?.turning === b.guard?.turning &&
    a.downloadShare === b.downloadShare &&
    a.propDiameter === b.propDiameter &&
    alikeWire(a.supplyLead, b.supplyLead) &&
    alikeWire(a.motorLead, b.motorLead)
  );
}

function alikeWire(a: WireModel, b: WireModel): boolean {
  return a.area === b.area && a.length === b.length && a.temperature === b.temperature;
}

/** Upper rotors before the lower ones that stand in their wake. */
function wakeOrder(stations: readonly Station[]): readonly number[] {
  const order: number[] = [];
  const visit = (index: number, depth: number): void => {
    if (order.includes(index)) return;
    const above = stations[index]?.inWakeOf;
    if (above !== undefined) {
      if (!(above >= 0 && above < stations.length) || depth > stations.length) {
        throw new RangeError(
          `inWakeOf of station ${index} must name another station, without a ring; found ${above}`,
        );
      }
      visit(above, depth + 1);
    }
    order.push(index);
  };
  stations.forEach((_, index) => {
    visit(index, 0);
  });
  return order;
}

import type { PackSource } from '../drive/types.ts';
import type { Branch, Circuit } from './circuit.ts';
import type { Supply } from './feed.ts';
import type { Load } from './load.ts';
import type { OperatingPoint, StationPoint } from './types.ts';

/** A solved load and its supply as a record, with every loss. */
export function describe(circuit: Circuit, source: PackSource, load: Load, supply: Supply): OperatingPoint {
  const stations = circuit.branches.map((branch, i) => describeStation(branch, load, supply, i));
  const current = supply.packCurrent;
  return {
    stations,
    busVoltage: supply.busVoltage,
    packVoltage: supply.packVoltage,
    packCurrent: current,
    chemicalPower: source.openCircuit * current,
    packLoss: (source.openCircuit - supply.packVoltage) * current,
    mainLoss: circuit.mainResistance * current * current,
    avionicsPower: circuit.avionicsPower,
    netThrust: stations.reduce((sum, station) => sum + station.netThrust, 0),
  };
}

function describeStation(branch: Branch, load: Load, supply: Supply, i: number): StationPoint {
  const angularSpeed = load.angularSpeed[i] as number;
  const thrust = load.thrust[i] as number;
  const torque = load.torque[i] as number;
  const current = load.current[i] as number;
  const supplyCurrent = supply.current[i] as number;
  const supplyVoltage = supply.voltage[i] as number;
  const square = current * current;
  const duty = (load.voltage[i] as number) / supplyVoltage;
  return {
    angularSpeed,
    thrust,
    netThrust: thrust * branch.netShare,
    torque,
    duty,
    throttle: (duty - branch.idleDuty) / (1 - branch.idleDuty),
    motorCurrent: current,
    motorVoltage:
      angularSpeed / branch.speedConstant +
      current * (branch.windingResistance + branch.resistanceSlope * angularSpeed),
    supplyCurrent,
    supplyVoltage,
    shaftPower: torque * angularSpeed,
    copperLoss: square * branch.windingResistance,
    // At rest friction holds the motor and no power goes into iron.
    ironLoss:
      ((branch.idleConstant + branch.idleSlope * angularSpeed) * angularSpeed) / branch.speedConstant +
      square * branch.resistanceSlope * angularSpeed,
    controllerLoss:
      square * branch.controllerResistance +
      supplyVoltage * (branch.switchingShare * Math.abs(current) + branch.idleCurrent),
    leadLoss: square * branch.motorLeadResistance + supplyCurrent * supplyCurrent * branch.supplyResistance,
  };
}

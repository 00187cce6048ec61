import type { Craft, CraftMotor } from '../../build/craft.ts';
import { packSource } from '../../drive/battery.ts';
import { type BrakedMotors, fullThrottleSpeeds } from '../../drive/busBraking.ts';
import { type BusCapacitor, leadInductance } from '../../drive/busCircuit.ts';
import type { BusTransientRequest } from '../../drive/busTransient.ts';
import { windingResistanceAt } from '../../drive/motor.ts';
import { wireResistance } from '../../drive/wire.ts';
import { WARM_WINDING } from '../../flight/circuit.ts';
import { UNDER_WAY } from '../../flight/hoverStory.ts';
import { inBox } from '../money/boxes.ts';

/** Series resistance of one low-impedance electrolytic capacitor [ohm] (common practice, no source). */
export const CAPACITOR_RESISTANCE = 0.03;
/** What a box that brings a capacitor without telling its size is taken to bring [F] (common practice). */
const BOXED_CAPACITANCE = 470e-6;
/** Ceramic capacitors on a controller, for each motor, always there (common practice, no source). */
const OWN_CAPACITANCE = 40e-6; // [F]
const OWN_RESISTANCE = 0.005; // [ohm], of all of them side by side
/**
 * From full throttle to the lowest duty [s]: a thumb takes some 50 ms, a switch or a controller's own limit 5 to 20 ms (common
 * practice, no source). Up to 20 ms it hardly matters: the propellers have not slowed yet.
 */
const DROP = 0.02;

/** How a bus may really be; factors about 1. */
export interface BusScales {
  readonly current: number;
  readonly inductance: number;
  readonly capacitorResistance: number;
  readonly packResistance: number;
  readonly windingResistance: number;
  readonly runningResistance: number;
  /** Of the time that the throttle takes to drop. */
  readonly drop: number;
  readonly pulseFrequency: number;
}

export const BUS_AS_RECKONED: BusScales = {
  current: 1,
  inductance: 1,
  capacitorResistance: 1,
  packResistance: 1,
  windingResistance: 1,
  runningResistance: 1,
  drop: 1,
  pulseFrequency: 1,
};

/** At full throttle out of a hover, as `hoverStory` tells it. */
export interface Punch {
  /** [A] */
  readonly packCurrent: number;
  /** Of the air, and of the pack in it [K]. */
  readonly temperature: number;
}

/**
 * The bus of a craft at full throttle on a full pack, for `busTransient`. The punch gives the torque of the propellers; on the
 * full pack they turn faster. Only the pack's quick resistance counts, the current is shared alike among the motors, and
 * controllers' own and fitted capacitors stand side by side.
 */
export function busOf(craft: Craft, punch: Punch, scales = BUS_AS_RECKONED): BusTransientRequest {
  const { temperature } = punch;
  const pack = { ...craft.packModel, resistance: craft.packModel.resistance * scales.packResistance };
  const count = craft.motors.length;
  const { main, connector } = craft.wiring;
  const mean = (of: (motor: CraftMotor) => number) =>
    craft.motors.reduce((sum, motor) => sum + of(motor), 0) / count;
  const leads =
    wireResistance(main) +
    connector.resistance +
    mean(({ supplyLead }) => wireResistance(supplyLead)) / count;
  const sourceAt = (charge: number) => packSource(pack, { charge, temperature, settledCurrent: 0 });
  const full = sourceAt(1);
  const inAir = sourceAt(UNDER_WAY);
  const current = punch.packCurrent * scales.current;
  const voltage = Math.max(inAir.emf - current * (inAir.resistance + leads), 1);
  const each = Math.max(0, current - craft.avionicsPower / voltage) / count;
  const motors = alike(craft).map(({ motor, count: some }) =>
    runningOn(craft, motor, some, voltage, each, temperature + WARM_WINDING, scales),
  );
  const sourceResistance = full.resistance + leads;
  const speeds = fullThrottleSpeeds(motors, full.emf, sourceResistance);
  const { controllerModel } = craft;
  // Inductance goes with length.
  const pairs = main.length / 2 + mean(({ supplyLead }) => supplyLead.length / 2) / count;
  return {
    packVoltage: full.emf,
    sourceResistance,
    inductance: leadInductance(pairs) * scales.inductance,
    capacitors: capacitorsOf(craft, scales.capacitorResistance),
    motors: motors.map((group, g) => ({ ...group, angularSpeed: speeds[g] ?? 0 })),
    drop: { duration: DROP * scales.drop, idleDuty: controllerModel.idleDuty },
    pulseFrequency: controllerModel.pulseFrequency * scales.pulseFrequency,
  };
}

function capacitorsOf({ motors, parts }: Craft, scale: number): readonly BusCapacitor[] {
  const resistance = CAPACITOR_RESISTANCE * scale;
  return [
    { capacitance: OWN_CAPACITANCE * motors.length, resistance: OWN_RESISTANCE * scale },
    ...parts.extras.flatMap(({ part, count }) =>
      part.kind === 'capacitor'
        ? Array.from({ length: count }, () => ({ capacitance: part.capacitance.value, resistance }))
        : [],
    ),
    ...(inBox(parts, 'capacitor') ? [{ capacitance: BOXED_CAPACITANCE, resistance }] : []),
  ];
}

function alike({ motors }: Craft): readonly { readonly motor: CraftMotor; readonly count: number }[] {
  const groups = new Map<string, { motor: CraftMotor; count: number }>();
  for (const motor of motors) {
    const name = [motor.partId, motor.rotor, motor.motorLead.area, motor.motorLead.length].join(' ');
    groups.set(name, { motor, count: (groups.get(name)?.count ?? 0) + 1 });
  }
  return [...groups.values()];
}

/** A motor that takes a current at full throttle on a voltage: its speed and its propeller's torque follow. */
function runningOn(
  { controllerModel }: Craft,
  { model, motorLead, rotatingInertia }: CraftMotor,
  count: number,
  voltage: number,
  current: number,
  windingTemperature: number,
  scales: BusScales,
): BrakedMotors {
  const winding = windingResistanceAt(model, windingTemperature) * scales.windingResistance;
  const resistance = winding + controllerModel.resistance + wireResistance(motorLead);
  const resistanceSlope = winding * (model.resistanceRise ?? 0) * scales.runningResistance;
  const { speedConstant, noLoadCurrent, eddyShare, noLoadSpeed } = model;
  const idleConstant = noLoadCurrent * (1 - eddyShare);
  const idleSlope = (noLoadCurrent * eddyShare) / noLoadSpeed;
  // Held over a standstill: a current beyond all reason stalls it.
  const angularSpeed = Math.max(
    (voltage - current * resistance) / (1 / speedConstant + current * resistanceSlope),
    1,
  );
  const torque = Math.max(0, current - idleConstant - idleSlope * angularSpeed) / speedConstant;
  return {
    count,
    angularSpeed,
    speedConstant,
    resistance,
    resistanceSlope,
    idleConstant,
    idleSlope,
    torqueFactor: torque / angularSpeed ** 2,
    rotatingInertia,
  };
}

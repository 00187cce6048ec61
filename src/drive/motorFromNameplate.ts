import type { Trusted } from '../units/trusted.ts';
import type { MotorGuess, MotorHeat, MotorModel, MotorNameplate } from './types.ts';

/**
 * A motor guessed from what is printed on it. The exponents are physics, the factors are set on typical
 * 1103 to 2806 outrunners as listed by their makers (from memory, no single source); the deviations are
 * the scatter seen between makers about those laws.
 *
 * With stator diameter D and height h:
 * - Motor constant K_m = K_T / sqrt(R). Turns cancel; torque per turn goes with D h, copper area with D2,
 *   turn length with h + D/4 (end turns): K_m2 = c D4 h2 / (h + D/4).
 * - Drag torque of iron and bearings goes with the iron's volume D2 h, half constant (hysteresis),
 *   half with speed (eddy currents) at 1900 rad/s.
 * - Mass goes with D2 h. Burst current is what heats the winding at 2.7 W per gram of motor;
 *   burst power is 25 W per gram.
 */
const MOTOR_CONSTANT_FACTOR = 4.84e5; // [N2 m2 / (W m5)]
const DRAG_TORQUE_FACTOR = 1600; // [N m / m3]
const DRAG_REFERENCE_SPEED = 1900; // [rad/s]
const MASS_FACTOR = 10400; // [kg/m3]
const BURST_HEAT_PER_MASS = 2700; // [W/kg]
const BURST_POWER_PER_MASS = 25000; // [W/kg]
/**
 * Electrical lag behind `resistanceRise`: commutation, ripple and alternating-current resistance grow with the
 * electrical frequency as if the winding's time constant were this. Set so that full-throttle lines of typical
 * thrust tables are met (5 in on 4S and 6S, 7 in on 6S: effective resistance 2 to 2.6 times the listed one at
 * 20 to 34 thousand rpm); from memory, no single source; 40 % (one standard deviation).
 */
export const ELECTRICAL_LAG = 4.8e-5; // [s]
const POLE_PAIRS = 7; // of the 14 magnets usual from 1404 upward
const NO_LOAD_VOLTAGE = 10; // [V], at which listings tell the no-load current

/** One standard deviation over the value. */
const SCATTER = {
  speedConstant: 0.03,
  resistance: 0.3,
  noLoadCurrent: 0.3,
  resistanceRise: 0.4,
  mass: 0.12,
  burst: 0.25,
};
const SOURCE = 'scaling laws of docs/method/drive.md, factors from memory of typical listings';

/**
 * @param plate stator 5 to 60 mm across, 1 to 40 mm high; speed constant 5 to 5000 rad/s per V
 * @throws RangeError outside those
 */
export function motorFromNameplate(plate: MotorNameplate): MotorGuess {
  check('statorDiameter', plate.statorDiameter, 0.005, 0.06, 'm');
  check('statorHeight', plate.statorHeight, 0.001, 0.04, 'm');
  check('speedConstant', plate.speedConstant, 5, 5000, 'rad/s per V');
  const { statorDiameter: D, statorHeight: h, speedConstant } = plate;
  const volume = D * D * h;
  const motorConstantSquared = (MOTOR_CONSTANT_FACTOR * D ** 4 * h * h) / (h + D / 4);
  const resistance = 1 / (speedConstant * speedConstant * motorConstantSquared);
  const noLoadSpeed = NO_LOAD_VOLTAGE * speedConstant;
  const speedRatio = noLoadSpeed / DRAG_REFERENCE_SPEED;
  const noLoadCurrent = DRAG_TORQUE_FACTOR * volume * 0.5 * (1 + speedRatio) * speedConstant;
  const mass = plate.mass ?? MASS_FACTOR * volume;
  const maximumCurrent = Math.sqrt((BURST_HEAT_PER_MASS * mass) / resistance);
  const maximumPower = BURST_POWER_PER_MASS * mass;

  const model: MotorModel = {
    speedConstant,
    resistance,
    resistanceRise: POLE_PAIRS * ELECTRICAL_LAG,
    referenceTemperature: 293.15,
    noLoadCurrent,
    noLoadSpeed,
    eddyShare: speedRatio / (1 + speedRatio),
    heat: motorHeatFromSize(D, h, mass),
    limits: {
      current: maximumCurrent,
      power: maximumPower,
      // Enamel of class F (IEC 60085, 155 degC) less a margin; H-grade magnets are good to 120 degC (from memory).
      windingTemperature: 413.15,
      caseTemperature: 393.15,
    },
  };
  const inferred = (value: number, scatter: number): Trusted => ({
    value,
    deviation: scatter * value,
    trust: 'inferred',
    source: SOURCE,
  });
  return {
    speedConstant: {
      value: speedConstant,
      deviation: SCATTER.speedConstant * speedConstant,
      trust: 'maker',
      source: 'nameplate; listings are true to about 3 % (common practice, no source)',
    },
    resistance: inferred(resistance, SCATTER.resistance),
    noLoadCurrent: inferred(noLoadCurrent, SCATTER.noLoadCurrent),
    noLoadSpeed,
    resistanceRise: inferred(POLE_PAIRS * ELECTRICAL_LAG, SCATTER.resistanceRise),
    mass:
      plate.mass === undefined
        ? inferred(mass, SCATTER.mass)
        : { value: mass, deviation: 0.02 * mass, trust: 'maker', source: "maker's listing" },
    maximumCurrent: inferred(maximumCurrent, SCATTER.burst),
    maximumPower: inferred(maximumPower, SCATTER.burst),
    model,
  };
}

/**
 * Heat lumps of an outrunner from stator diameter, stator height [m] and mass [kg].
 *
 * A fifth of the mass is copper (385 J/(kg K)), the rest iron, magnets and aluminium (480).
 * Coils touch twelve teeth on both flanks through 0.2 mm of resin (1500 W/(m2 K) over 6 D h).
 * The bell is 1.2 D across and open: 1.5 x its outer surface, at 20 W/(m2 K) in still air and 60 at
 * 10 m/s, growing as speed to 0.6 (Hilpert 1933 for cylinders in cross flow gives 76 and 0.62; the hub
 * shades it). Common practice, no source; +-35 % (one standard deviation) on what it sheds.
 */
export function motorHeatFromSize(statorDiameter: number, statorHeight: number, mass: number): MotorHeat {
  const bell = 1.2 * statorDiameter;
  const surface = 1.5 * Math.PI * bell * (statorHeight + 0.5 * statorDiameter + 0.5 * bell);
  return {
    windingCapacity: 0.2 * mass * 385,
    caseCapacity: 0.8 * mass * 480,
    windingToCase: 1500 * 6 * statorDiameter * statorHeight,
    caseToStillAir: 20 * surface,
    caseToWash: 60 * surface,
    washReference: 10,
    washExponent: 0.6,
  };
}

function check(name: string, value: number, low: number, high: number, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} must be between ${low} and ${high} ${unit}; found ${value} ${unit}`);
  }
}

import { ELECTRICAL_LAG, motorFromNameplate } from '../../drive/motorFromNameplate.ts';
import type { MotorGuess, MotorModel } from '../../drive/types.ts';
import type { MotorFit } from '../craft.ts';
import type { PartOf } from '../schema/part.ts';
import { riseFromTables } from './motorTable.ts';

export interface MotorFacts {
  readonly guess: MotorGuess;
  readonly model: MotorModel;
  /** Whether its losses at speed are those of its own thrust table. */
  readonly riseFromTable: boolean;
  readonly fit: MotorFit;
  /** Of the bell about the shaft [kg m2]. */
  readonly bellInertia: number;
  /** Copper section of each of its three leads [m2]. */
  readonly leadArea: number;
}

/** A motor's model and fit: what the part tells, and what its stator and mass suggest where it tells nothing. */
export function motorFacts(part: PartOf<'motor'>): MotorFacts {
  const guess = motorFromNameplate({
    statorDiameter: part.stator.diameter,
    statorHeight: part.stator.height,
    speedConstant: part.speedConstant.value,
    mass: part.mass.value,
  });
  const { model } = guess;
  const fit = motorFit(part);
  // Half of an outrunner turns, most of it magnets and ring near the bell's rim (common practice).
  const bellInertia = part.rotorInertia?.value ?? 0.5 * part.mass.value * (0.42 * fit.bellDiameter) ** 2;
  const told: MotorModel = {
    ...model,
    ...(part.windingResistance ? { resistance: part.windingResistance.value } : {}),
    ...idle(part),
    resistanceRise: (part.poles / 2) * ELECTRICAL_LAG,
    limits: {
      ...model.limits,
      ...(part.maxCurrent ? { current: part.maxCurrent.value } : {}),
      ...(part.maxPower ? { power: part.maxPower.value } : {}),
    },
  };
  const rise = riseFromTables(told, part.thrustTables);
  return {
    guess,
    fit,
    bellInertia,
    leadArea: leadArea(part.stator.diameter),
    riseFromTable: rise !== undefined,
    model: rise === undefined ? told : { ...told, resistanceRise: rise },
  };
}

function idle(part: PartOf<'motor'>): Partial<MotorModel> {
  if (!part.noLoadCurrent) return {};
  const voltage = part.noLoadVoltage?.value ?? 10; // listings tell it at 10 V (common practice)
  return { noLoadCurrent: part.noLoadCurrent.value, noLoadSpeed: voltage * part.speedConstant.value };
}

/**
 * Hole circles, screws, shaft and outside by stator size as the trade has settled on them
 * (common practice, no source): 6.6 mm circle to 10 mm stators, 9 to 14, 12 to 18, 16 to 24, 19 above.
 */
function motorFit(part: PartOf<'motor'>): MotorFit {
  const inferred: string[] = [];
  const known = <T>(name: string, told: T | undefined, rule: T): T => {
    if (told === undefined) inferred.push(name);
    return told ?? rule;
  };
  const { diameter, height } = part.stator;
  const row = SIZES.find(({ upTo }) => diameter <= upTo) ?? LARGEST;
  return {
    mountCircles: known('mountCircles', part.mountCircles, [row.circle]),
    mountScrew: known('mountScrew', part.mountScrew, row.screw),
    threadDepth: known('threadDepth', part.threadDepth, row.depth),
    shaftDiameter: known('shaft', part.shaft?.diameter, row.shaft),
    fixing: known('fixing', part.shaft?.fixing, row.fixing),
    bellDiameter: known('bellDiameter', part.bellDiameter, 1.22 * diameter + 0.001),
    height: known('height', part.height, height + 0.5 * diameter),
    inferred,
  };
}

interface Row {
  readonly upTo: number;
  readonly circle: number;
  readonly screw: NonNullable<PartOf<'motor'>['mountScrew']>;
  readonly depth: number;
  readonly shaft: number;
  readonly fixing: NonNullable<PartOf<'motor'>['shaft']>['fixing'];
}

const LARGEST: Row = {
  upTo: Number.POSITIVE_INFINITY,
  circle: 0.019,
  screw: 'M3',
  depth: 0.004,
  shaft: 0.005,
  fixing: 'nut',
};

const SIZES: readonly Row[] = [
  { upTo: 0.0105, circle: 0.0066, screw: 'M1.4', depth: 0.002, shaft: 0.001, fixing: 'press' },
  { upTo: 0.0145, circle: 0.009, screw: 'M2', depth: 0.0025, shaft: 0.0015, fixing: 'screws' },
  { upTo: 0.0185, circle: 0.012, screw: 'M2', depth: 0.003, shaft: 0.002, fixing: 'screws' },
  { upTo: 0.0245, circle: 0.016, screw: 'M3', depth: 0.004, shaft: 0.005, fixing: 'nut' },
  LARGEST,
];

/** 20 AWG from 20 mm stators on, 24 AWG from 13, 28 AWG below (common practice, no source). */
function leadArea(statorDiameter: number): number {
  if (statorDiameter >= 0.02) return 0.519e-6;
  return statorDiameter >= 0.013 ? 0.205e-6 : 0.081e-6;
}

import type { CraftMotor, CraftRotor } from '../../build/craft.ts';
import type { FitContext, FitVerdict } from './types.ts';

/** One verdict for each different motor on board, named by its first place; undefined says nothing. */
export function perMotor(
  { craft }: FitContext,
  judge: (motor: CraftMotor, index: number) => FitVerdict | undefined,
): readonly FitVerdict[] {
  return perKind(craft.motors, ({ partId }) => partId, judge);
}

/** One verdict for each different pair of motor and propeller. */
export function perPair(
  { craft }: FitContext,
  judge: (motor: CraftMotor, rotor: CraftRotor) => FitVerdict | undefined,
): readonly FitVerdict[] {
  const key = ({ partId, rotor }: CraftMotor) => `${partId} ${rotor}`;
  return perKind(craft.motors, key, (motor) => {
    const rotor = craft.rotors[motor.rotor];
    return rotor === undefined ? undefined : judge(motor, rotor);
  });
}

function perKind(
  motors: readonly CraftMotor[],
  key: (motor: CraftMotor) => string,
  judge: (motor: CraftMotor, index: number) => FitVerdict | undefined,
): readonly FitVerdict[] {
  const seen = new Set<string>();
  return motors.flatMap((motor, index) => {
    const own = key(motor);
    if (seen.has(own)) return [];
    seen.add(own);
    const verdict = judge(motor, index);
    return verdict === undefined ? [] : [verdict];
  });
}

export const placeOf = ({ place }: CraftMotor) => ({ x: place.position[0], y: place.position[1] });

/** Thickness of the arm that carries a motor [m]. */
export function armThickness({ craft }: FitContext, motor: CraftMotor): number {
  const arm = craft.frame.arms.find(({ motors }) => motors.includes(motor.place.name));
  return arm?.thickness ?? craft.parts.frame.arms.thickness.value;
}

/** Largest propeller on board [m]. */
export const largestPropeller = ({ craft }: FitContext): number =>
  craft.rotors.reduce((most, { blade }) => Math.max(most, blade.diameter), 0);

import { TIP_LAST_MACH } from '../rotor/rotorMap.ts';
import type { Flight } from './parts/types.ts';
import type { Finding } from './types.ts';

/**
 * Where a tip turns faster than rotor maps reach their coefficients are held there, so that what is told leans on nothing: in
 * words, once for the fastest motor. Undefined below.
 *
 * @param when the flight that the speeds are of, in words: `At full throttle`
 * @param angularSpeeds one a station [rad/s]
 */
export function fastTip(
  { model, air }: Pick<Flight, 'model' | 'air'>,
  when: string,
  angularSpeeds: ArrayLike<number>,
): { readonly mach: number; readonly says: string } | undefined {
  const tips = model.stations.map(
    ({ propDiameter }, i) => ((angularSpeeds[i] ?? 0) * propDiameter) / 2 / air.speedOfSound,
  );
  const mach = Math.max(0, ...tips);
  if (mach <= TIP_LAST_MACH) return undefined;
  return {
    mach,
    says: `${when} a propeller's tip reaches Mach ${mach.toFixed(2)}, beyond what is known (${TIP_LAST_MACH}): thrust and power there are guesses.`,
  };
}

/** As a finding. */
export function fastTipFindings(...of: Parameters<typeof fastTip>): readonly Finding[] {
  const fast = fastTip(...of);
  if (fast === undefined) return [];
  return [
    {
      id: 'tip-mach-unknown',
      sheet: 'lift',
      severity: 'risk',
      says: fast.says,
      number: { value: fast.mach, limit: TIP_LAST_MACH, quantity: 'ratio' },
      remedy:
        'A motor of lower K_V, fewer cells, or a smaller propeller; a throttle limit holds the tips below.',
      source: 'validity of the compressibility corrections, docs/method/rotor.md',
      parts: ['motors', 'propellers', 'pack'],
    },
  ];
}

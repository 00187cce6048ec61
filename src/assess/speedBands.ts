import type { Outcome } from '../numerics/outcome.ts';
import type { BandedFigures } from './bandedFigures.ts';
import { CRUISE_CHARGE, TOP_CHARGE } from './parts/level/levelNominal.ts';
import type { Flight, PartContext, PartResult } from './parts/types.ts';
import { trimmer } from './trimPoint.ts';

/** What `ask trim` tells, at one speed. */
export interface BandedSpeed extends BandedFigures {
  /** Through the air [m/s]. */
  readonly speed: number;
  /** Of the pack, 0 to 1. */
  readonly charge: number;
}

/** Level flight with bands: every speed of its curve, and its motors in cruise and at top speed. */
export interface SpeedBands {
  readonly curve: readonly BandedSpeed[];
  readonly cruise?: BandedSpeed;
  readonly top?: BandedSpeed;
}

/**
 * Bands for what level flight tells of its speeds, each speed trimmed anew in every state of doubt.
 *
 * @param told what the part `level-flight` found of the same craft
 * @param hubMoments as of `trimmer`
 */
export function speedBands(
  context: PartContext & { readonly flight: Flight },
  told: PartResult,
  hubMoments = false,
): Outcome<SpeedBands> {
  const trims = trimmer(context, hubMoments);
  if (!trims.ok) return trims;
  const at = (speed: number, charge: number): readonly BandedSpeed[] => {
    const found = trims.value({ speed, climb: 0, charge });
    return found.ok ? [{ speed, charge, ...found.value.figures }] : [];
  };
  const atMeasure = (id: string, charge: number): BandedSpeed | undefined =>
    told.measures.filter((measure) => measure.id === id).flatMap(({ value }) => at(value, charge))[0];
  const cruise = atMeasure('best-range-speed', CRUISE_CHARGE);
  const top = atMeasure('top-speed', TOP_CHARGE);
  return {
    ok: true,
    value: {
      curve: (told.data?.powerCurve ?? []).flatMap(({ speed }) => at(speed, CRUISE_CHARGE)),
      ...(cruise === undefined ? {} : { cruise }),
      ...(top === undefined ? {} : { top }),
    },
  };
}

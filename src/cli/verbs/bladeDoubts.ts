import { interpolateLinear } from '../../numerics/interpolate.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import type { BladeColumns } from '../readBladeTable.ts';

const DEGREE = Math.PI / 180;
/**
 * Tables of twist and named pitches each err by one to two degrees, and names by a few more where blades are very flat or steep:
 * further apart, one of the two is of another propeller (ours, from the spread over the UIUC database's development half).
 */
const APART = 8 * DEGREE;
/** Every angle under this, yet some over a third of it: the column was hardly meant in degrees. */
const LIKE_RADIANS = 1.6 * DEGREE;
/** A table that begins further out leaves the root to be drawn on from it. */
const FIRST_STATION = 0.4;

/**
 * What speaks against a blade table as it was read, a sentence each; none when nothing does.
 *
 * @param pitch named beside it [m]
 * @param diameter [m]
 */
export function bladeDoubts(
  table: BladeColumns,
  pitch: number | undefined,
  diameter: number,
): readonly string[] {
  const doubts: string[] = [];
  const { radiusRatio, twist } = table;
  const degrees = (angle: number): string => withUnit((angle / DEGREE).toFixed(1), 'deg');
  const steepest = twist.reduce((most, angle) => Math.max(most, Math.abs(angle)), 0);
  if (steepest <= LIKE_RADIANS && steepest >= LIKE_RADIANS / 5) {
    doubts.push(
      `no blade angle of the table is over ${degrees(steepest)}: beta is read in degrees. Were these radians?`,
    );
  }
  const first = radiusRatio[0] ?? 0;
  if (first > FIRST_STATION) {
    doubts.push(`the table begins at r/R ${first}: inside of it the blade is taken as it is there.`);
  }
  if (pitch !== undefined) {
    const named = Math.atan(pitch / (0.75 * Math.PI * diameter));
    const told = interpolateLinear(0.75, radiusRatio, twist);
    if (Math.abs(named - told) > APART) {
      doubts.push(
        `--pitch stands for ${degrees(named)} at 0.75 R, the table has ${degrees(told)} there. They are averaged, and the bands know nothing of ` +
          'so wide a gap: leave --pitch out, or check which of the two is of this propeller.',
      );
    }
  }
  return doubts;
}

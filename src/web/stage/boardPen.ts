import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { planExtent } from '../../report/planDrawing.ts';
import { sideExtent } from '../../report/sideDrawing.ts';

/** Beside the plan there is room for the side view or a chart from this width on [px]. */
export const LEVEL = 640;
/** How wide a chart stands beside the plan [px]. */
export const CHART = 360;

// The margins that the drawings add round the machine, both sides together [px].
const ROUND = { width: 116, height: 112, side: 50, gap: 12 };
// Head, schedule, title block and gaps of a whole sheet [px].
const AROUND_STAGE = 388;
// A small machine is not drawn larger than this, or its lettering would look lost [px].
const LARGEST = 620;

/** The pen that lets the plan and what stands beside it fill the board, on a sheet as high as the window. */
export function boardPen(
  aircraft: AircraftPicture,
  width: number,
  windowHeight: number,
  beside: 'side' | 'chart' | 'none',
): number {
  if (width === 0) return 0;
  const extent = planExtent(aircraft);
  const height = Math.max(windowHeight - AROUND_STAGE, 360) - ROUND.height;
  const wide = extent.width + (beside === 'side' ? sideExtent(aircraft, 'up').width : 0);
  const taken =
    ROUND.width + (beside === 'side' ? ROUND.side + ROUND.gap : beside === 'chart' ? CHART + ROUND.gap : 0);
  return Math.max(wide / Math.max(width - taken, 120), extent.height / height, extent.width / LARGEST);
}

import type { Craft, CraftCamera } from '../../../build/craft.ts';
import { cover } from '../../../view/cover.ts';
import type { Camera, Cover } from '../../../view/types.ts';
import { COVER_GROUPS, type CoverGroup, type CraftOccluder } from '../../occluders.ts';

/** What a camera loses to the aircraft: in all, and by kind of thing. */
export interface Seen {
  readonly covered: number;
  /** Share of the picture that a propeller's disc touches at all, 0 to 1. */
  readonly discsTouch: number;
  readonly byGroup: Readonly<Record<CoverGroup, number>>;
}

/** Cover of one camera's picture. One pass over everything, and one more for each kind seen more than once. */
export function seenBy(camera: Camera, occluders: readonly CraftOccluder[]): Seen {
  const whole = cover(
    camera,
    occluders.map(({ occluder }) => occluder),
  );
  const byGroup = { discs: 0, arms: 0, guards: 0, frame: 0, antenna: 0, load: 0 };
  let discsTouch = 0;
  for (const group of COVER_GROUPS) {
    const share = shareOf(group, camera, occluders, whole);
    byGroup[group] = share.covered;
    if (group === 'discs') discsTouch = share.touched;
  }
  return { covered: whole.covered, discsTouch, byGroup };
}

/** Shares of one kind; things of a kind that overlap count once. */
function shareOf(
  group: CoverGroup,
  camera: Camera,
  occluders: readonly CraftOccluder[],
  whole: Cover,
): { readonly covered: number; readonly touched: number } {
  const seen = occluders.filter((each, i) => each.group === group && (whole.byOccluder[i]?.touched ?? 0) > 0);
  if (seen.length === 0) return { covered: 0, touched: 0 };
  if (seen.length === 1) {
    const index = occluders.indexOf(seen[0] as CraftOccluder);
    return whole.byOccluder[index] ?? { covered: 0, touched: 0 };
  }
  return cover(
    camera,
    seen.map(({ occluder }) => occluder),
  );
}

/** `recording camera`, and its number where there is more than one of its role. */
export function cameraName(craft: Craft, index: number): string {
  const role = craft.cameras[index]?.role ?? 'flying';
  const alike = craft.cameras.filter((camera) => camera.role === role);
  const number = alike.indexOf(craft.cameras[index] as CraftCamera) + 1;
  return alike.length > 1 ? `${role} camera ${number}` : `${role} camera`;
}

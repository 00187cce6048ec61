import type { Craft, CraftCamera } from '../../../build/craft.ts';
import { type CoverMemory, cover } from '../../../view/cover.ts';
import type { Camera } from '../../../view/types.ts';
import { COVER_GROUPS, type CoverGroup, type CraftOccluder } from '../../occluders.ts';

/** What a camera loses to the aircraft: in all, and by kind of thing. */
export interface Seen {
  readonly covered: number;
  /** Share of the picture that a propeller's disc touches at all, 0 to 1. */
  readonly discsTouch: number;
  readonly byGroup: Readonly<Record<CoverGroup, number>>;
}

/** Cover of one camera's picture, things of a kind that overlap counting once. */
export function seenBy(camera: Camera, occluders: readonly CraftOccluder[]): Seen {
  const { covered, byKind } = cover(
    camera,
    occluders.map(({ occluder }) => occluder),
    occluders.map(({ group }) => group),
  );
  const byGroup = { discs: 0, arms: 0, guards: 0, frame: 0, antenna: 0, load: 0 };
  for (const group of COVER_GROUPS) byGroup[group] = byKind[group]?.covered ?? 0;
  return { covered, discsTouch: byKind.discs?.touched ?? 0, byGroup };
}

/** The same without a look at each kind: for a slider, and for many states of one camera. */
export function lossOf(
  camera: Camera,
  occluders: readonly CraftOccluder[],
  memory?: CoverMemory,
): Pick<Seen, 'covered' | 'discsTouch'> {
  const { covered, byKind } = cover(
    camera,
    occluders.map(({ occluder }) => occluder),
    occluders.map(({ group }) => (group === 'discs' ? group : undefined)),
    memory,
  );
  return { covered, discsTouch: byKind.discs?.touched ?? 0 };
}

/** `recording camera`, and its number where there is more than one of its role. */
export function cameraName(craft: Craft, index: number): string {
  const role = craft.cameras[index]?.role ?? 'flying';
  const alike = craft.cameras.filter((camera) => camera.role === role);
  const number = alike.indexOf(craft.cameras[index] as CraftCamera) + 1;
  return alike.length > 1 ? `${role} camera ${number}` : `${role} camera`;
}

import type { PartOf } from '../../build/schema/part.ts';
import type { FitContext, FitVerdict } from './types.ts';

/** Printed mounts on board that hold one kind of thing. */
export function mountsFor(
  { craft }: FitContext,
  holds: PartOf<'mount'>['holds'],
): readonly PartOf<'mount'>[] {
  return craft.parts.extras.flatMap(({ part }) =>
    part.kind === 'mount' && part.holds === holds ? [part] : [],
  );
}

/** One verdict for each camera of a role, placed where the camera sits. */
export function eachCamera(
  { craft }: FitContext,
  role: 'flying' | 'recording',
  judge: (part: PartOf<'camera'>, index: number) => FitVerdict | undefined,
): readonly FitVerdict[] {
  return craft.cameras.flatMap((camera, index) => {
    const part = craft.parts.cameras[index];
    if (camera.role !== role || part === undefined) return [];
    const verdict = judge(part, index);
    return verdict === undefined ? [] : [{ ...verdict, place: { x: camera.place[0], y: camera.place[1] } }];
  });
}

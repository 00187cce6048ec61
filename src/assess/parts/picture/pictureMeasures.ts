import type { Craft } from '../../../build/craft.ts';
import type { CoverMemory } from '../../../view/cover.ts';
import type { Camera } from '../../../view/types.ts';
import { type CraftOccluder, occludersOf } from '../../occluders.ts';
import type { Uncertainty } from '../../propagate.ts';
import type { Measure } from '../../types.ts';
import { bandedMeasures, type MeasureForm, type Numbers } from '../banded.ts';
import { cameraName, lossOf, type Seen } from './seenBy.ts';

/** How well a camera's place, tilt and field are known, one standard deviation (common practice, no source). */
const PLACE_SPREAD = 2e-3;
const TILT_SPREAD = (1.5 * Math.PI) / 180;
const FIELD_SPREAD = 0.03;

/** A disc hides as much at any speed [rad/s]: one for all, so that what stays in its place stays the same. */
export const ANY_SPEED = 1500;

/**
 * Measures of every camera's picture, without a study of what they lean on: for a slider.
 *
 * @param memory of the last looks, by camera
 */
export function quickPicture(craft: Craft, memory?: Map<number, CoverMemory>): readonly Measure[] {
  return craft.cameras.flatMap(({ camera }, index) => {
    const last = memory?.get(index) ?? {};
    memory?.set(index, last);
    const seen = lossOf(camera, occludersOf(craft, index, ANY_SPEED), last);
    const numbers = numbersOf(idOf(craft, index), seen);
    return formsOf(craft, index).flatMap((form): readonly Measure[] => {
      const value = numbers[form.id];
      if (value === undefined) return [];
      const band = [value / 1.6, Math.min(1, value * 1.6 + 0.001)] as const;
      return [
        {
          ...form,
          value,
          band,
          how: `${form.how} The band is a guess until all is worked out.`,
          leansOn: [],
        },
      ];
    });
  });
}

/** The same with bands from the camera's place, tilt and lens. */
export function pictureMeasures(
  craft: Craft,
  index: number,
  occluders: readonly CraftOccluder[],
  seen: Seen,
): readonly Measure[] {
  const camera = craft.cameras[index]?.camera;
  if (camera === undefined) return [];
  const id = idOf(craft, index);
  const measures = bandedMeasures(formsOf(craft, index), numbersOf(id, seen), cameraStates(camera), (state) =>
    numbersOf(id, lossOf(state, occluders)),
  );
  return measures.map((measure) => ({
    ...measure,
    band: [Math.max(0, measure.band[0]), Math.min(1, measure.band[1])],
  }));
}

const idOf = (craft: Craft, index: number): string => cameraName(craft, index).replaceAll(' ', '-');

const numbersOf = (id: string, seen: Pick<Seen, 'covered' | 'discsTouch'>): Numbers => ({
  [`${id}-covered`]: seen.covered,
  [`${id}-propellers`]: seen.discsTouch,
});

function formsOf(craft: Craft, index: number): readonly MeasureForm[] {
  const name = cameraName(craft, index);
  const id = idOf(craft, index);
  const common = {
    sheet: 'picture',
    quantity: 'share',
    better: 'less',
    source: 'geometry through the lens law (Kannala and Brandt 2006), docs/method/view.md',
  } as const;
  return [
    {
      ...common,
      id: `${id}-covered`,
      label: `light the ${name} loses to the aircraft`,
      how: 'Outlines of everything on board through the lens; a propeller hides as much as its blades cover of their disc.',
    },
    {
      ...common,
      id: `${id}-propellers`,
      label: `propellers in the picture of the ${name}`,
      how: 'Share of the picture that any propeller disc touches, counted whole.',
    },
  ];
}

function cameraStates(camera: Camera): readonly Uncertainty<Camera>[] {
  const [x, y, z] = camera.position;
  const field = { ...camera.field, angle: camera.field.angle * (1 + FIELD_SPREAD) };
  return [
    {
      input: 'how far forward the lens stands',
      trust: 'inferred',
      raised: { ...camera, position: [x - PLACE_SPREAD, y, z] },
    },
    {
      input: 'how high the lens stands',
      trust: 'inferred',
      raised: { ...camera, position: [x, y, z + PLACE_SPREAD] },
    },
    { input: 'tilt', trust: 'inferred', raised: { ...camera, pitch: camera.pitch - TILT_SPREAD } },
    { input: 'field of view', trust: 'maker', raised: { ...camera, field } },
  ];
}

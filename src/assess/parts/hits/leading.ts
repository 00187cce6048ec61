import type { Craft } from '../../../build/craft.ts';
import type { HitsReport } from '../airframeData.ts';

export type LandsFirst = HitsReport['landsFirst'];
export type LeadsNose = HitsReport['leadsNose'];

/** What meets the ground first in a level drop, and how far the next is behind it. Propellers are left out. */
export function landsFirst({ frame, pack, cameras, motors }: Craft): LandsFirst {
  const depths: (readonly [LandsFirst['what'], number])[] = [
    ['pack', pack.place[2] + pack.size.height / 2],
    ...motors.map(({ place, fit }) => {
      const half = (frame.arms[place.armIndex]?.thickness ?? 0) / 2;
      return ['arms', half + (place.propSide === 'below' ? fit.height : 0)] as const;
    }),
    ...frame.plates.map(({ z, thickness }) => ['plate', z + thickness / 2] as const),
    ...frame.guards.map(({ z, height }) => ['guards', z + height / 2] as const),
    ...cameras.map(({ place, size }) => ['camera', place[2] + size.height / 2] as const),
  ];
  return furthest(depths);
}

/** What reaches furthest forward. */
export function leadsNose({ frame, pack, cameras, motors }: Craft): LeadsNose {
  const reaches: (readonly [LeadsNose['what'], number])[] = [
    ['pack', pack.place[0] + pack.size.length / 2],
    ...motors.map(({ place, fit }) => ['motors', place.position[0] + fit.bellDiameter / 2] as const),
    ...frame.plates.map(({ outline }) => ['plate', Math.max(...outline.map(([x]) => x))] as const),
    ...frame.guards.map(({ motor, innerRadius, wallThickness }) => {
      const at = motors.find(({ place }) => place.name === motor)?.place.position[0] ?? 0;
      return ['guards', at + innerRadius + wallThickness] as const;
    }),
    ...cameras.map(
      ({ role, place, size }) =>
        [role === 'flying' ? 'flying camera' : 'recording camera', place[0] + size.length / 2] as const,
    ),
  ];
  return furthest(reaches);
}

function furthest<What extends string>(
  all: readonly (readonly [What, number])[],
): { readonly what: What; readonly lead: number } {
  const sorted = [...all].sort((a, b) => b[1] - a[1]);
  const [first] = sorted;
  if (first === undefined) throw new RangeError('a craft has parts');
  const next = sorted.find(([what]) => what !== first[0]);
  return { what: first[0], lead: next === undefined ? 0 : first[1] - next[1] };
}

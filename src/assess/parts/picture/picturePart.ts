import type { Craft } from '../../../build/craft.ts';
import { clearingChanges, usualClearing } from '../../../view/clearing.ts';
import { picture } from '../../../view/picture.ts';
import { type CraftOccluder, occludersOf } from '../../occluders.ts';
import type { PictureChange, PictureReport } from '../airframeData.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { barredBy } from './cameraReach.ts';
import { CLEAR, pictureFindings } from './pictureFindings.ts';
import { ANY_SPEED, pictureMeasures } from './pictureMeasures.ts';
import { seenBy } from './seenBy.ts';

/** What every camera on board sees of the aircraft, and the smallest change that clears it. */
export const picturePart: AssessPart = {
  id: 'picture',
  label: 'what the cameras see',
  run: ({ craft, flight }: PartContext): PartResult => {
    const angularSpeed = flight?.told.figures['hover-speed'] ?? ANY_SPEED;
    const seen = craft.cameras.map((_, index) => {
      const occluders = occludersOf(craft, index, angularSpeed);
      return { occluders, report: pictureReport(craft, index, occluders) };
    });
    const pictures = seen.map(({ report }) => report);
    const measures = seen.flatMap(({ report, occluders }) =>
      pictureMeasures(craft, report.camera, occluders, report),
    );
    return {
      measures,
      findings: pictures.flatMap((report) => pictureFindings(craft, report, measures)),
      data: { pictures },
    };
  },
};

function pictureReport(craft: Craft, index: number, tagged: readonly CraftOccluder[]): PictureReport {
  const placed = craft.cameras[index];
  if (placed === undefined)
    throw new RangeError(`camera: must be below ${craft.cameras.length}, got ${index}`);
  const occluders = tagged.map(({ occluder }) => occluder);
  const seen = seenBy(placed.camera, tagged);
  const report = {
    camera: index,
    role: placed.role,
    ...seen,
    picture: picture(placed.camera, occluders),
  };
  if (seen.discsTouch <= CLEAR) return report;
  const clear = tagged.filter(({ group }) => group === 'discs' || group === 'guards');
  const found = clearingChanges(placed.camera, occluders, {
    ...usualClearing,
    // More than a size down is another machine.
    most: { ...usualClearing.most, 'smaller propellers': usualClearing.sizeStep },
    allowed: CLEAR,
    clear: clear.map(({ occluder }) => occluder.id),
  });
  const changes = found.changes.map(({ change, smallest }): PictureChange => {
    if (!smallest.ok) return { change, reason: smallest.reason };
    const { amount, staysClear } = smallest.value;
    const barred = barredBy(craft, index, change, amount);
    return barred === undefined
      ? { change, amount, staysClear }
      : { change, reason: barred, beyondReach: amount };
  });
  return { ...report, clearing: changes, oneSizeDown: found.oneSizeDown };
}

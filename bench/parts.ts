import { frameStructure } from '../src/airframe/askFrame.ts';
import { frameModes } from '../src/airframe/frameModes.ts';
import { occludersOf } from '../src/assess/occluders.ts';
import { hitsOf, hitsPart, quickHits } from '../src/assess/parts/hits/hitsPart.ts';
import { knocksPart } from '../src/assess/parts/knocks/knocksPart.ts';
import { knockPlan } from '../src/assess/parts/knocks/plan.ts';
import { quickPicture } from '../src/assess/parts/picture/pictureMeasures.ts';
import { picturePart } from '../src/assess/parts/picture/picturePart.ts';
import { craftFrame } from '../src/assess/parts/shake/craftFrame.ts';
import { quickModes } from '../src/assess/parts/shake/shakeMeasures.ts';
import { shakePart } from '../src/assess/parts/shake/shakePart.ts';
import { forecastKnocks } from '../src/knocks/forecastKnocks.ts';
import { cover } from '../src/view/cover.ts';
import { kittiwake } from './shared/kittiwake.ts';
import { row } from './shared/timed.ts';

/**
 * What issue 4 asks of the airframe's parts: a picture's cover under 4 ms, the frame's modes under 15 ms,
 * 10 000 crash histories under 150 ms, each part of the full tier under 250 ms. The craft has two cameras.
 */
const context = kittiwake();
const { craft, brief } = context;
const camera = craft.cameras[0]?.camera;
if (camera === undefined) throw new Error('no camera');
const occluders = occludersOf(craft, 0, 1500).map(({ occluder }) => occluder);
const hits = hitsOf(craft, brief);
if (!hits.ok) throw new Error(hits.reason);
const { plan } = knockPlan(craft, brief, hits.value);

row("cover of one camera's picture", 200, 'under 4 ms', () => cover(camera, occluders));
row('quick picture, both cameras, kinds apart', 100, 'in the quick tier', () => quickPicture(craft));
row('modes of the whole frame from the craft', 60, 'under 15 ms', () => {
  const built = frameStructure(craftFrame(craft));
  if (built.ok) frameModes(built.value.model, 12);
});
row('quick modes', 60, 'in the quick tier', () => quickModes(craft));
row('quick hits', 200, 'under 2 ms', () => quickHits(craft, brief));
row('10 000 crash histories', 9, 'under 150 ms', () => forecastKnocks(plan, 1, 10_000));
for (const part of [picturePart, shakePart, hitsPart, knocksPart]) {
  row(`part: ${part.label}`, 7, 'under 250 ms', () => part.run(context));
}

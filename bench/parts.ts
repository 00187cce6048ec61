import { readFileSync } from 'node:fs';
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
import { prepareFlight } from '../src/assess/prepareFlight.ts';
import { unpackShelf } from '../src/build/read/packedShelf.ts';
import { readBrief, readBuild } from '../src/build/read/readBuild.ts';
import { resolveBuild } from '../src/build/resolve/resolveBuild.ts';
import { forecastKnocks } from '../src/knocks/forecastKnocks.ts';
import { sectionTables } from '../src/rotor/sections.ts';
import { cover } from '../src/view/cover.ts';

/**
 * What issue 4 asks of the airframe's parts: a picture's cover under 4 ms, the frame's modes under 15 ms,
 * 10 000 crash histories under 150 ms, each part of the full tier under 250 ms. Medians of one run, the
 * dead cat of the demo with two cameras.
 */
const demo = 'demo/first-freestyle';
const shelf = unpackShelf(readFileSync('dist/cli/shelf.json', 'utf8'));
const read = readBuild(readFileSync(`${demo}/kittiwake.yaml`, 'utf8'), 'kittiwake');
const told = readBrief(readFileSync(`${demo}/brief.yaml`, 'utf8'), 'brief');
if (!read.ok || !told.ok) throw new Error('the demo does not read');
const resolved = resolveBuild(read.value.build, shelf);
if (!resolved.ok) throw new Error('the demo does not resolve');
const [craft, brief, sections] = [resolved.value, told.value, sectionTables()];
const flight = prepareFlight(craft, { brief, sections });
if (!flight.ok) throw new Error(flight.reason);
const context = { craft, brief, shelf, sections, flight: flight.value };

/** Medians of the clock and of the processor: on a machine that others use the second is the fair one. */
function timed(times: number, work: () => void): readonly [clock: number, processor: number] {
  work();
  const clock: number[] = [];
  const processor: number[] = [];
  for (let i = 0; i < times; i++) {
    const [start, used] = [performance.now(), process.cpuUsage()];
    work();
    const { user, system } = process.cpuUsage(used);
    clock.push(performance.now() - start);
    processor.push((user + system) / 1000);
  }
  const middle = (list: number[]) => list.sort((a, b) => a - b)[Math.floor(times / 2)] ?? Number.NaN;
  return [middle(clock), middle(processor)];
}

const row = (what: string, times: number, work: () => void, aim: string) => {
  const told = timed(times, work).map((value) => `${value.toFixed(2)} ms`.padStart(11));
  console.log(`${what.padEnd(44)} ${told[0]}   processor ${told[1]}   aim ${aim}`);
};

const camera = craft.cameras[0]?.camera;
if (camera === undefined) throw new Error('no camera');
const occluders = occludersOf(craft, 0, 1500).map(({ occluder }) => occluder);
const hits = hitsOf(craft, brief);
if (!hits.ok) throw new Error(hits.reason);
const { plan } = knockPlan(craft, brief, hits.value);

row("cover of one camera's picture", 200, () => cover(camera, occluders), 'under 4 ms');
row('quick picture, both cameras, kinds apart', 100, () => quickPicture(craft, 1500), 'in the quick tier');
row(
  'modes of the whole frame from the craft',
  60,
  () => {
    const built = frameStructure(craftFrame(craft));
    if (built.ok) frameModes(built.value.model, 12);
  },
  'under 15 ms',
);
row('quick modes', 60, () => quickModes(craft), 'in the quick tier');
row('quick hits', 200, () => quickHits(craft, brief), 'under 2 ms');
row('10 000 crash histories', 9, () => forecastKnocks(plan, 1, 10_000), 'under 150 ms');
for (const part of [picturePart, shakePart, hitsPart, knocksPart]) {
  row(`part: ${part.label}`, 7, () => part.run(context), 'under 250 ms');
}

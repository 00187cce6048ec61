import { describe, expect, it } from 'vitest';
import { occludersOf } from '../../../src/assess/occluders.ts';
import { quickPicture } from '../../../src/assess/parts/picture/pictureMeasures.ts';
import { picturePart } from '../../../src/assess/parts/picture/picturePart.ts';
import { seenBy } from '../../../src/assess/parts/picture/seenBy.ts';
import { cover } from '../../../src/view/cover.ts';
import { contextOf, craftOf, DEMOS, demoBuild } from './crafts.ts';

describe('occluders of a craft', () => {
  const craft = craftOf(demoBuild('first-freestyle/turnstone'));
  const occluders = occludersOf(craft, 0, 1500);

  it('holds every propeller, motor, arm, plate and standoff, and not the camera itself', () => {
    const count = (group: string) => occluders.filter((each) => each.group === group).length;
    expect(count('discs')).toBe(4);
    expect(count('frame')).toBe(craft.frame.plates.length + craft.frame.standoffs.length);
    expect(occluders.some(({ occluder }) => occluder.id.startsWith('flying camera'))).toBe(false);
    expect(occluders.some(({ occluder }) => occluder.id.startsWith('recording camera'))).toBe(true);
    const ids = occluders.map(({ occluder }) => occluder.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('hides by a disc what its blades cover of it: solidity by hand from the blade', () => {
    const disc = occluders[0]!.occluder;
    if (disc.kind !== 'sweptDisc') throw new Error('the first is a disc');
    const { blade } = craft.rotors[0]!;
    // Mean chord by hand: even steps over the table, each chord as the shaft sees it.
    let area = 0;
    let span = 0;
    for (let i = 1; i < blade.radiusRatio.length; i++) {
      const step = blade.radiusRatio[i]! - blade.radiusRatio[i - 1]!;
      const seen = (k: number) => blade.chordRatio[k]! * Math.cos(blade.twist[k]! + blade.pitchOffset);
      area += (step * (seen(i) + seen(i - 1))) / 2;
      span += step;
    }
    expect(disc.chord).toBeCloseTo(((area / span) * blade.diameter) / 2, 6);
    // Blades of small propellers are about a sixth of the radius wide (common practice, no source).
    expect(disc.chord / disc.radius).toBeGreaterThan(0.1);
    expect(disc.chord / disc.radius).toBeLessThan(0.25);
  });
});

describe('the picture part', () => {
  // Low on the nose, where it sees propellers; by itself it would stand higher.
  const cameras = demoBuild('first-freestyle/turnstone').cameras.map((each) =>
    each.role === 'recording' ? { ...each, place: { x: 0.057, y: 0, z: -0.059 } } : each,
  );
  const low = contextOf('first-freestyle/turnstone', { build: { cameras } }, false);

  it.each(DEMOS)('%s: shares lie between nothing and the whole, kinds within the total', (name) => {
    const context = contextOf(name, {}, false);
    const { data, measures } = picturePart.run(context);
    for (const report of data!.pictures!) {
      const kinds = Object.values(report.byGroup);
      for (const share of [...kinds, report.covered, report.discsTouch]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
      expect(report.covered).toBeGreaterThanOrEqual(Math.max(...kinds) - 1e-9);
      expect(report.covered).toBeLessThanOrEqual(kinds.reduce((a, b) => a + b, 0) + 1e-9);
      expect(report.discsTouch).toBeGreaterThanOrEqual(report.byGroup.discs - 1e-9);
    }
    for (const { value, band, id } of measures) {
      expect(band[0], id).toBeLessThanOrEqual(value);
      expect(band[1], id).toBeGreaterThanOrEqual(value);
    }
  });

  it.each(DEMOS)('%s: the flying camera loses under 3 %% of its picture to the recording one', (name) => {
    const { craft } = contextOf(name, {}, false);
    for (const [i, { role, camera }] of craft.cameras.entries()) {
      if (role !== 'flying') continue;
      const all = occludersOf(craft, i, 1500).map(({ occluder }) => occluder);
      const others = all.filter(({ id }) => !id.startsWith('recording camera'));
      expect(cover(camera, all).covered - cover(camera, others).covered).toBeLessThan(0.03);
    }
  });

  it('the change it names clears the propellers, and half of it does not', () => {
    const { craft } = low;
    const { data } = picturePart.run(low);
    const recording = data!.pictures!.find(({ role }) => role === 'recording')!;
    const { amount } = recording.clearing!.find(({ change }) => change === 'up')!;
    const { camera } = craft.cameras[recording.camera]!;
    const discs = occludersOf(craft, recording.camera, 1500).filter(({ group }) => group === 'discs');
    const touchedAt = (by: number) => {
      const [x, y, z] = camera.position;
      return cover(
        { ...camera, position: [x, y, z - by] },
        discs.map(({ occluder }) => occluder),
      ).touched;
    };
    expect(touchedAt(amount!)).toBeLessThanOrEqual(5e-4);
    expect(touchedAt(amount! / 2)).toBeGreaterThan(5e-4);
  });

  it.each(DEMOS)('%s: carries no camera off what holds it, and says what that is', (name) => {
    const context = contextOf(name, {}, false);
    const { craft } = context;
    for (const { camera, role, clearing = [] } of picturePart.run(context).data!.pictures!) {
      const { place, size, camera: lens } = craft.cameras[camera]!;
      for (const { change, amount, beyondReach, reason } of clearing) {
        if (amount === undefined) expect(reason, change).toMatch(/\w/);
        if (beyondReach !== undefined)
          expect(reason, change).toMatch(/^(the cheeks|a printed mount|the frame) /);
        if (change !== 'forward' || amount === undefined) continue;
        // By hand: slots of 4 mm in the cheeks; on a mount the block's lowest back corner stays over a plate.
        const corner = (size.length * Math.cos(lens.pitch) + size.height * Math.sin(lens.pitch)) / 2;
        const nose = Math.max(...craft.frame.plates.flatMap(({ outline }) => outline.map(([x]) => x)));
        const most = role === 'flying' ? craft.frame.camera!.place[0] + 0.004 : nose + corner;
        expect(place[0] + amount).toBeLessThanOrEqual(most + 1e-9);
      }
    }
  });

  it('says what would clear a flying camera that no move within reach does', () => {
    const { findings } = picturePart.run(contextOf('first-freestyle/turnstone', {}, false));
    const { remedy } = findings.find(({ id }) => id === 'flying-camera-sees-propellers')!;
    expect(remedy).toMatch(/^No single move within reach/);
    expect(remedy).toMatch(/a frame whose nose carries the lens \d+\smm further forward/);
  });

  it('never tells a flying camera to tilt beyond its cheeks', () => {
    const { craft } = contextOf('first-freestyle/kittiwake', {}, false);
    const { data } = picturePart.run(contextOf('first-freestyle/kittiwake', {}, false));
    const [, high] = craft.frame.camera!.tiltRange;
    for (const report of data!.pictures!) {
      if (report.role !== 'flying') continue;
      const up = report.clearing?.find(({ change }) => change === 'tilt up');
      if (up?.amount !== undefined) {
        expect(craft.cameras[report.camera]!.camera.pitch + up.amount).toBeLessThanOrEqual(high + 1e-9);
      }
    }
  });

  it('a recording camera that sees propellers is a finding with a way out; a clear one is none', () => {
    const { findings } = picturePart.run(low);
    const seen = findings.find(({ id }) => id === 'recording-camera-sees-propellers')!;
    expect(seen.severity).toBe('risk');
    expect(seen.remedy).toMatch(/raise it \d+\smm/);
    const build = demoBuild('first-freestyle/turnstone');
    const [flying, recording] = build.cameras;
    const forward = {
      ...build,
      cameras: [flying!, { ...recording!, place: { x: 0.13, y: 0, z: -0.05 } }],
    };
    const clear = picturePart.run(contextOf('first-freestyle/turnstone', { build: forward }, false));
    expect(clear.findings.some(({ id }) => id === 'recording-camera-sees-propellers')).toBe(false);
  });

  it('the quick measures have the full ones as values', () => {
    const context = contextOf('cruiser/curlew', {}, false);
    const full = picturePart.run(context).measures;
    const quick = quickPicture(context.craft);
    expect(quick.map(({ id }) => id)).toEqual(full.map(({ id }) => id));
    for (const [i, measure] of quick.entries()) expect(measure.value).toBeCloseTo(full[i]!.value, 9);
  });

  it('things of a kind that hide each other count once', () => {
    const { craft } = contextOf('first-freestyle/turnstone', {}, false);
    const { camera } = craft.cameras[0]!;
    const tagged = occludersOf(craft, 0, 1500);
    const once = seenBy(camera, tagged);
    const twice = seenBy(camera, [
      ...tagged,
      ...tagged
        .filter(({ group }) => group === 'discs')
        .map((each) => ({ ...each, occluder: { ...each.occluder, id: `${each.occluder.id} again` } })),
    ]);
    // Cells that two edges share are approximate: 0.2 % of the picture is what cover promises.
    expect(Math.abs(twice.discsTouch - once.discsTouch)).toBeLessThan(0.002);
    expect(twice.byGroup.discs).toBeGreaterThan(once.byGroup.discs);
  });
});

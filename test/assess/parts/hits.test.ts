import { describe, expect, it } from 'vitest';
import type { HitReport, HitWay } from '../../../src/assess/parts/airframeData.ts';
import { bladeForce } from '../../../src/assess/parts/hits/bladeForce.ts';
import { hitsOf, hitsPart } from '../../../src/assess/parts/hits/hitsPart.ts';
import { landsFirst, leadsNose } from '../../../src/assess/parts/hits/leading.ts';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import { contextOf, DEMOS, demoBuild } from './crafts.ts';

const reportOf = (context: PartContext) => {
  const found = hitsOf(context.craft, context.brief);
  if (!found.ok) throw new Error(found.reason);
  return found.value;
};
const pick = (hits: readonly HitReport[], way: HitWay, surface: string) =>
  hits.find((hit) => hit.way === way && hit.surface === surface)!;

describe('hits', () => {
  it.each(DEMOS)('%s: harder ground, higher peak, less reserve', (name) => {
    const { hits } = reportOf(contextOf(name, {}, false));
    for (const way of ['flat', 'end-on', 'side-on', 'from ahead'] as const) {
      const [grass, wood, concrete] = ['grass', 'wood', 'concrete'].map((surface) =>
        pick(hits, way, surface),
      );
      expect(grass!.peakForce, way).toBeLessThan(wood!.peakForce);
      // Bent up and down the arm is softer than either, and sets the force itself; the motor's bounce does the rest.
      const alike = way === 'flat' ? 1.1 : 1;
      expect(wood!.peakForce, way).toBeLessThan(alike * concrete!.peakForce);
      expect(grass!.reserve, way).toBeGreaterThan(wood!.reserve);
      expect(grass!.chance, way).toBeLessThanOrEqual(wood!.chance);
    }
  });

  it('half break at the speed where the reserve is one: the load is linear in speed', () => {
    const { hits } = reportOf(contextOf('first-freestyle/bonxie', {}, false));
    for (const { speed, reserve, breakingSpeed } of hits) {
      if (breakingSpeed !== undefined) expect(breakingSpeed).toBeCloseTo(speed * reserve, 9);
    }
  });

  it('a pack that hangs under the arms spares them in a level drop and says so', () => {
    const build = demoBuild('first-freestyle/turnstone');
    const under = contextOf(
      'first-freestyle/turnstone',
      { build: { pack: { ...build.pack, side: 'below' } } },
      false,
    );
    const onTop = contextOf('first-freestyle/turnstone', {}, false);
    expect(landsFirst(under.craft).what).toBe('pack');
    const [spared, bare] = [under, onTop].map((context) => pick(reportOf(context).hits, 'flat', 'concrete'));
    expect(spared!.reserve).toBeGreaterThan(1.5 * bare!.reserve);
    expect(hitsPart.run(under).findings.some(({ id }) => id === 'pack-lands-first')).toBe(true);
    expect(hitsPart.run(onTop).findings.some(({ id }) => id === 'pack-lands-first')).toBe(false);
  });

  it('a camera in front of everything is told', () => {
    const build = demoBuild('first-freestyle/turnstone');
    const [flying, recording] = build.cameras;
    const nose = { ...flying!, place: { x: 0.15, y: 0, z: -0.016 } };
    const context = contextOf('first-freestyle/turnstone', { build: { cameras: [nose, recording!] } }, false);
    expect(leadsNose(context.craft).what).toBe('flying camera');
    // Its body is 25 mm long.
    expect(leadsNose(context.craft).lead).toBeCloseTo(
      0.15 +
        0.0125 -
        (context.craft.motors[0]!.place.position[0] + context.craft.motors[0]!.fit.bellDiameter / 2),
      9,
    );
    expect(hitsPart.run(context).findings.some(({ id }) => id === 'camera-leads')).toBe(true);
  });

  it('guards soften what comes in their plane', () => {
    const guarded = contextOf('guarded/dotterel', {}, false);
    const { frame } = guarded.craft;
    const bare = { ...guarded, craft: { ...guarded.craft, frame: { ...frame, guards: [] } } };
    const [with_, without] = [guarded, bare].map((context) =>
      pick(reportOf(context).hits, 'from ahead', 'concrete'),
    );
    expect(with_!.peakForce).toBeLessThan(0.8 * without!.peakForce);
  });

  it('a blade breaks as a cantilever does: F = sigma Z / lever, by hand', () => {
    const { blade } = contextOf('first-freestyle/turnstone', {}, false).craft.rotors[0]!;
    const radius = blade.diameter / 2;
    const chord = blade.chordRatio[blade.radiusRatio.findIndex((at) => at >= 0.25)]! * radius;
    const byHand = (70e6 * 0.6 * 0.11 * chord ** 3) / 6 / (0.6 * radius);
    expect(bladeForce(blade, 'polycarbonate').median).toBeCloseTo(byHand, 6);
    expect(bladeForce(blade, 'carbon').median / byHand).toBeCloseTo(600 / 70, 6);
  });

  it('a propeller stops as a flywheel does: J omega = T t, and the screws bear the moment of the push, by hand', () => {
    const context = contextOf('first-freestyle/turnstone', {}, false);
    const { stopping, hits } = reportOf(context);
    const motor = context.craft.motors[0]!;
    const radius = context.craft.rotors[0]!.blade.diameter / 2;
    expect(stopping!.torque).toBeCloseTo(stopping!.bladeForce * 0.85 * radius, 12);
    expect(stopping!.torque * stopping!.time).toBeCloseTo(motor.rotatingInertia * stopping!.angularSpeed, 12);
    expect(stopping!.impulse).toBeCloseTo(stopping!.bladeForce * stopping!.time, 12);
    const height = -motor.discPlace[2] - context.craft.frame.arms[0]!.thickness / 2;
    const circle = Math.max(...motor.fit.mountCircles);
    expect(stopping!.screwPull).toBeCloseTo((stopping!.bladeForce * height) / circle, 9);
    expect(pick(hits, 'prop strike', 'anything hard').peakForce).toBeCloseTo(2 * stopping!.bladeForce, 9);
  });

  it('measures tell the weakest arm with a band of strength, thickness and ground', () => {
    const { measures } = hitsPart.run(contextOf('first-freestyle/kittiwake', {}, false));
    expect(measures.map(({ id }) => id)).toEqual([
      'breaking-speed-flat',
      'breaking-speed-end-on',
      'breaking-speed-side-on',
      'breaking-speed-from-ahead',
      'prop-strike-reserve',
    ]);
    for (const { id, value, band, leansOn } of measures) {
      expect(band[0], id).toBeLessThan(value);
      expect(band[1], id).toBeGreaterThan(value);
      expect(
        leansOn.reduce((sum, { share }) => sum + share, 0),
        id,
      ).toBeCloseTo(1, 1);
    }
  });
});

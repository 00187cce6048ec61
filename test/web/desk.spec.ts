import { describe, expect, it } from 'vitest';
import { usualSoftWants } from '../../src/choose/shortlist/usualScales.ts';
import { candidateOf, orderOf } from '../../src/choose/standing.ts';
import { flips, HEAVIEST } from '../../src/web/choice/flips.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { patched } from '../../src/web/worker/patch.ts';
import type { BuildView } from '../../src/web/worker/protocol.ts';

const desk = openDesk();
const { brief, builds, shelf } = await desk.open();
const views = await Promise.all(builds.map(({ build }) => desk.assess(build, brief)));
const flying = views.flatMap((view) => (view.ok && view.curves ? [{ ...view, curves: view.curves }] : []));

describe('the desk', () => {
  it('works out all six candidates', () => {
    expect(builds).toHaveLength(6);
    expect(flying).toHaveLength(6);
    expect(shelf.length).toBeGreaterThan(100);
  });

  it('ends the lift curve on the thrust-to-weight measure, and passes weight at hover throttle', () => {
    for (const { assessment, curves } of flying) {
      const value = (id: string) =>
        assessment.measures.find((measure) => measure.id === id)?.value ?? Number.NaN;
      expect(curves.throttle.at(-1)?.liftToWeight).toBeCloseTo(value('thrust-to-weight'), 6);
      const over = curves.throttle.find(({ liftToWeight }) => liftToWeight >= 1)?.throttle ?? 1;
      // Hover is told for a half-full pack, the curve for a fresh one: within a step or two of 5 %.
      expect(Math.abs(over - value('hover-throttle'))).toBeLessThan(0.1);
    }
  });

  it('falls in voltage as the charge is used, and further at full throttle', () => {
    for (const { curves } of flying) {
      curves.discharge.forEach((point, i) => {
        const before = curves.discharge[i - 1];
        if (before?.hover !== undefined && point.hover !== undefined)
          expect(point.hover).toBeLessThan(before.hover);
        if (point.hover !== undefined && point.fullThrottle !== undefined)
          expect(point.fullThrottle).toBeLessThan(point.hover);
      });
    }
  });

  it('draws each build with a disc for each motor, its blades no wider than the disc', () => {
    for (const { picture, assessment } of flying) {
      expect(picture.rotors).toHaveLength(assessment.stations.length);
      for (const rotor of picture.rotors) {
        expect(rotor.blade.length).toBeGreaterThan(3);
        for (const { at, width } of rotor.blade) {
          expect(at).toBeLessThanOrEqual(1);
          expect(width).toBeGreaterThan(0);
          expect(width).toBeLessThan(0.6);
        }
      }
    }
  });

  it('answers alike whatever was asked before', async () => {
    const last = builds.at(-1)!;
    const fresh = openDesk();
    expect(await fresh.assess(last.build, brief)).toEqual(views.at(-1));
    expect(await desk.assess(builds[0]!.build, brief)).toEqual(views[0]);
  });

  it('says in words why a build can not be resolved', async () => {
    const first = builds[0]!.build;
    const view = await desk.assess({ ...first, motors: { ...first.motors, part: 'no-such-motor' } }, brief);
    expect(view.ok).toBe(false);
    if (!view.ok) expect(view.reasons.join(' ')).toContain('no-such-motor');
  });
});

describe('following a build that is slid', () => {
  const { build } = builds[0]!;
  const slidTo = (offset: number) => ({ ...build, pack: { ...build.pack, offset } });
  const valuesOn = (view: BuildView, sheet: string) =>
    view.ok ? view.assessment.measures.filter((measure) => measure.sheet === sheet) : [];

  it('leaves the airframe as it was while it is slid, and tells all of it when asked to', async () => {
    const own = openDesk();
    const ask = { id: 'one', brief };
    const first = await own.follow({ ...ask, build: slidTo(0) });
    const start = patched(undefined, first.patch) as BuildView;
    expect(start).toEqual(await own.assess(slidTo(0), brief));

    const moved = await own.follow({ ...ask, build: slidTo(0.02), since: first.number, slid: true });
    expect(moved.since).toBe(first.number);
    const sliding = patched(start, moved.patch) as BuildView;
    const whole = await own.assess(slidTo(0.02), brief);
    for (const sheet of ['airframe', 'lift', 'heat', 'flight', 'money'])
      expect(valuesOn(sliding, sheet), sheet).toEqual(valuesOn(whole, sheet));
    expect(valuesOn(sliding, 'knocks')).toEqual(valuesOn(start, 'knocks'));
    expect(valuesOn(sliding, 'knocks')).not.toEqual(valuesOn(whole, 'knocks'));

    const rest = await own.follow({ ...ask, build: slidTo(0.02), since: moved.number });
    expect(patched(sliding, rest.patch)).toEqual(whole);
  });

  it('tells the whole answer to a page that has another one, or none', async () => {
    const own = openDesk();
    const whole = await own.assess(build, brief);
    for (const since of [undefined, 7]) {
      const told = await own.follow({ id: 'one', build, brief, slid: true, ...(since ? { since } : {}) });
      expect(told.since).toBeUndefined();
      expect(patched(undefined, told.patch)).toEqual(whole);
    }
  });
});

describe('flips', () => {
  const assessments = flying.map(({ assessment }) => candidateOf(assessment));
  const wants = usualSoftWants(brief);

  it('names only weights that really turn the order, and none nearer that would', () => {
    const leaderAt = (measure: string, weight: number) =>
      orderOf(
        assessments,
        wants.map((want) => (want.measure === measure ? { ...want, weight } : want)),
      )[0];
    const now = orderOf(assessments, wants)[0];
    const found = flips(assessments, wants);
    for (const { measure, from, to, leader } of found) {
      expect(leaderAt(measure, to)).toBe(leader);
      expect(leader).not.toBe(now);
      for (
        let weight = Math.max(0, from - Math.abs(to - from) + 0.5);
        weight < from + Math.abs(to - from);
        weight += 0.5
      )
        expect(leaderAt(measure, weight), `${measure} at ${weight}`).toBe(now);
      expect(to).toBeLessThanOrEqual(HEAVIEST);
    }
  });
});

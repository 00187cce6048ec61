import { describe, expect, it } from 'vitest';
import { DEAD_CAT, H, like, own, ownFrame, propellersIn, SQUASHED_X, TRUE_X } from './layouts.ts';

/**
 * What the trade says of layouts and pictures (common practice, no source), for whole aircraft of one
 * diagonal, cameras, propellers and plates. docs/method/airframe-facts.md has the numbers.
 */
describe('propellers in the picture', () => {
  // All with the recording camera low on the nose, so that layouts are compared and not mounts.
  const cameras = own.craft.build.cameras.map((each) =>
    each.role === 'recording' ? { ...each, place: { x: 0.057, y: 0, z: -0.059 } } : each,
  );
  const [flyingX = 0, recordingX = 0] = propellersIn(like({ layout: TRUE_X }, { cameras }));

  it('a squashed X shows less of them than a true X, to either camera', () => {
    const [flying = 1, recording = 1] = propellersIn(like({ layout: SQUASHED_X }, { cameras }));
    expect(flying).toBeLessThan(0.5 * flyingX);
    expect(recording).toBeLessThan(0.6 * recordingX);
  });

  it('a dead cat takes most of them out of the flying picture; not out of a wide recording one of this nose', () => {
    const [flying = 1, recording = 0] = propellersIn(like({ layout: DEAD_CAT }, { cameras }));
    expect(flying).toBeLessThan(0.3 * flyingX);
    expect(recording).toBeGreaterThan(5e-4);
  });

  it('a dead cat clears both pictures where its front motors are swept back beside the nose', () => {
    const swept = { ...DEAD_CAT, frontWidth: 0.25, length: 0.1 };
    for (const touched of propellersIn(like({ layout: swept }, { cameras })))
      expect(touched).toBeLessThan(5e-4);
  });

  it('an H clears it by its long body, not by its motors: on a short body it shows what the true X shows', () => {
    const short = propellersIn(like({ layout: H }));
    expect(short[0]).toBeCloseTo(flyingX, 2);
    const body = ownFrame.body;
    const long = like({
      layout: H,
      body: { length: 0.25, width: body?.width ?? 0.032, height: body?.height ?? 0.03 },
    });
    for (const touched of propellersIn(long)) expect(touched).toBeLessThan(5e-4);
  });

  it('a nose carried forward clears the true X as well', () => {
    const body = ownFrame.body;
    const nose = like({
      layout: TRUE_X,
      // Twice 60 mm, since the body is centred.
      body: {
        length: (body?.length ?? 0.112) + 0.12,
        width: body?.width ?? 0.032,
        height: body?.height ?? 0.03,
      },
    });
    for (const touched of propellersIn(nose)) expect(touched).toBeLessThan(5e-4);
  });
});

import { describe, expect, it } from 'vitest';
import type { Vector3 } from '../../src/numerics/vector3.ts';
import { clearingChanges } from '../../src/view/clearing.ts';
import { cover } from '../../src/view/cover.ts';
import { discVeil } from '../../src/view/discVeil.ts';
import type { Camera, LensLaw, Occluder } from '../../src/view/types.ts';
import { viewFrame } from '../../src/view/viewFrame.ts';
import { flyingCamera } from './scenes.ts';

/** Hand-derived areas of simple silhouettes; tolerance 0.02 % of the picture, a tenth of what is promised. */
const tolerance = 2e-4;
const laws: LensLaw[] = ['rectilinear', 'equidistant', 'equisolid'];
const straight = (lensLaw: LensLaw, degrees = 100): Camera => ({
  ...flyingCamera,
  position: [0, 0, 0],
  pitch: 0,
  lensLaw,
  field: { across: 'width', angle: (degrees * Math.PI) / 180 },
});
const ball = (centre: Vector3, radius: number): Occluder => ({ kind: 'ball', id: 'ball', centre, radius });
const off = (value: number, wanted: number) => Math.abs(value - wanted);

describe.each(laws)('%s', (law) => {
  const camera = straight(law);
  const { focal, width, height } = viewFrame(camera);

  it('a disc on the optical axis is a circle of the lens law', () => {
    const angle = Math.atan(0.03 / 0.1);
    const g = law === 'rectilinear' ? 0.3 : law === 'equidistant' ? angle : 2 * Math.sin(angle / 2);
    const disc: Occluder = {
      kind: 'sweptDisc',
      id: 'disc',
      centre: [0.1, 0, 0],
      axis: [1, 0, 0],
      radius: 0.03,
      hubRadius: 0.005,
      thickness: 0,
      blades: 3,
      chord: 0.01,
      angularSpeed: 1000,
    };
    const area = (Math.PI * (focal * g) ** 2) / (width * height);
    const hubAngle = Math.atan(0.05);
    const hub = law === 'rectilinear' ? 0.05 : law === 'equidistant' ? hubAngle : 2 * Math.sin(hubAngle / 2);
    const hubArea = (Math.PI * (focal * hub) ** 2) / (width * height);
    const seen = cover(camera, [disc]);
    expect(off(seen.touched, area)).toBeLessThan(tolerance);
    // Solidity of an even chord over the annulus: B c (R - r) / (pi (R2 - r2)).
    const solidity = (3 * 0.01 * 0.025) / (Math.PI * (0.03 ** 2 - 0.005 ** 2));
    expect(off(seen.covered, hubArea + (area - hubArea) * solidity)).toBeLessThan(tolerance);
  });

  it('a wide plate close below the lens covers half the picture', () => {
    const outline = [
      [1e4, 1e4],
      [-1e4, 1e4],
      [-1e4, -1e4],
      [1e4, -1e4],
    ] as const;
    const plate: Occluder = { kind: 'plate', id: 'plate', outline, z: 0.02, thickness: 0.002 };
    expect(off(cover(camera, [plate]).touched, 0.5)).toBeLessThan(tolerance);
    const tiltedBack = { ...camera, roll: 1.1 };
    expect(off(cover(tiltedBack, [plate]).covered, 0.5)).toBeLessThan(tolerance);
  });

  it('inside a box everything is dark; behind the camera nothing is', () => {
    const box: Occluder = { kind: 'box', id: 'box', centre: [0, 0, 0], size: [0.1, 0.1, 0.1] };
    expect(cover(camera, [box]).covered).toBe(1);
    expect(cover(camera, [ball([-0.2, 0.01, 0], 0.02)]).covered).toBe(0);
  });
});

it('a ball off the axis of a rectilinear lens is the ellipse of a cone cut by the picture plane', () => {
  // Half-angle a, axis p off: half axes f sin a cos a / (cos2 p - sin2 a) and f sin a / sqrt(cos2 p - sin2 a).
  const camera = straight('rectilinear');
  const { focal, width, height } = viewFrame(camera);
  const [p, a] = [0.4, 0.2];
  const q = Math.cos(p) ** 2 - Math.sin(a) ** 2;
  const area = (Math.PI * focal ** 2 * Math.sin(a) ** 2 * Math.cos(a)) / q ** 1.5;
  const centre: Vector3 = [0.2 * Math.cos(p), 0.2 * Math.sin(p), 0];
  const seen = cover(camera, [ball(centre, 0.2 * Math.sin(a))]).covered;
  expect(off(seen, area / (width * height))).toBeLessThan(tolerance);
});

it('an equisolid picture keeps solid angles: 2 pi (1 - cos a) wherever the ball stands', () => {
  const camera: Camera = { ...straight('equisolid', 150), width: 600, height: 600 };
  const { focal, width, height } = viewFrame(camera);
  const share = (2 * Math.PI * (1 - Math.cos(0.25)) * focal ** 2) / (width * height);
  for (const angle of [0, 0.5, 1]) {
    const centre: Vector3 = [0.3 * Math.cos(angle), 0, 0.3 * Math.sin(angle)];
    expect(off(cover(camera, [ball(centre, 0.3 * Math.sin(0.25))]).covered, share)).toBeLessThan(tolerance);
  }
});

it('the veil of turning blades agrees with blades followed step by step', () => {
  const disc = { ...veilDisc, angularSpeed: 1900 };
  const exposure = 1 / 700;
  const veil = discVeil(disc, exposure);
  const spacing = (2 * Math.PI) / 3;
  const half = disc.chord / (0.75 * disc.radius) / 2;
  const dark = Array.from({ length: 400 }, (_, place) => {
    let inside = 0;
    for (let step = 0; step < 4000; step++) {
      const angle = (place / 400) * spacing + (disc.angularSpeed * exposure * (step + 0.5)) / 4000;
      const fromBlade = Math.abs(((angle + spacing / 2) % spacing) - spacing / 2);
      if (fromBlade < half) inside++;
    }
    return inside / 4000;
  });
  expect(off(veil.darkest, Math.max(...dark))).toBeLessThan(2e-3);
  expect(off(veil.lightest, Math.min(...dark))).toBeLessThan(2e-3);
  expect(off(veil.sweptShare, 1)).toBe(0);
  const still = discVeil({ ...disc, angularSpeed: 0 }, exposure);
  expect([still.darkest, still.lightest]).toEqual([1, 0]);
  expect(off(still.sweptShare, (2 * half) / spacing)).toBeLessThan(1e-12);
  expect(still.meanOpacity).toBe(veil.meanOpacity);
});

const veilDisc: Extract<Occluder, { kind: 'sweptDisc' }> = {
  kind: 'sweptDisc',
  id: 'disc',
  centre: [0.1, 0.03, -0.03],
  axis: [0, 0, 1],
  radius: 0.064,
  hubRadius: 0.006,
  thickness: 0,
  blades: 3,
  chord: 0.012,
  angularSpeed: 0,
};

describe('clearing', () => {
  it('moves forward by exactly what a sideways edge needs', () => {
    // A thin post beside a rectilinear lens of 90 degrees leaves the picture when the post's front
    // edge, 1 mm thick at y = 30 mm, passes 45 degrees: forward by x + r sin 45 - (y - r cos 45) to within
    // the sliver of half a per mille that is allowed.
    const camera: Camera = { ...straight('rectilinear', 90) };
    const post: Occluder = {
      kind: 'rod',
      id: 'post',
      from: [0.05, 0.03, -1],
      to: [0.05, 0.03, 1],
      radius: 0.0005,
    };
    const { changes } = clearingChanges(camera, [post], {
      clear: ['post'],
      allowed: 0,
      most: { forward: 0.06, up: 0.01, 'tilt up': 0.1, 'tilt down': 0.1, 'smaller propellers': 0.01 },
      sizeStep: 0.006,
    });
    const exact = 0.05 - 0.03 + 0.0005 * Math.SQRT2;
    const [forward, up] = changes;
    if (!forward?.smallest.ok) throw new Error('forward must clear');
    expect(off(forward.smallest.value.amount, exact)).toBeLessThan(0.0005);
    expect(forward.smallest.value.staysClear).toBe(true);
    expect(up?.smallest.ok).toBe(false);
  });

  it('tilts by the angle of the lower edge above a disc seen edge-on', () => {
    // A ball dead ahead, 0.1 rad in half-angle: the picture's lower edge, 30 degrees below the axis of a
    // 60 degree high equidistant picture, must come up to 0.1 rad above it.
    const camera: Camera = {
      ...straight('equidistant', 60),
      width: 400,
      height: 400,
    };
    const ahead = ball([1, 0, 0], Math.sin(0.1));
    const { changes, touchedNow } = clearingChanges(camera, [ahead], {
      clear: ['ball'],
      allowed: 0,
      most: { forward: 0.01, up: 0.01, 'tilt up': 1, 'tilt down': 1, 'smaller propellers': 0.01 },
      sizeStep: 0.006,
    });
    expect(off(touchedNow, (Math.PI * 0.1 ** 2) / (Math.PI / 3) ** 2)).toBeLessThan(tolerance);
    for (const i of [2, 3]) {
      const tilt = changes[i];
      if (!tilt?.smallest.ok) throw new Error('tilting must clear');
      expect(off(tilt.smallest.value.amount, Math.PI / 6 + 0.1)).toBeLessThan((0.2 * Math.PI) / 180);
    }
  });
});

import { expect, it } from 'vitest';
import { cover } from '../../src/view/cover.ts';
import type { Camera, Occluder, SweptDisc } from '../../src/view/types.ts';
import { flyingCamera, recordingCamera } from './scenes.ts';

/**
 * What the trade says of layouts and pictures (common practice, no source), from the same place on
 * the nose over the same 220 mm diagonal and 5.1 inch propellers.
 */
const discs = (frontX: number, frontY: number): SweptDisc[] =>
  [1, -1].map((side) => ({
    kind: 'sweptDisc',
    id: `front ${side}`,
    centre: [frontX, side * frontY, -0.028],
    axis: [0, 0, 1],
    radius: 0.0648,
    hubRadius: 0.0065,
    thickness: 0.005,
    blades: 3,
    chord: 0.0115,
    angularSpeed: 1500,
  }));
const touched = (camera: Camera, occluders: Occluder[]) => cover(camera, occluders).touched;
const diagonalAt = (degrees: number) =>
  discs(0.11 * Math.cos((degrees * Math.PI) / 180), 0.11 * Math.sin((degrees * Math.PI) / 180));
const cameras: Camera[] = [flyingCamera, { ...recordingCamera, pitch: 0.1 }];

it.each(cameras)('a squashed X shows less propeller than a true X', (camera) => {
  const trueX = touched(camera, diagonalAt(45));
  const squashed = touched(camera, diagonalAt(54));
  expect(trueX).toBeGreaterThan(0.005);
  expect(squashed).toBeLessThan(trueX);
});

it.each(cameras)('front arms swung to the side (dead cat) clear the picture', (camera) => {
  expect(touched(camera, discs(0.02, 0.125))).toBeLessThan(0.001);
});

it.each(cameras)('a nose carried forward clears it as well', (camera) => {
  const [x, y, z] = camera.position;
  expect(touched({ ...camera, position: [x + 0.07, y, z] }, diagonalAt(45))).toBeLessThan(0.001);
});

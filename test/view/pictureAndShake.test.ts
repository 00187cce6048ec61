import { expect, it } from 'vitest';
import { picture } from '../../src/view/picture.ts';
import { shakeInPicture } from '../../src/view/shakeBlur.ts';
import { triangulate } from '../../src/view/triangulate.ts';
import { viewFrame } from '../../src/view/viewFrame.ts';
import { flyingCamera, quadScene, recordingCamera } from './scenes.ts';

it('puts the horizon f tan(tilt) below the middle of a level rectilinear picture', () => {
  const camera = { ...recordingCamera, pitch: 0.3 };
  const { focal } = viewFrame(camera);
  const { horizon, cross } = picture(camera, []);
  expect(cross).toEqual({ x: 960, y: 540 });
  expect(horizon).toHaveLength(1);
  const [line = []] = horizon;
  for (const { y } of line) expect(Math.abs(y - 540 - focal * Math.tan(0.3))).toBeLessThan(1e-6);
  const ends = [line[0]?.x ?? 9, line.at(-1)?.x ?? 9].sort((a, b) => a - b);
  expect(ends[0]).toBeCloseTo(0, 6);
  expect(ends[1]).toBeCloseTo(1920, 6);
});

it('nose down by the camera tilt brings the horizon to the cross; roll to the right turns it left', () => {
  const level = picture(flyingCamera, [], { pitch: -flyingCamera.pitch, roll: 0 }).horizon;
  for (const { y } of level[0] ?? []) expect(Math.abs(y - 240)).toBeLessThan(1e-6);
  const [rolled = []] = picture({ ...flyingCamera, pitch: 0 }, [], { pitch: 0, roll: 0.2 }).horizon;
  const left = rolled.reduce((a, b) => (a.x < b.x ? a : b));
  const right = rolled.reduce((a, b) => (a.x > b.x ? a : b));
  // With the right side down the right end of the horizon stands higher in the picture.
  expect(right.y).toBeLessThan(left.y);
});

it('draws the farther outline first and every point inside the picture', () => {
  const { outlines, width, height } = picture({ ...flyingCamera, position: [-0.09, 0, -0.02] }, quadScene());
  const ids = outlines.map(({ id }) => id);
  expect(ids.indexOf('disc 0')).toBeLessThan(ids.indexOf('disc 2'));
  for (const { pieces } of outlines) {
    for (const point of pieces.flat()) {
      expect(point.x).toBeGreaterThan(-1e-6);
      expect(point.x).toBeLessThan(width + 1e-6);
      expect(point.y).toBeGreaterThan(-1e-6);
      expect(point.y).toBeLessThan(height + 1e-6);
    }
  }
});

it('agrees with a sine followed in small steps, slow and fast against the shutter', () => {
  const readout = { rowsTime: 0.012, pictureRate: 60 };
  const { focal } = viewFrame(flyingCamera);
  for (const frequency of [20, 90, 210, 330]) {
    const amplitude = 0.004;
    const shake = shakeInPicture(flyingCamera, { amplitude, frequency }, readout);
    const angleAt = (t: number) => amplitude * Math.sin(2 * Math.PI * frequency * t);
    const meanFrom = (t: number) => {
      let sum = 0;
      for (let i = 0; i < 200; i++) sum += angleAt(t + (flyingCamera.exposure * (i + 0.5)) / 200);
      return sum / 200;
    };
    let [blur, wobble] = [0, 0];
    for (let start = 0; start < 1 / frequency; start += 1 / frequency / 60) {
      const during = Array.from({ length: 101 }, (_, i) =>
        angleAt(start + (flyingCamera.exposure * i) / 100),
      );
      blur = Math.max(blur, Math.max(...during) - Math.min(...during));
      const rows = Array.from({ length: 61 }, (_, i) => meanFrom(start + (readout.rowsTime * i) / 60));
      wobble = Math.max(wobble, Math.max(...rows) - Math.min(...rows));
    }
    expect(Math.abs(shake.blur / (focal * blur) - 1)).toBeLessThan(0.005);
    expect(Math.abs(shake.wobble / (focal * wobble) - 1)).toBeLessThan(0.01);
  }
  expect(shakeInPicture(flyingCamera, { amplitude: 0.001, frequency: 185 }, readout).crawl).toBeCloseTo(5, 9);
  expect(shakeInPicture(flyingCamera, { amplitude: 0.001, frequency: 185 }, readout).waves).toBeCloseTo(
    2.22,
    9,
  );
});

it('cuts a notched outline into triangles of its own area, and refuses one that crosses itself', () => {
  const notched = [
    [0, 0],
    [4, 0],
    [4, 3],
    [2, 1],
    [0, 3],
  ] as const;
  const area = triangulate(notched).reduce(
    (sum, [a, b, c]) => sum + ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2,
    0,
  );
  expect(area).toBeCloseTo(8, 12); // 4 x 3 less the triangle 4 x 2 / 2
  const crossed = [
    [0, 0],
    [2, 2],
    [3, -1],
    [0, 1],
    [2, -2],
  ] as const;
  expect(() => triangulate(crossed)).toThrow(RangeError);
});

it('refuses cameras outside its lens laws', () => {
  const wide = { across: 'width', angle: 3.0 } as const;
  expect(() => viewFrame({ ...recordingCamera, field: wide })).toThrow(/field.angle/);
  expect(() => viewFrame({ ...flyingCamera, width: 0 })).toThrow(/width and height/);
});

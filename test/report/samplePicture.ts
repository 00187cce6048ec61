import type { AircraftPicture } from '../../src/report/aircraftPicture.ts';

const arm = (x: number, y: number) => {
  const length = Math.hypot(x, y);
  const [ux, uy] = [x / length, y / length];
  const root = { x: ux * 0.03, y: uy * 0.03 };
  const at = (p: { x: number; y: number }, along: number, side: number) => ({
    x: p.x + ux * along - uy * side,
    y: p.y + uy * along + ux * side,
  });
  return {
    outline: [
      at(root, 0, 0.009),
      at({ x, y }, 0.012, 0.006),
      at({ x, y }, 0.012, -0.006),
      at(root, 0, -0.009),
    ],
    z: -0.0025,
    thickness: 0.005,
  };
};

const corners = [
  [0.08, 0.1],
  [0.08, -0.1],
  [-0.08, 0.08],
  [-0.08, -0.08],
] as const;

/** A made-up dead cat: only something to draw. */
export const samplePicture: AircraftPicture = {
  name: 'Sample, dead cat',
  rotors: corners.map(([x, y], i) => ({
    at: { x, y, z: -0.0025 },
    motorRadius: 0.014,
    motorHeight: 0.018,
    propellerRadius: 0.0648,
    discZ: -0.0245,
    blades: 3,
    blade: [
      { at: 0.12, width: 0.1 },
      { at: 0.4, width: 0.19 },
      { at: 0.75, width: 0.15 },
      { at: 1, width: 0.03 },
    ],
    spin: i === 0 || i === 3 ? ('anticlockwise' as const) : ('clockwise' as const),
    label: { figure: `${(1.9 - i * 0.1).toFixed(2)} N`, under: '6.2 A, 45 degC' },
  })),
  arms: corners.map(([x, y]) => arm(x, y)),
  plates: [
    {
      outline: [
        { x: 0.08, y: 0.018 },
        { x: 0.08, y: -0.018 },
        { x: -0.075, y: -0.018 },
        { x: -0.075, y: 0.018 },
      ],
      z: -0.025,
      thickness: 0.002,
    },
  ],
  posts: [{ x: 0.07, y: 0.014, radius: 0.0025, topZ: -0.023, bottomZ: -0.0025 }],
  boxes: [
    { part: 'pack', at: { x: -0.01, y: 0, z: -0.043 }, size: { x: 0.078, y: 0.038, z: 0.035 } },
    {
      part: 'camera',
      at: { x: 0.085, y: 0, z: -0.014 },
      size: { x: 0.02, y: 0.019, z: 0.019 },
      tilt: 0.4,
      view: 2.2,
    },
    { part: 'stack', at: { x: 0, y: 0, z: -0.012 }, size: { x: 0.038, y: 0.038, z: 0.015 } },
  ],
  guards: [],
  centreOfGravity: { x: 0.006, y: 0, z: -0.02 },
  thrustCentre: { x: 0, y: 0 },
};

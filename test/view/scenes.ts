import type { Camera, Occluder, Ring, SweptDisc } from '../../src/view/types.ts';

const degrees = Math.PI / 180;

/** An invented 5 inch quad of the Gannet Point club: places [m] for a true X of 220 mm diagonal. */
export function quadScene(options: { nose?: number; guards?: boolean } = {}): Occluder[] {
  const { nose = 0, guards = false } = options;
  const reach = 0.11 * Math.SQRT1_2;
  const corners = [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ] as const;
  const perArm = corners.flatMap(([a, b], i): Occluder[] => {
    const [x, y] = [a * reach + (a > 0 ? nose : 0), b * reach];
    const disc: SweptDisc = {
      kind: 'sweptDisc',
      id: `disc ${i}`,
      centre: [x, y, -0.028],
      axis: [0, 0, 1],
      radius: 0.0648,
      hubRadius: 0.0065,
      thickness: 0.005,
      blades: 3,
      chord: 0.0115,
      angularSpeed: 1500,
    };
    const guard: Ring = {
      kind: 'ring',
      id: `guard ${i}`,
      centre: [x, y, -0.026],
      axis: [0, 0, 1],
      innerRadius: 0.067,
      outerRadius: 0.069,
      height: 0.012,
    };
    return [
      disc,
      {
        kind: 'bar',
        id: `arm ${i}`,
        from: [a * 0.02, b * 0.02, 0],
        to: [x, y, 0],
        widthFrom: 0.016,
        widthTo: 0.011,
        thickness: 0.005,
      },
      { kind: 'rod', id: `motor ${i}`, from: [x, y, -0.0025], to: [x, y, -0.023], radius: 0.0138 },
      ...(guards ? [guard] : []),
    ];
  });
  const outline = [
    [0.075, 0.012],
    [0.06, 0.02],
    [0, 0.018],
    [-0.07, 0.022],
    [-0.07, -0.022],
    [0, -0.018],
    [0.06, -0.02],
    [0.075, -0.012],
    [0.06, 0],
  ] as const;
  return [
    ...perArm,
    { kind: 'plate', id: 'bottom plate', outline, z: 0.0025, thickness: 0.0025 },
    { kind: 'plate', id: 'top plate', outline, z: -0.03, thickness: 0.002 },
    { kind: 'box', id: 'pack', centre: [-0.005, 0, -0.05], size: [0.075, 0.036, 0.034] },
    { kind: 'rod', id: 'antenna', from: [-0.08, 0, -0.03], to: [-0.11, 0, -0.09], radius: 0.0025 },
  ];
}

export const flyingCamera: Camera = {
  position: [0.07, 0, -0.012],
  pitch: 25 * degrees,
  roll: 0,
  yaw: 0,
  lensLaw: 'equidistant',
  field: { across: 'width', angle: 140 * degrees },
  width: 640,
  height: 480,
  exposure: 1 / 500,
};

/** The recording camera on top of the top plate. */
export const recordingCamera: Camera = {
  ...flyingCamera,
  position: [0.055, 0, -0.05],
  lensLaw: 'rectilinear',
  field: { across: 'width', angle: 95 * degrees },
  width: 1920,
  height: 1080,
};

import type { PlacedArm } from '../../src/airframe/askFrame.ts';
import type { FrameMaterial } from '../../src/airframe/types.ts';
import { ort } from './materials.ts';

export const sheet: FrameMaterial = {
  name: 'invented sheet',
  density: 1550,
  elastic: ort,
  strength: { tension: 600e6, compression: 500e6, shear: 80e6, interlaminar: 45e6, scatter: 0.12 },
  thicknessScatter: 0.03,
  source: 'invented for tests',
};

/** An arm from (root radius) to (motor radius) at an angle from the nose, degrees to the right. */
export const placedArm = (
  degrees: number,
  width = 0.012,
  thickness = 0.005,
  motorRadius = 0.11,
): PlacedArm => {
  const yaw = (degrees * Math.PI) / 180;
  return {
    name: `arm at ${degrees}`,
    root: [0.025 * Math.cos(yaw), 0.025 * Math.sin(yaw), 0],
    yaw,
    arm: {
      length: motorRadius - 0.025,
      outline: [
        { at: 0, width: width * 1.2 },
        { at: 1, width },
      ],
      thickness,
      moduli: sheet.elastic,
      density: sheet.density,
      grip: { kind: 'between plates' },
      tipBody: { mass: 0.035, height: 0.012, inertia: [2.9e-6, 2.9e-6, 3.4e-6] },
    },
  };
};

export const hubBody = {
  mass: 0.35,
  centreOfGravity: [0.004, 0, -0.012],
  inertia: [
    [1e-4, 0, 0],
    [0, 2.4e-4, 0],
    [0, 0, 2.5e-4],
  ],
} as const;

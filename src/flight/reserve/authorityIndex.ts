import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { ReserveModel } from './types.ts';
import { effectorCorners, type Wrench } from './wrench.ts';

/**
 * Available control authority index of Du, Quan, Yang and Cai (2015), Journal of Guidance, Control,
 * and Dynamics 38(5), eq. (13) (number from memory): the distance from the hover wrench to the nearest
 * face of the attainable set in the space of (lift, roll, pitch, yaw), newtons and newton metres
 * counted alike as the authors do. Above 0 hover is fully controllable; at or below 0 it is not. For
 * comparing with the literature; `motorOut` says what it means for a builder.
 *
 * @returns words for a craft with a tilting servo, whose set has no such faces
 */
export function controlAuthorityIndex(model: ReserveModel): Outcome<number> {
  const columns: Wrench[] = [];
  const offset: [number, number, number, number] = [0, 0, 0, model.mass * model.gravity];
  for (const effector of model.effectors) {
    if (effector.servoTilt !== undefined && effector.servoTilt > 0) {
      return noSolution('the index is defined for motors that do not tilt');
    }
    const [low, high] = effectorCorners(effector, model.centreOfGravity);
    if (low === undefined || high === undefined) continue;
    columns.push([high[0] - low[0], high[1] - low[1], high[2] - low[2], high[3] - low[3]]);
    for (let i = 0; i < 4; i++) offset[i] = (offset[i] ?? 0) - ((low[i] ?? 0) + (high[i] ?? 0)) / 2;
  }
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < columns.length; i++) {
    for (let j = i + 1; j < columns.length; j++) {
      for (let k = j + 1; k < columns.length; k++) {
        const normal = unitNormal(columns[i] as Wrench, columns[j] as Wrench, columns[k] as Wrench);
        if (normal === undefined) continue;
        let width = 0;
        for (const column of columns) width += Math.abs(dot4(normal, column)) / 2;
        smallest = Math.min(smallest, width - Math.abs(dot4(normal, offset)));
      }
    }
  }
  return Number.isFinite(smallest)
    ? solved(smallest)
    : noSolution('fewer than three motors pull independently');
}

const dot4 = (a: Wrench, b: Wrench): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3];

/** At right angles to three vectors of four components; absent when they lie in a plane. */
function unitNormal(a: Wrench, b: Wrench, c: Wrench): Wrench | undefined {
  const minor = (i: 0 | 1 | 2 | 3, j: 0 | 1 | 2 | 3, k: 0 | 1 | 2 | 3): number =>
    a[i] * (b[j] * c[k] - b[k] * c[j]) -
    a[j] * (b[i] * c[k] - b[k] * c[i]) +
    a[k] * (b[i] * c[j] - b[j] * c[i]);
  const normal: Wrench = [minor(1, 2, 3), -minor(0, 2, 3), minor(0, 1, 3), -minor(0, 1, 2)];
  const length = Math.hypot(...normal);
  const size = Math.hypot(...a) * Math.hypot(...b) * Math.hypot(...c);
  if (!(length > 1e-12 * size)) return undefined;
  return [normal[0] / length, normal[1] / length, normal[2] / length, normal[3] / length];
}

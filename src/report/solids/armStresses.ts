import type { HitReport } from '../../assess/parts/airframeData.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import type { ArmAxis, Solid } from './solidsOf.ts';

/** Stress in each arm along its axis, for one way of being struck. */
export interface ArmLoad {
  readonly arm: ArmAxis;
  readonly hit: HitReport;
  /** Largest pull or push along the arm anywhere in it [Pa], and where [m from the root]. */
  readonly worst: { readonly stress: number; readonly at: number };
}

/** The arms that were struck so, in the order of the arms. */
export function armLoads(
  arms: readonly ArmAxis[],
  hits: readonly HitReport[],
  way: string,
  surface: string,
): readonly ArmLoad[] {
  return arms.flatMap((arm): readonly ArmLoad[] => {
    const hit = hits.find((each) => each.arm === arm.name && each.way === way && each.surface === surface);
    if (hit === undefined) return [];
    let worst = { stress: 0, at: 0 };
    for (const { at, tension, compression } of hit.stress) {
      const stress = Math.max(tension, compression);
      if (stress > worst.stress) worst = { stress, at };
    }
    return [{ arm, hit, worst }];
  });
}

/** Larger of pull and push along the arm at a distance from its root [Pa]; nothing in the clamp. */
export function stressAt({ hit: { stress } }: ArmLoad, along: number): number {
  if (along < 0) return 0;
  const after = stress.findIndex(({ at }) => at >= along);
  const [low, high] = [stress[Math.max(0, after - 1)], stress[after]];
  const of = (each: typeof low): number => Math.max(each?.tension ?? 0, each?.compression ?? 0);
  if (low === undefined || high === undefined || high.at <= low.at)
    return of(stress.at(after < 0 ? -1 : after));
  return of(low) + ((along - low.at) / (high.at - low.at)) * (of(high) - of(low));
}

/** Bounds of the colour bands [Pa]: five of one width from 0 to a round number over the largest. */
export function stressBands(loads: readonly ArmLoad[]): readonly number[] {
  const top = Math.max(1e5, ...loads.map(({ worst }) => worst.stress)) / 5;
  const power = 10 ** Math.floor(Math.log10(top));
  const step = [1, 1.5, 2, 3, 4, 5, 6, 8, 10].map((each) => each * power).find((each) => each >= top) ?? top;
  return [0, 1, 2, 3, 4, 5].map((each) => each * step);
}

/** Band of each triangle of an arm, 0 to 4; -1 where it is held in the clamp. */
export function bandsOfArm({ mesh }: Solid, load: ArmLoad, bounds: readonly number[]): Int8Array {
  const { positions, triangles } = mesh;
  const { root, yaw } = load.arm;
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  const along = (corner: number): number =>
    ((positions[3 * corner] as number) - root[0]) * c + ((positions[3 * corner + 1] as number) - root[1]) * s;
  const step = (bounds[1] ?? 1) - (bounds[0] ?? 0);
  return Int8Array.from({ length: triangles.length / 3 }, (_, i) => {
    const middle =
      (along(triangles[3 * i] as number) +
        along(triangles[3 * i + 1] as number) +
        along(triangles[3 * i + 2] as number)) /
      3;
    if (middle < 0) return -1;
    return Math.min(4, Math.floor(stressAt(load, middle) / step));
  });
}

/** A place on the upper face of an arm [m]. */
export const placeOnArm = ({ root, yaw }: ArmAxis, along: number): Vector3 => [
  root[0] + along * Math.cos(yaw),
  root[1] + along * Math.sin(yaw),
  root[2],
];

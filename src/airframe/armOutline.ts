import type { ArmGeometry, Point2 } from './types.ts';

/** Half the arm's width at a distance from its root along its axis [m]; 0 beyond its end. */
export function armHalfWidth(arm: ArmGeometry, distance: number): number {
  const length = armLength(arm);
  const pad = arm.padDiameter / 2;
  const past = distance - length;
  const round = Math.abs(past) < pad ? Math.sqrt(pad * pad - past * past) : 0;
  const straight = past <= 0 ? widthAt(arm, distance / length) / 2 : 0;
  return Math.max(round, straight);
}

/** Root to motor axis [m]. */
export function armLength(arm: ArmGeometry): number {
  const length = Math.hypot(arm.tip[0] - arm.root[0], arm.tip[1] - arm.root[1]);
  if (!(length > 0)) throw new RangeError(`${arm.name}: its root and its tip are at one place`);
  return length;
}

/** Direction of the arm in plan from the x axis, positive to the right [rad]. */
export const armDirection = (arm: ArmGeometry): number =>
  Math.atan2(arm.tip[1] - arm.root[1], arm.tip[0] - arm.root[0]);

/**
 * The arm's plan outline in its own axes (x from root to motor, y to the right), with its round end
 * and the length that runs on inside the clamp [m].
 */
export function armOutline(arm: ArmGeometry): readonly Point2[] {
  const length = armLength(arm);
  const pad = arm.padDiameter / 2;
  const places = new Set([-arm.clampedLength, 0, length]);
  for (const station of arm.outline) places.add(station.at * length);
  for (let i = 0; i <= 24; i++) places.add(length - pad * Math.cos((Math.PI * i) / 24));
  const along = [...places].filter((x) => x >= -arm.clampedLength).sort((a, b) => a - b);
  const right = along.map((x): Point2 => [x, armHalfWidth(arm, Math.min(x, length + pad))]);
  const left = right.map(([x, y]): Point2 => [x, -y]).reverse();
  return [...left, ...right.filter(([, y]) => y > 0)].filter(
    ([, y], i, all) => y !== 0 || all[i - 1]?.[1] !== 0,
  );
}

function widthAt(arm: ArmGeometry, at: number): number {
  const first = arm.outline[0];
  if (first === undefined) throw new RangeError(`${arm.name}: its outline needs a station`);
  let before = first;
  for (const station of arm.outline) {
    if (station.at >= at) {
      const span = station.at - before.at;
      const share = span > 0 ? (at - before.at) / span : 1;
      return before.width + Math.min(1, Math.max(0, share)) * (station.width - before.width);
    }
    before = station;
  }
  return before.width;
}

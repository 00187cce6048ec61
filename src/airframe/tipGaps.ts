import { distanceToPolygon } from '../numerics/polygon.ts';
import type { Layout, MotorPlace, Obstacle, Point2, TipGap } from './types.ts';

/**
 * Every gap between a swept prop disc and its neighbours or an obstacle, in plan, smallest first.
 *
 * Props clash only on the same side of the arms, so a coaxial pair is left out; so is the height of
 * an obstacle: hand in those that reach the disc's height (camera, pack, top plate, guard).
 *
 * @param propDiameter tip to tip [m], over 0
 * @throws RangeError for a diameter that is not positive, or a ring round an unknown motor
 */
export function tipGaps(
  layout: Layout,
  propDiameter: number,
  obstacles: readonly Obstacle[],
): readonly TipGap[] {
  if (!(propDiameter > 0)) throw new RangeError(`propDiameter: must be over 0 m, got ${propDiameter}`);
  const radius = propDiameter / 2;
  const gaps = [...propGaps(layout.motors, radius)];
  for (const obstacle of obstacles) gaps.push(...obstacleGaps(layout.motors, radius, obstacle));
  return gaps.sort((a, b) => a.gap - b.gap);
}

function* propGaps(motors: readonly MotorPlace[], radius: number): Generator<TipGap> {
  for (const [i, a] of motors.entries()) {
    for (const b of motors.slice(i + 1)) {
      if (a.propSide !== b.propSide) continue;
      const [dx, dy] = [b.position[0] - a.position[0], b.position[1] - a.position[1]];
      const distance = Math.hypot(dx, dy);
      if (distance === 0) throw new RangeError(`layout: ${a.name} and ${b.name} stand on one place`);
      yield {
        motor: a.name,
        to: b.name,
        part: 'propellers',
        gap: distance - 2 * radius,
        place: [a.position[0] + (dx / distance) * radius, a.position[1] + (dy / distance) * radius],
        overlapShare: overlapShare(distance / radius),
      };
    }
  }
}

/**
 * Share of one disc covered by an equal one whose centre is `separation` radii away: the lens of two
 * circles (any handbook of mensuration). 1 at 0, 0 from 2 on.
 */
export function overlapShare(separation: number): number {
  if (separation >= 2) return 0;
  const half = separation / 2;
  return (2 / Math.PI) * (Math.acos(half) - half * Math.sqrt(1 - half * half));
}

function obstacleGaps(motors: readonly MotorPlace[], radius: number, obstacle: Obstacle): readonly TipGap[] {
  const told = { to: obstacle.name, part: obstacle.part, overlapShare: 0 };
  switch (obstacle.shape) {
    case 'ring': {
      const motor = motors.find(({ name }) => name === obstacle.motor);
      if (motor === undefined) throw new RangeError(`motor: no motor is named ${obstacle.motor}`);
      const place: Point2 = [motor.position[0] + radius, motor.position[1]];
      return [{ motor: motor.name, ...told, gap: obstacle.innerRadius - radius, place }];
    }
    case 'outline':
      return motors.map(({ name, position: [x, y] }) => {
        const { distance, nearest } = distanceToPolygon([x, y], obstacle.outline);
        const scale = distance === 0 ? 0 : radius / distance;
        const place: Point2 = [x + (nearest[0] - x) * scale, y + (nearest[1] - y) * scale];
        return { motor: name, ...told, gap: distance - radius, place };
      });
  }
}

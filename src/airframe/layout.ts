import type { Vector3 } from '../numerics/vector3.ts';
import type { FrontSpin, Layout, LayoutParameters, MotorPlace, Point2, Spin } from './types.ts';

/** A motor before it is centred; `angle` layouts give them in order round the nose, rightwards. */
interface Seat {
  readonly name: string;
  readonly at: Point2;
  readonly spin: Spin;
}

const FOUR = ['front right', 'rear right', 'rear left', 'front left'] as const;

/**
 * Where a layout's motors sit and which way they turn.
 *
 * Spins alternate round the craft (common practice: neighbours cancel each other's torque); `inward`,
 * the default, has the front left prop clockwise seen from above. The lower motor of a coaxial pair
 * turns against the upper one. Distances are motor to motor.
 *
 * @throws RangeError when a distance is not positive and finite, or contradicts the layout's name
 *   (a stretched X is longer than wide, a squashed X wider than long, a dead cat wider in front).
 */
export function layoutMotors(parameters: LayoutParameters): Layout {
  const motors = centred(parameters);
  return { kind: parameters.kind, motors, diagonal: largestDistance(motors) };
}

function centred(parameters: LayoutParameters): readonly MotorPlace[] {
  const seats = seatsOf(parameters);
  if (seats.length < 3) throw new RangeError(`motors: a layout needs 3 or more, got ${seats.length}`);
  const names = new Set(seats.map((seat) => seat.name));
  if (names.size < seats.length) throw new RangeError('motors: two motors have the same name');
  const x0 = seats.reduce((sum, seat) => sum + seat.at[0], 0) / seats.length;
  const y0 = seats.reduce((sum, seat) => sum + seat.at[1], 0) / seats.length;
  const spacing = 'discSpacing' in parameters ? positive('discSpacing', parameters.discSpacing) : undefined;
  return seats.flatMap((seat, armIndex): MotorPlace[] => {
    const [x, y] = [seat.at[0] - x0, seat.at[1] - y0];
    const tilts = parameters.kind === 'tri' && seat.name === 'tail';
    if (spacing === undefined) {
      const position: Vector3 = [x, y, 0];
      return [{ name: seat.name, position, spin: seat.spin, armIndex, propSide: 'above', tilts }];
    }
    const above = `${seat.name} above`;
    const below = `${seat.name} below`;
    const opposite: Spin = seat.spin === 1 ? -1 : 1;
    return [
      {
        name: above,
        position: [x, y, -spacing / 2],
        spin: seat.spin,
        armIndex,
        coaxialWith: below,
        propSide: 'above',
        tilts,
      },
      {
        name: below,
        position: [x, y, spacing / 2],
        spin: opposite,
        armIndex,
        coaxialWith: above,
        propSide: 'below',
        tilts,
      },
    ];
  });
}

function seatsOf(p: LayoutParameters): readonly Seat[] {
  switch (p.kind) {
    case 'true X': {
      const side = positive('diagonal', p.diagonal) / Math.SQRT2;
      return four(side, side, side, p.frontSpin);
    }
    case 'stretched X':
    case 'squashed X':
    case 'H':
    case 'X8 coaxial': {
      const width = positive('width', p.width);
      const length = positive('length', p.length);
      if (p.kind === 'stretched X' && !(length > width)) {
        throw new RangeError(`length: a stretched X is longer than its width ${width} m, got ${length} m`);
      }
      if (p.kind === 'squashed X' && !(width > length)) {
        throw new RangeError(`width: a squashed X is wider than its length ${length} m, got ${width} m`);
      }
      return four(width, width, length, p.frontSpin);
    }
    case 'dead cat': {
      const front = positive('frontWidth', p.frontWidth);
      const rear = positive('rearWidth', p.rearWidth);
      if (!(front > rear)) {
        throw new RangeError(
          `frontWidth: a dead cat is wider in front than behind (${rear} m), got ${front} m`,
        );
      }
      return four(front, rear, positive('length', p.length), p.frontSpin);
    }
    case 'plus':
      return round(p.diagonal, 0, ['front', 'right', 'rear', 'left'], p.frontSpin);
    case 'hexa X': {
      const names = ['front right', 'right', 'rear right', 'rear left', 'left', 'front left'];
      return round(p.diagonal, 30, names, p.frontSpin);
    }
    case 'hexa plus': {
      const names = ['front', 'front right', 'rear right', 'rear', 'rear left', 'front left'];
      return round(p.diagonal, 0, names, p.frontSpin);
    }
    case 'octo': {
      const right = ['front right', 'middle front right', 'middle rear right', 'rear right'];
      const left = ['rear left', 'middle rear left', 'middle front left', 'front left'];
      return round(p.diagonal, 22.5, [...right, ...left], p.frontSpin);
    }
    case 'octo plus': {
      const right = ['front', 'front right', 'right', 'rear right'];
      return round(p.diagonal, 0, [...right, 'rear', 'rear left', 'left', 'front left'], p.frontSpin);
    }
    case 'tri':
    case 'Y6 coaxial': {
      const half = positive('frontWidth', p.frontWidth) / 2;
      const length = positive('length', p.length);
      return [
        { name: 'front right', at: [length, half], spin: -1 },
        { name: 'tail', at: [0, 0], spin: 1 },
        { name: 'front left', at: [length, -half], spin: 1 },
      ];
    }
    case 'positions':
      return p.motors.map(({ name, position, spin }) => {
        if (!position.every(Number.isFinite)) throw new RangeError(`motors: ${name} has no finite position`);
        return { name, at: position, spin };
      });
  }
}

function four(frontWidth: number, rearWidth: number, length: number, frontSpin?: FrontSpin): readonly Seat[] {
  const at: readonly Point2[] = [
    [length / 2, frontWidth / 2],
    [-length / 2, rearWidth / 2],
    [-length / 2, -rearWidth / 2],
    [length / 2, -frontWidth / 2],
  ];
  return at.map((point, i) => ({ name: FOUR[i] ?? '', at: point, spin: alternating(i, frontSpin) }));
}

/** Motors evenly on a circle, from `first` degrees right of the nose and on round to the right. */
function round(diagonal: number, first: number, names: readonly string[], frontSpin?: FrontSpin): Seat[] {
  const radius = positive('diagonal', diagonal) / 2;
  return names.map((name, i) => {
    const angle = (first / 180) * Math.PI + (2 * Math.PI * i) / names.length;
    return {
      name,
      at: [radius * Math.cos(angle), radius * Math.sin(angle)],
      spin: alternating(i, frontSpin),
    };
  });
}

const alternating = (i: number, frontSpin: FrontSpin = 'inward'): Spin =>
  (i % 2 === 0) === (frontSpin === 'inward') ? -1 : 1;

function largestDistance(motors: readonly MotorPlace[]): number {
  let largest = 0;
  for (const a of motors) {
    for (const b of motors) {
      largest = Math.max(largest, Math.hypot(a.position[0] - b.position[0], a.position[1] - b.position[1]));
    }
  }
  return largest;
}

function positive(name: string, value: number): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: must be over 0 m, got ${value}`);
  return value;
}

import { rotation3, type Vector3 } from '../../src/numerics/vector3.ts';
import type { Camera, Occluder } from '../../src/view/types.ts';

/**
 * The brute-force judge of `cover`: one ray a sample, met with the true shapes (quadrics, slabs,
 * point-in-polygon), sharing nothing with the code under test but vectors and the input records.
 */
export function castCover(
  camera: Camera,
  occluders: readonly Occluder[],
  opacityOf: (disc: Occluder) => number,
  columns: number,
): { covered: number; touched: number } {
  const rows = Math.round((columns * camera.height) / camera.width);
  const rotation = rotation3(camera.yaw, camera.pitch, camera.roll);
  const focal = focalOf(camera);
  const balls = occluders.map(ballRound);
  let [covered, touched] = [0, 0];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      // Each ray somewhere in its cell (fixed scatter), so that edges along rows average out.
      const [across, down] = scatter(row * columns + column);
      const u = (((column + across) / columns - 0.5) * camera.width) / focal;
      const v = (((row + down) / rows - 0.5) * camera.height) / focal;
      const radius = Math.hypot(u, v);
      const angle =
        camera.lensLaw === 'rectilinear'
          ? Math.atan(radius)
          : camera.lensLaw === 'equidistant'
            ? radius
            : 2 * Math.asin(radius / 2);
      const out = radius > 0 ? Math.sin(angle) / radius : 1;
      const inCamera: Vector3 = [Math.cos(angle), u * out, v * out];
      const ray = rotation.map((line) => dot(line, inCamera)) as unknown as Vector3;
      let passed = 1;
      let free = 1;
      for (const [i, occluder] of occluders.entries()) {
        if (misses(balls[i]!, camera.position, ray)) continue;
        if (!hits(occluder, camera.position, ray)) {
          if (occluder.kind !== 'sweptDisc' || !hubHit(occluder, camera.position, ray)) continue;
        }
        free = 0;
        const opaque = occluder.kind !== 'sweptDisc' || hubHit(occluder, camera.position, ray);
        passed *= opaque ? 0 : 1 - opacityOf(occluder);
        if (passed === 0) break; // nothing behind it changes either sum
      }
      covered += 1 - passed;
      touched += 1 - free;
    }
  }
  return { covered: covered / (rows * columns), touched: touched / (rows * columns) };
}

/** Two numbers in 0 to 1 from the plastic-number sequence (Roberts 2018, from memory). */
function scatter(i: number): [number, number] {
  return [(i * 0.7548776662466927) % 1, (i * 0.5698402909980532) % 1];
}

function focalOf(camera: Camera): number {
  const span = camera.field.across === 'width' ? camera.width : Math.hypot(camera.width, camera.height);
  const half = camera.field.angle / 2;
  const law = camera.lensLaw;
  const g = law === 'rectilinear' ? Math.tan(half) : law === 'equidistant' ? half : 2 * Math.sin(half / 2);
  return span / 2 / g;
}

const dot = (a: Vector3, b: Vector3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const unit = (a: Vector3): Vector3 => {
  const s = Math.sqrt(dot(a, a));
  return [a[0] / s, a[1] / s, a[2] / s];
};
const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

interface Ball {
  readonly centre: Vector3;
  readonly radius: number;
}

/** A ball that holds the whole of an occluder: most rays miss most of them. */
function ballRound(o: Occluder): Ball {
  switch (o.kind) {
    case 'sweptDisc':
      return { centre: o.centre, radius: Math.hypot(Math.max(o.radius, o.hubRadius), o.thickness / 2) };
    case 'ring':
      return { centre: o.centre, radius: Math.hypot(o.outerRadius, o.height / 2) };
    case 'ball':
      return { centre: o.centre, radius: o.radius };
    case 'box':
      return { centre: o.centre, radius: Math.hypot(...o.size) / 2 };
    case 'rod':
      return { centre: middle(o.from, o.to), radius: Math.hypot(...minus(o.to, o.from)) / 2 + o.radius };
    case 'bar': {
      const wide = Math.max(o.widthFrom, o.widthTo);
      const reach = Math.hypot(...minus(o.to, o.from)) / 2;
      return { centre: middle(o.from, o.to), radius: reach + Math.hypot(wide, o.thickness) / 2 };
    }
    case 'plate': {
      const radius = Math.max(...o.outline.map(([x, y]) => Math.hypot(x, y, o.thickness / 2)));
      return { centre: [0, 0, o.z], radius };
    }
  }
}

/** The eye is outside the ball and the ray passes it by, or leads away. */
function misses({ centre, radius }: Ball, eye: Vector3, ray: Vector3): boolean {
  const b = minus(centre, eye);
  const [along, apart] = [dot(b, ray), dot(b, b)];
  const beyond = 1.0001 * radius ** 2;
  return apart > beyond && (along < 0 || apart - along ** 2 > beyond);
}

const middle = (a: Vector3, b: Vector3): Vector3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];

function hubHit(disc: Occluder, eye: Vector3, ray: Vector3): boolean {
  if (disc.kind !== 'sweptDisc' || disc.hubRadius === 0) return false;
  return cylinderHit(disc.centre, disc.axis, disc.hubRadius, disc.thickness, eye, ray);
}

function hits(o: Occluder, eye: Vector3, ray: Vector3): boolean {
  switch (o.kind) {
    case 'sweptDisc':
      return cylinderHit(o.centre, o.axis, o.radius, o.thickness, eye, ray);
    case 'rod': {
      const axis = minus(o.to, o.from);
      const centre: Vector3 = [
        (o.from[0] + o.to[0]) / 2,
        (o.from[1] + o.to[1]) / 2,
        (o.from[2] + o.to[2]) / 2,
      ];
      return cylinderHit(centre, axis, o.radius, Math.hypot(...axis), eye, ray);
    }
    case 'ball': {
      const b = minus(o.centre, eye);
      const along = dot(b, ray);
      const inside = dot(b, b) < o.radius ** 2;
      return inside || (along > 0 && dot(b, b) - along ** 2 < o.radius ** 2);
    }
    case 'box': {
      const m = rotation3(o.turned?.yaw ?? 0, o.turned?.pitch ?? 0, o.turned?.roll ?? 0);
      const inside = (v: Vector3) =>
        [0, 1, 2].map((k) => m[0][k]! * v[0] + m[1][k]! * v[1] + m[2][k]! * v[2]) as unknown as Vector3;
      const e = inside(minus(eye, o.centre));
      const d = inside(ray);
      let [near, far] = [0, Number.POSITIVE_INFINITY];
      for (let k = 0; k < 3; k++) {
        const [a, b] = [(-o.size[k]! / 2 - e[k]!) / d[k]!, (o.size[k]! / 2 - e[k]!) / d[k]!];
        near = Math.max(near, Math.min(a, b));
        far = Math.min(far, Math.max(a, b));
      }
      return near < far;
    }
    case 'bar': {
      // Six planes: n . p <= limit(p) with the sides leaning as the width tapers.
      const along = unit(minus(o.to, o.from));
      const size = Math.hypot(...minus(o.to, o.from));
      const across = unit(cross(o.normal ?? [0, 0, 1], along));
      const up = cross(along, across);
      const e = minus(eye, o.from);
      const [ex, ey, ez] = [dot(e, along), dot(e, across), dot(e, up)];
      const [dx, dy, dz] = [dot(ray, along), dot(ray, across), dot(ray, up)];
      const lean = (o.widthTo - o.widthFrom) / 2 / size;
      const planes: [number, number][] = [
        [-ex, -dx],
        [ex - size, dx],
        [ez - o.thickness / 2, dz],
        [-ez - o.thickness / 2, -dz],
        [ey - o.widthFrom / 2 - lean * ex, dy - lean * dx],
        [-ey - o.widthFrom / 2 - lean * ex, -dy - lean * dx],
      ];
      return insideAll(planes);
    }
    case 'plate':
      return plateHit(o, eye, ray);
    case 'ring':
      return ringHit(o, eye, ray);
  }
}

/** Whether some t > 0 has value + t slope <= 0 for all planes. */
function insideAll(planes: [value: number, slope: number][]): boolean {
  let [near, far] = [0, Number.POSITIVE_INFINITY];
  for (const [value, slope] of planes) {
    if (slope === 0 && value > 0) return false;
    if (slope > 0) far = Math.min(far, -value / slope);
    if (slope < 0) near = Math.max(near, -value / slope);
  }
  return near < far;
}

/** Eye and ray as height along an axis and the rest. */
function about(centre: Vector3, axis: Vector3, eye: Vector3, ray: Vector3) {
  const w = unit(axis);
  const e = minus(eye, centre);
  const [eh, dh] = [dot(e, w), dot(ray, w)];
  const ep: Vector3 = [e[0] - eh * w[0], e[1] - eh * w[1], e[2] - eh * w[2]];
  const dp: Vector3 = [ray[0] - dh * w[0], ray[1] - dh * w[1], ray[2] - dh * w[2]];
  return { eh, dh, ep, dp };
}

/** The t-range inside an endless cylinder, or nothing. */
function tube(radius: number, ep: Vector3, dp: Vector3): [number, number] | undefined {
  const [a, b, c] = [dot(dp, dp), dot(ep, dp), dot(ep, ep) - radius ** 2];
  const root = b * b - a * c;
  if (!(root > 0) || a === 0) return c < 0 && a === 0 ? [-1e9, 1e9] : undefined;
  return [(-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a];
}

function cylinderHit(c: Vector3, axis: Vector3, radius: number, height: number, eye: Vector3, ray: Vector3) {
  const { eh, dh, ep, dp } = about(c, axis, eye, ray);
  if (height === 0) {
    const t = -eh / dh;
    const p = [ep[0] + t * dp[0], ep[1] + t * dp[1], ep[2] + t * dp[2]] as const;
    return t > 0 && dot(p, p) < radius ** 2;
  }
  const round = tube(radius, ep, dp);
  if (!round) return false;
  const [a, b] = [(-height / 2 - eh) / dh, (height / 2 - eh) / dh];
  return Math.max(0, round[0], Math.min(a, b)) < Math.min(round[1], Math.max(a, b));
}

function ringHit(o: Extract<Occluder, { kind: 'ring' }>, eye: Vector3, ray: Vector3): boolean {
  const { eh, dh, ep, dp } = about(o.centre, o.axis, eye, ray);
  const outer = tube(o.outerRadius, ep, dp);
  if (!outer) return false;
  const inner = tube(o.innerRadius, ep, dp);
  const [a, b] = [(-o.height / 2 - eh) / dh, (o.height / 2 - eh) / dh];
  const near = Math.max(0, Math.min(a, b));
  const far = Math.max(a, b);
  const spans: [number, number][] = inner
    ? [
        [outer[0], inner[0]],
        [inner[1], outer[1]],
      ]
    : [outer];
  return spans.some(([from, to]) => Math.max(near, from) < Math.min(far, to));
}

function plateHit(o: Extract<Occluder, { kind: 'plate' }>, eye: Vector3, ray: Vector3): boolean {
  const [low, high] = [o.z - o.thickness / 2, o.z + o.thickness / 2];
  const [a, b] = [(low - eye[2]) / ray[2], (high - eye[2]) / ray[2]];
  const near = Math.max(0, Math.min(a, b));
  const far = Math.max(a, b);
  if (!(near < far)) return false;
  const place = (t: number) => [eye[0] + t * ray[0], eye[1] + t * ray[1]] as const;
  const [p, q] = [place(near), place(Math.min(far, 10))];
  if (insideOutline(o.outline, p) || insideOutline(o.outline, q)) return true;
  return o.outline.some((c, i) => segmentsCross(p, q, c, o.outline[(i + 1) % o.outline.length]!));
}

type Flat = readonly [number, number];

function insideOutline(outline: readonly Flat[], [x, y]: Flat): boolean {
  let inside = false;
  outline.forEach(([x0, y0], i) => {
    const [x1, y1] = outline[(i + 1) % outline.length]!;
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  });
  return inside;
}

function segmentsCross(p: Flat, q: Flat, a: Flat, b: Flat): boolean {
  const side = (s: Flat, t: Flat, r: Flat) => (t[0] - s[0]) * (r[1] - s[1]) - (t[1] - s[1]) * (r[0] - s[0]);
  return side(p, q, a) > 0 !== side(p, q, b) > 0 && side(a, b, p) > 0 !== side(a, b, q) > 0;
}

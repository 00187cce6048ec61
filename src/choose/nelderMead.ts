/** One step of a search, for a trace. */
export interface TracePoint {
  readonly evaluations: number;
  readonly point: readonly number[];
  readonly value: number;
}

export interface Minimum {
  readonly point: readonly number[];
  readonly value: number;
  readonly evaluations: number;
  /** Every improvement of the best, first to last. */
  readonly trace: readonly TracePoint[];
  /** False when it ran out of evaluations first. */
  readonly settled: boolean;
}

/**
 * Least value of a function without derivatives: Nelder and Mead 1965 (Comput. J. 7), with the dimension's
 * parameters of Gao and Han 2012 (Comput. Optim. Appl. 51, eq. 4.1) and one restart from a fresh simplex at
 * the first answer, which guards against a collapsed one. Points are held inside the box; a function may give
 * Infinity where there is nothing. Finds a local minimum: start from where you are.
 *
 * @param start inside the box
 * @param box lowest and highest of each coordinate, highest > lowest
 * @param step first edge of the simplex, as a share of the box
 * @param tolerance settled when the simplex is smaller than this share of the box in every coordinate
 */
export function nelderMead(
  evaluate: (point: readonly number[]) => number,
  start: readonly number[],
  box: readonly (readonly [low: number, high: number])[],
  { step = 0.1, tolerance = 1e-6, most = 2000 } = {},
): Minimum {
  const size = start.length;
  if (size === 0 || box.length !== size) {
    throw new RangeError(`box must hold ${size} ranges for ${size} coordinates; found ${box.length}`);
  }
  const trace: TracePoint[] = [];
  let evaluations = 0;
  const at = (unit: readonly number[]): Vertex => {
    const inside = unit.map((value) => Math.min(1, Math.max(0, value)));
    const point = inside.map((value, k) => {
      const [low, high] = box[k] ?? [0, 1];
      return low + value * (high - low);
    });
    evaluations++;
    const value = evaluate(point);
    if (value < (trace.at(-1)?.value ?? Number.POSITIVE_INFINITY)) trace.push({ evaluations, point, value });
    return { unit: inside, value: Number.isNaN(value) ? Number.POSITIVE_INFINITY : value };
  };
  const first = start.map((value, k) => {
    const [low, high] = box[k] ?? [0, 1];
    if (!(high > low)) throw new RangeError(`box must rise in coordinate ${k}; found ${low} to ${high}`);
    return (value - low) / (high - low);
  });
  const once = descend(at, at(first), step, tolerance, () => evaluations < most);
  const again = descend(at, once.best, step / 2, tolerance, () => evaluations < most);
  const best = trace.at(-1);
  return {
    point: best?.point ?? start,
    value: best?.value ?? Number.POSITIVE_INFINITY,
    evaluations,
    trace,
    settled: again.settled,
  };
}

interface Vertex {
  readonly unit: readonly number[];
  readonly value: number;
}

function descend(
  at: (unit: readonly number[]) => Vertex,
  start: Vertex,
  step: number,
  tolerance: number,
  goesOn: () => boolean,
): { readonly best: Vertex; readonly settled: boolean } {
  const size = start.unit.length;
  const expansion = 1 + 2 / size;
  const contraction = 0.75 - 1 / (2 * size);
  const shrink = 1 - 1 / Math.max(size, 2);
  let simplex = [
    start,
    ...start.unit.map((_, k) =>
      at(start.unit.map((value, j) => (j === k ? value + (value + step <= 1 ? step : -step) : value))),
    ),
  ].sort(byValue);
  while (goesOn()) {
    const [best, worst] = [simplex[0] ?? start, simplex[size] ?? start];
    if (
      simplex.every(({ unit }) =>
        unit.every((value, k) => Math.abs(value - (best.unit[k] ?? 0)) <= tolerance),
      )
    ) {
      return { best, settled: true };
    }
    const others = simplex.slice(0, size);
    const middle = start.unit.map((_, k) => others.reduce((sum, { unit }) => sum + (unit[k] ?? 0), 0) / size);
    const along = (by: number) => at(middle.map((value, k) => value + by * (value - (worst.unit[k] ?? 0))));
    const reflected = along(1);
    const second = others[size - 1] ?? best;
    let next: Vertex | undefined;
    if (reflected.value < best.value) {
      const expanded = along(expansion);
      next = expanded.value < reflected.value ? expanded : reflected;
    } else if (reflected.value < second.value) next = reflected;
    else {
      const contracted = along(reflected.value < worst.value ? contraction : -contraction);
      if (contracted.value < Math.min(reflected.value, worst.value)) next = contracted;
    }
    simplex =
      next === undefined
        ? [
            best,
            ...simplex
              .slice(1)
              .map(({ unit }) =>
                at(unit.map((value, k) => (best.unit[k] ?? 0) + shrink * (value - (best.unit[k] ?? 0)))),
              ),
          ]
        : [...others, next];
    simplex.sort(byValue);
  }
  return { best: simplex[0] ?? start, settled: false };
}

const byValue = (a: Vertex, b: Vertex) => a.value - b.value;

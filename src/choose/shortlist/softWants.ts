/**
 * One thing wanted, and how well a value meets it, 0 to 1, whatever else is on the shelf. A standing that
 * does not hang on the other candidates is what makes bounds, and an order that holds when the list grows.
 */
export interface SoftWant {
  /** Id of a measure. */
  readonly measure: string;
  /** Over the sum of all weights it is the share of the decision, > 0. */
  readonly weight: number;
  readonly scale: Scale;
}

/** SI. Between the two ends in proportion, flat beyond them. */
export type Scale =
  | { readonly kind: 'ramp'; readonly worst: number; readonly best: number }
  /** In full inside, falling to nothing half a window outside. */
  | { readonly kind: 'window'; readonly low: number; readonly high: number }
  /** In full at the target, falling to nothing at the tolerance away. */
  | { readonly kind: 'target'; readonly target: number; readonly tolerance: number };

/** @throws RangeError for a scale without extent or a weight that is not positive */
export function checkWant({ measure, weight, scale }: SoftWant): void {
  if (!(weight > 0 && Number.isFinite(weight))) {
    throw new RangeError(`weight of ${measure} must be above 0; found ${weight}`);
  }
  const extent =
    scale.kind === 'ramp'
      ? Math.abs(scale.best - scale.worst)
      : scale.kind === 'window'
        ? scale.high - scale.low
        : scale.tolerance;
  if (!(extent > 0 && Number.isFinite(extent))) {
    throw new RangeError(`scale of ${measure} must have an extent above 0; found ${extent}`);
  }
}

/** How well a value meets a scale, 0 to 1; infinite values count as beyond the end. */
export function utility(scale: Scale, value: number): number {
  switch (scale.kind) {
    case 'ramp':
      if (value === Number.POSITIVE_INFINITY) return scale.best > scale.worst ? 1 : 0;
      if (value === Number.NEGATIVE_INFINITY) return scale.best > scale.worst ? 0 : 1;
      return clamp((value - scale.worst) / (scale.best - scale.worst));
    case 'window': {
      const outside = Math.max(scale.low - value, value - scale.high, 0);
      return clamp(1 - outside / (0.5 * (scale.high - scale.low)));
    }
    case 'target':
      return clamp(1 - Math.abs(value - scale.target) / scale.tolerance);
  }
}

/**
 * The most a value anywhere between `low` and `high` can be worth. A ramp is best at one end; a window or
 * a target rises and then falls, so its best is the point of the range nearest to its plateau.
 */
export function utilityBound(scale: Scale, low: number, high: number): number {
  switch (scale.kind) {
    case 'ramp':
      return Math.max(utility(scale, low), utility(scale, high));
    case 'window':
      return utility(scale, Math.min(Math.max(scale.low, low), high));
    case 'target':
      return utility(scale, Math.min(Math.max(scale.target, low), high));
  }
}

const clamp = (share: number) => Math.min(1, Math.max(0, share));

/** What a candidate's value of a wanted measure is worth; nothing where it has none. */
export function worthOf({ measure, scale }: SoftWant, values: Readonly<Record<string, number>>): number {
  const value = values[measure];
  return value === undefined || Number.isNaN(value) ? 0 : utility(scale, value);
}

/** Weighted mean of the utilities less the risks' cost: the one formula for a standing and for its bound. */
export function standingOf(
  wants: readonly SoftWant[],
  utilityAt: (want: SoftWant, index: number) => number,
  risks: number,
  riskCost: number,
): number {
  let sum = 0;
  let total = 0;
  for (const [index, want] of wants.entries()) {
    sum += want.weight * utilityAt(want, index);
    total += want.weight;
  }
  return sum / total - riskCost * risks;
}

/** What became of the combinations of a space. Adding two counts adds every number. */
export interface SearchCounts {
  /** Taken out for sure by a rule or a limit without being evaluated, by its name. Does not hang on the order of work. */
  readonly excluded: Readonly<Record<string, number>>;
  /** Taken out because their bound, or that of their like, is below what was found already. */
  readonly bounded: number;
  /** Evaluated in full. */
  readonly evaluated: number;
  /** Of these, what took them out, by name. */
  readonly failed: Readonly<Record<string, number>>;
}

export const NO_COUNTS: SearchCounts = { excluded: {}, bounded: 0, evaluated: 0, failed: {} };

export function addCounts(a: SearchCounts, b: SearchCounts): SearchCounts {
  return {
    excluded: addRecords(a.excluded, b.excluded),
    bounded: a.bounded + b.bounded,
    evaluated: a.evaluated + b.evaluated,
    failed: addRecords(a.failed, b.failed),
  };
}

/** Sorted by name, so that a checkpoint reads the same whatever the order of work. */
function addRecords(
  a: Readonly<Record<string, number>>,
  b: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])].sort();
  return Object.fromEntries(names.map((name) => [name, (a[name] ?? 0) + (b[name] ?? 0)]));
}

/** One kept row and those that are told only as its like. */
export interface Fold {
  /** Index of the row that stands for all. */
  readonly kept: number;
  /** Indices of the others, in order. */
  readonly alike: readonly number[];
}

/**
 * Folds rows that a person could not tell apart: a row whose every column lies within `steps` of one
 * kept before goes with the first such. The best should come first: the first of its like is kept.
 *
 * @param rows equally long rows of numbers
 * @param steps difference a column must reach to count, >= 0, same unit as the column
 */
export function foldAlike(rows: readonly (readonly number[])[], steps: readonly number[]): readonly Fold[] {
  const folds: { kept: number; alike: number[] }[] = [];
  for (const [index, row] of rows.entries()) {
    const like = folds.find(({ kept }) =>
      steps.every((step, column) => Math.abs((rows[kept]?.[column] ?? 0) - (row[column] ?? 0)) <= step),
    );
    if (like === undefined) folds.push({ kept: index, alike: [] });
    else like.alike.push(index);
  }
  return folds;
}

/**
 * The known name nearest to a mistyped one by edit distance (Damerau 1964), case ignored,
 * or undefined when none is near enough to be a slip: more than a third of the name would change, or all of it.
 */
export function nearestName(typed: string, known: readonly string[]): string | undefined {
  const wanted = typed.slice(0, 64).toLowerCase();
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const name of known) {
    const distance = editDistance(wanted, name.toLowerCase());
    if (distance < bestDistance) {
      best = name;
      bestDistance = distance;
    }
  }
  if (best === undefined) return undefined;
  const longest = Math.max(wanted.length, best.length);
  return bestDistance < longest && bestDistance <= Math.ceil(longest / 3) ? best : undefined;
}

/** Smallest number of single letters inserted, deleted, replaced or swapped with its neighbour that turns one text into the other. */
function editDistance(from: string, to: string): number {
  let beforePrevious: number[] = [];
  let previous = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const replaced = (previous[column - 1] ?? 0) + (from[row - 1] === to[column - 1] ? 0 : 1);
      const swappable =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      const swapped = swappable ? (beforePrevious[column - 2] ?? 0) + 1 : replaced;
      current.push(Math.min(replaced, swapped, (previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    beforePrevious = previous;
    previous = current;
  }
  return previous[to.length] ?? 0;
}

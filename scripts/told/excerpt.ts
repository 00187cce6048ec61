/** Stands for lines left out of what a command printed. */
const LEFT_OUT = '…';

/** How much of its words a line must share with the one it was to be taken for it. */
const ALIKE = 0.5;

export interface Excerpt {
  readonly lines: readonly string[];
  /** Shown lines that nothing printed is like. */
  readonly lost: readonly string[];
}

/**
 * The lines of `printed` that a page shows, as they are printed now: each shown line is taken for the next printed one
 * that reads alike but for its numbers, or else is the row of its name, or has most words in common with it. Where lines are left out stands `…`;
 * blank lines and the rules under a table's head stay.
 */
export function excerptOf(shown: readonly string[], printed: string): Excerpt {
  const fresh = printed.replace(/\n+$/, '').split('\n');
  const lines: string[] = [];
  const lost: string[] = [];
  let next = 0;
  for (const line of shown) {
    if (line === LEFT_OUT) continue;
    const at = likest(line, fresh, next);
    if (at === undefined) {
      lost.push(line);
      continue;
    }
    const between = fresh.slice(next, at);
    if (between.every((each) => /^[- ]*$/.test(each))) lines.push(...between);
    else lines.push(LEFT_OUT);
    lines.push((fresh[at] ?? '').trimEnd());
    next = at + 1;
  }
  if (next < fresh.length) lines.push(LEFT_OUT);
  return { lines, lost };
}

function likest(line: string, fresh: readonly string[], from: number): number | undefined {
  const shape = shapeOf(line);
  const same = fresh.findIndex((each, i) => i >= from && shapeOf(each) === shape);
  if (same >= 0) return same;
  const label = labelOf(line);
  const row = fresh.findIndex((each, i) => i >= from && label !== '' && labelOf(each) === label);
  if (row >= 0) return row;
  let best: number | undefined;
  let most = ALIKE;
  for (let i = from; i < fresh.length; i++) {
    const share = inCommon(shape, shapeOf(fresh[i] ?? ''));
    if (share > most) [best, most] = [i, share];
  }
  return best;
}

/** First cell of a row of a table that has others, if it is words. */
const labelOf = (line: string): string => line.match(/^ *([A-Za-z].*?) {2}/)?.[1] ?? '';

/** Words without numbers, marks and the width of columns. */
const shapeOf = (line: string): string =>
  line
    .replace(/-?\d[\d.]*/g, '#')
    .replace(/[*]+/g, ' ')
    .replace(/-{2,}/g, '-')
    .replace(/\s+/g, ' ')
    .trim();

/** Share of words that two lines have in common (Dice's), 0 to 1. */
function inCommon(one: string, other: string): number {
  const [a, b] = [one, other].map((text) => text.split(' ').filter((word) => word !== '#' && word !== ''));
  if (a === undefined || b === undefined || a.length + b.length === 0) return 0;
  const left = [...b];
  let both = 0;
  for (const word of a) {
    const at = left.indexOf(word);
    if (at < 0) continue;
    left.splice(at, 1);
    both++;
  }
  return (2 * both) / (a.length + b.length);
}

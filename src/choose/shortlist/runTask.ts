import { type Archive, costsOf, EMPTY_ARCHIVE, frontIsAhead, mergeFront, mergeTop } from './archive.ts';
import { frontBound, standingBound } from './bounds.ts';
import { addCounts, type SearchCounts } from './counts.ts';
import { evaluate } from './evaluate.ts';
import { type Leaf, leavesOf, refined } from './leaves.ts';
import { type Node, nodesOf } from './nodes.ts';
import type { SearchTask } from './prepare.ts';
import type { Searcher } from './searcher.ts';
import { choiceAt } from './tables.ts';
import { countsOf, newTally, type Tally } from './tally.ts';
import { keyOf, type Scored } from './types.ts';

/** What is known already when a piece of work begins: only what beats or equals it matters. */
export interface Bar {
  /** Of the last of a full list; -Infinity while the list is not full. */
  readonly standing: number;
  /** Costs of the front so far. */
  readonly front: readonly (readonly number[])[];
}

export interface TaskResult extends Archive {
  readonly counts: SearchCounts;
}

/**
 * Everything that a frame with a motor can become, by branch and bound (Land and Doig 1960): propellers and
 * packs that fit make nodes; a node's bound over all boards and cameras is computed from sums and drive points;
 * nodes are opened best bound first, their leaves best bound first, and only leaves that may still count
 * are evaluated. A bound equal to the bar is opened, so ties are decided by the key and never by luck.
 */
export function runTask(searcher: Searcher, task: SearchTask, bar: Bar, promised: Promised): TaskResult {
  const { prepared } = searcher;
  const { question } = prepared;
  const tally = newTally();
  const worthwhile = new Set(
    promised.nodes.flatMap(([order, standing]) =>
      question.front.length > 0 || standing >= bar.standing ? [order] : [],
    ),
  );
  // What surely breaks a rule is counted in the promise already, and so are all leaves, as bounded.
  const nodes = nodesOf(searcher, task, newTally(), (order) => worthwhile.has(order))
    .map((node) => ({ node, bound: standingBound(question, node.ranges) }))
    .sort((a, b) => b.bound - a.bound || a.node.order - b.node.order);
  let found: Archive = EMPTY_ARCHIVE;
  let least = bar.standing;
  let front = bar.front;
  for (const { node, bound } of nodes) {
    if (hopeless(bound, least, frontBound(question, node.ranges), front, question.front.length)) {
      continue;
    }
    const scored = openNode(searcher, node, least, front, tally);
    if (scored.length === 0) continue;
    found = {
      top: mergeTop(found.top, scored, question.top),
      front: mergeFront(found.front, scored, question.front),
    };
    const last = found.top[question.top - 1];
    if (last !== undefined) least = Math.max(least, last.standing);
    front = [...bar.front, ...found.front.map((each) => costsOf(each, question.front))];
  }
  const { counts } = promised;
  return {
    ...found,
    counts: addCounts({ ...counts, bounded: counts.bounded - tally.evaluated }, countsOf(tally)),
  };
}

/** What bounds alone say of a task. */
export interface Promised {
  /** No combination of it stands higher. */
  readonly standing: number;
  /** The same for every node that is left, with its `order`. */
  readonly nodes: readonly (readonly [order: number, standing: number])[];
  /** What becomes of its combinations should it not be worth opening. */
  readonly counts: SearchCounts;
}

/** Bounds a task: the most promising first raises the bar for all others, and what is under it is never opened. */
export function promiseOf(searcher: Searcher, task: SearchTask): Promised {
  const { question } = searcher.prepared;
  const tally = newTally();
  const nodes = nodesOf(searcher, task, tally).map((node) => {
    tally.bounded += node.finishes.length;
    return [node.order, standingBound(question, node.ranges)] as const;
  });
  const standing = nodes.reduce((most, [, each]) => Math.max(most, each), Number.NEGATIVE_INFINITY);
  return { standing, nodes, counts: countsOf(tally) };
}

/** Whether nothing below can enter the list, nor the front. */
function hopeless(
  bound: number,
  least: number,
  corner: readonly number[],
  front: readonly (readonly number[])[],
  measures: number,
): boolean {
  return bound < least && (measures === 0 || frontIsAhead(front, corner));
}

interface Waiting {
  readonly leaf: Leaf;
  readonly bound: number;
  readonly corner: readonly number[];
  readonly key: string;
  readonly refined: boolean;
}

/**
 * The best leaf of a node, and whatever else belongs on the front: best bound first, a leaf being refined the
 * first time it comes up and evaluated the second.
 */
function openNode(
  searcher: Searcher,
  node: Node,
  least: number,
  front: readonly (readonly number[])[],
  tally: Tally,
): readonly Scored[] {
  const { prepared, context } = searcher;
  const { question } = prepared;
  const waitingOf = (leaf: Leaf, isRefined: boolean): Waiting => ({
    leaf,
    bound: standingBound(question, leaf.ranges),
    corner: frontBound(question, leaf.ranges),
    key: keyOf(choiceAt(question.space, leaf.place)),
    refined: isRefined,
  });
  const queue = leavesOf(prepared, node)
    .map((leaf) => waitingOf(leaf, false))
    .sort(bestFirst);
  const scored: Scored[] = [];
  let best: Scored | undefined;
  let ahead = front;
  for (let item = queue.shift(); item !== undefined; item = queue.shift()) {
    const needed = Math.max(least, best?.standing ?? Number.NEGATIVE_INFINITY);
    if (hopeless(item.bound, needed, item.corner, ahead, question.front.length)) continue;
    if (!item.refined) {
      const leaf = refined(searcher, node, item.leaf);
      if (leaf !== undefined) insert(queue, waitingOf(leaf, true));
      continue;
    }
    tally.evaluated++;
    const forFront = question.front.length > 0 && !frontIsAhead(ahead, item.corner);
    const choice = choiceAt(question.space, item.leaf.place);
    const verdict = evaluate(question, choice, context, (standing) => forFront || standing >= needed);
    if (!verdict.ok) {
      tally.failed.set(verdict.because, (tally.failed.get(verdict.because) ?? 0) + 1);
      continue;
    }
    scored.push(verdict.scored);
    ahead = [...ahead, costsOf(verdict.scored, question.front)];
    const better = best === undefined || verdict.scored.standing > best.standing;
    const tied = best?.standing === verdict.scored.standing && verdict.scored.key < best.key;
    if (better || tied) best = verdict.scored;
  }
  return scored;
}

const bestFirst = (a: Waiting, b: Waiting) => b.bound - a.bound || (a.key < b.key ? -1 : 1);

function insert(queue: Waiting[], item: Waiting): void {
  const at = queue.findIndex((other) => bestFirst(item, other) < 0);
  queue.splice(at < 0 ? queue.length : at, 0, item);
}

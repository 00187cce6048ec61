import { costLines } from '../../assess/money/costLines.ts';
import type { Ranges } from './bounds.ts';
import { surelyBroken } from './bounds.ts';
import { budgetOf } from './evaluate.ts';
import type { Finish } from './finishes.ts';
import { driveOf, heldAgainst, type Node } from './nodes.ts';
import { armEndsOf, finishEndsOf } from './openEnds.ts';
import { CURRENT_RULES, FINISH_CURRENT_RULES } from './pairRules.ts';
import type { PreparedSearch } from './prepare.ts';
import { probeOf } from './probe.ts';
import type { Searcher } from './searcher.ts';
import { choiceAt, type Place } from './tables.ts';

/** One combination, whole, with what is known of it before it is evaluated. */
export interface Leaf {
  readonly place: Place;
  readonly finish: Finish;
  readonly ranges: Ranges;
}

/** A node's finishes as leaves: mass exact, money at least, drive bounds of the node. */
export function leavesOf(prepared: PreparedSearch, node: Node): readonly Leaf[] {
  const { controllers } = prepared.electric;
  const peak = node.ranges.drive?.motorCurrent ?? 0;
  return node.finishes.flatMap((finish): readonly Leaf[] => {
    // The rule `controller-current` stops over the burst rating; the peak here is the least any finish draws.
    if (peak > (controllers[finish.electronics]?.burstCurrent ?? Number.POSITIVE_INFINITY)) {
      return [];
    }
    const mass = node.mass + finish.mass;
    const ranges: Ranges = {
      ...node.ranges,
      mass: [mass * (1 - 1e-12), mass * (1 + 1e-12)],
      cost: node.cost + finish.cost,
      risks: node.ranges.risks - node.leastFinishRisks + finish.risks,
    };
    const broken = surelyBroken(prepared.question, ranges);
    if (broken !== undefined) return [];
    const place = { ...node.place, electronics: finish.electronics, camera: finish.camera };
    return [{ finish, place, ranges }];
  });
}

/**
 * A leaf with its money exact and drive bounds of its own electronics and mass: an eighth of the work of
 * evaluating it, and close to what that will say. Undefined when it surely breaks a limit.
 */
export function refined(searcher: Searcher, node: Node, leaf: Leaf): Leaf | undefined {
  const { prepared, context } = searcher;
  const { question } = prepared;
  const base = prepared.crafts[leaf.place.frame];
  const rotor = prepared.rotors[leaf.place.propeller];
  const facts = prepared.motorFacts[leaf.place.motor];
  if (base === undefined || facts === undefined) return undefined;
  const choice = choiceAt(question.space, leaf.place);
  const probe = probeOf(base, question.template, choice, context.shelf, rotor, facts);
  const { lines, owned } = costLines(probe, context.brief, context.shelf);
  const cost = lines.reduce(
    (sum, { id, count, unitPrice }) => (owned.has(id) ? sum : sum + count * unitPrice),
    0,
  );
  if (cost > budgetOf(context) * (1 + 1e-12)) return undefined;
  const open = {
    arms: armEndsOf(probe, facts.leadArea),
    finish: finishEndsOf(prepared, context, leaf.place.pack, probe, [leaf.finish]),
  };
  const drive = driveOf(searcher, probe, open, leaf.ranges);
  if (drive === undefined) return undefined;
  const held = heldAgainst([...CURRENT_RULES, ...FINISH_CURRENT_RULES], probe, drive, context);
  if (held.stop !== undefined) return undefined;
  const risks = node.risks + leaf.finish.risks + held.risks;
  const ranges: Ranges = { ...leaf.ranges, cost: cost * (1 - 1e-12), risks, drive };
  return surelyBroken(question, ranges) === undefined ? { ...leaf, ranges } : undefined;
}

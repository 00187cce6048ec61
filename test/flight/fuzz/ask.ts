import { forwardCraft, forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { topSpeed } from '../../../src/flight/forward/speeds.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { pointForThrottles } from '../../../src/flight/operatingPoint.ts';
import { agility } from '../../../src/flight/reserve/agility.ts';
import { motorOut } from '../../../src/flight/reserve/motorOut.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import type { Outcome } from '../../../src/numerics/outcome.ts';
import type { AnyBuild } from './anyBuild.ts';

const questions: Readonly<Record<string, (build: AnyBuild) => Outcome<unknown>>> = {
  'hover story': ({ model, style }) => hoverStory(model, neutralLevers, [style]),
  'at throttles': ({ model, throttles, charge, climb }) =>
    pointForThrottles(model, neutralLevers, throttles, { charge, climb }),
  'level flight': ({ model, drag, speed, charge }) => {
    const craft = forwardCraft(model, neutralLevers, drag);
    return craft.ok ? forwardPoint(craft.value, speed, charge) : craft;
  },
  'top speed': ({ model, drag, charge }) => {
    const craft = forwardCraft(model, neutralLevers, drag);
    return craft.ok ? topSpeed(craft.value, charge) : craft;
  },
  agility: ({ model, inertia, charge }) => {
    const found = agility(model, inertia, neutralLevers, { charge });
    return found.ok ? { ok: true, value: [found.value, motorOut(found.value.onBus.model)] } : found;
  },
};

/** What became of one question. */
export type Answer = 'solved' | { readonly whyNot: string } | { readonly fault: string };

/** Asks a build everything; an exception, a number that is none, or a reason without words is a fault. */
export function askAll(build: AnyBuild): ReadonlyMap<string, Answer> {
  return new Map(
    Object.entries(questions).map(([name, ask]): readonly [string, Answer] => {
      try {
        const outcome = ask(build);
        if (!outcome.ok) return [name, worded(outcome.reason)];
        const bad = oddNumber(outcome.value, '');
        return [name, bad === undefined ? 'solved' : { fault: `${bad} is not finite` }];
      } catch (error) {
        return [name, { fault: String(error) }];
      }
    }),
  );
}

const worded = (reason: string): Answer =>
  reason.length > 15 && !/NaN|undefined|Infinity/.test(reason)
    ? { whyNot: reason }
    : { fault: `no words: ${reason}` };

/** Path of the first number that is not finite; a motor may never reach its limit. */
function oddNumber(value: unknown, path: string): string | undefined {
  if (typeof value === 'number') {
    return Number.isFinite(value) || (path.endsWith('timeToLimit') && value > 0) ? undefined : path;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  if (value instanceof Map) return oddNumber([...value], path);
  for (const [key, inner] of Object.entries(value)) {
    // What was asked, not what was found.
    if (key === 'model' || key === 'levers') continue;
    const bad = oddNumber(inner, `${path}.${key}`);
    if (bad !== undefined) return bad;
  }
  return undefined;
}

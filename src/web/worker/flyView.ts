import { fly } from '../../assess/fly/fly.ts';
import { prepareFlight } from '../../assess/prepareFlight.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Shelf } from '../../build/shelf.ts';
import { sectionTables } from '../../rotor/sections.ts';
import type { FlyAsk, FlyView } from './flyProtocol.ts';

/**
 * Flies one scene of a build in the brief's wind.
 *
 * @param tell is given the share that is done, 0 to 1
 */
export function flyView(
  { build, brief, scene, seed }: FlyAsk,
  shelf: Shelf,
  tell: (share: number) => void,
): FlyView {
  const craft = resolveBuild(build, shelf);
  if (!craft.ok) return { ok: false, reason: 'it makes no aircraft as it is' };
  const flight = prepareFlight(craft.value, { brief, sections: sectionTables() }, true);
  if (!flight.ok) return { ok: false, reason: 'it has no hover; the lift sheet says why' };
  const context = { craft: craft.value, flight: flight.value };
  const flying = fly(context, { scene, seed, wind: brief.site.wind.value });
  let step = flying.next();
  while (step.done !== true) {
    tell(step.value);
    step = flying.next();
  }
  const found = step.value;
  return found.ok ? { ok: true, flown: found.value } : { ok: false, reason: found.reason };
}

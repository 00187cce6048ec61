import type { Air } from '../air/standardAtmosphere.ts';
import type { Craft, CraftRotor } from '../build/craft.ts';
import type { ObliqueRead, RotorRead } from '../flight/types.ts';
import { type Outcome, solved } from '../numerics/outcome.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../rotor/rotorMap.ts';
import type { SectionTables } from '../rotor/sections.ts';
import type { MapDetail, RotorMap } from '../rotor/types.ts';

/** One propeller made ready in one air: dear to make, so made once and handed to every assessment. */
export interface PreparedRotor {
  /** With its blade matched to measured points, which is dear as well. */
  readonly facts: CraftRotor;
  readonly read: RotorRead;
  /** What `read` reads. */
  readonly map: RotorMap;
  /** Along its disc, once `rotorsAtSpeed` has made it. */
  readonly oblique?: ObliqueRead;
}

/** Propellers by part id, all in one air and from one shelf. */
export type PreparedRotors = ReadonlyMap<string, PreparedRotor>;

/** Maps of every propeller of a craft that `ready` does not hold yet, beside those it holds. */
export function prepareRotors(
  craft: Craft,
  air: Air,
  sections: SectionTables,
  ready: PreparedRotors = new Map(),
  detail: MapDetail = 'full',
): Outcome<PreparedRotors> {
  const all = new Map(ready);
  for (const facts of craft.rotors) {
    if (all.has(facts.partId)) continue;
    const map = buildRotorMap(facts.blade, sections, air, detail);
    if (!map.ok) return map;
    const reading = emptyReading();
    all.set(facts.partId, {
      facts,
      map: map.value,
      read: (angularSpeed, axialSpeed, out) => {
        readRotorMap(map.value, angularSpeed, axialSpeed, air, reading);
        out.thrust = reading.thrust;
        out.torque = reading.torque;
      },
    });
  }
  return solved(all);
}

import type { Air } from '../../air/standardAtmosphere.ts';
import type { PreparedRotor, PreparedRotors } from '../../assess/prepareRotors.ts';
import type { CraftRotor } from '../../build/craft.ts';
import { rotorFacts } from '../../build/infer/rotorFacts.ts';
import type { PartOf } from '../../build/schema/part.ts';
import { type Outcome, solved } from '../../numerics/outcome.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../../rotor/rotorMap.ts';
import type { SectionTables } from '../../rotor/sections.ts';
import type { RotorMap } from '../../rotor/types.ts';

/** A propeller's map with its facts: plain data, so that one worker makes it and all can read it. */
export interface MappedRotor {
  readonly facts: CraftRotor;
  readonly map: RotorMap;
}

/** Some fifty milliseconds a propeller: made once for a search, in any worker. */
export function mapRotor(
  part: PartOf<'propeller'>,
  air: Air,
  sections: SectionTables,
  facts: CraftRotor = rotorFacts(part),
): Outcome<MappedRotor> {
  const map = buildRotorMap(facts.blade, sections, air, 'full');
  return map.ok ? solved({ facts, map: map.value }) : map;
}

/** Readers over maps, as `prepareRotors` makes them: the same numbers to the last bit. */
export function rotorsOfMaps(maps: readonly MappedRotor[], air: Air): PreparedRotors {
  return new Map(
    maps.map(({ facts, map }): [string, PreparedRotor] => {
      const own = { ...map, air };
      const reading = emptyReading();
      return [
        facts.partId,
        {
          facts,
          map: own,
          read: (angularSpeed, axialSpeed, out) => {
            readRotorMap(own, angularSpeed, axialSpeed, air, reading);
            out.thrust = reading.thrust;
            out.torque = reading.torque;
          },
        },
      ];
    }),
  );
}

import type { Air } from '../air/standardAtmosphere.ts';
import { standardAtmosphere } from '../air/standardAtmosphere.ts';
import type { Craft } from '../build/craft.ts';
import type { PartOf } from '../build/schema/part.ts';
import type { RotorRead } from '../flight/types.ts';
import { type Outcome, solved } from '../numerics/outcome.ts';
import { fitBlade } from '../rotor/fitBlade.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../rotor/rotorMap.ts';
import type { SectionTables } from '../rotor/sections.ts';
import type { Blade, MapDetail } from '../rotor/types.ts';

/** One propeller made ready in one air: dear to make, so made once and handed to every assessment. */
export interface PreparedRotor {
  readonly blade: Blade;
  readonly read: RotorRead;
}

/** Propellers by part id, all in one air. */
export type PreparedRotors = ReadonlyMap<string, PreparedRotor>;

/**
 * Maps of every propeller of a craft that `ready` does not hold yet. A propeller with measured points is
 * calibrated on them first; a calibration that fails is a reason in words, not a quiet fallback.
 */
export function prepareRotors(
  craft: Craft,
  air: Air,
  sections: SectionTables,
  ready: PreparedRotors = new Map(),
  detail: MapDetail = 'full',
): Outcome<PreparedRotors> {
  const all = new Map(ready);
  for (const rotor of craft.rotors) {
    if (all.has(rotor.partId)) continue;
    const part = craft.parts.propellers.find((each) => each.id === rotor.partId);
    const blade = part === undefined ? solved(rotor.blade) : calibrated(rotor.blade, part, sections);
    if (!blade.ok) return blade;
    const map = buildRotorMap(blade.value, sections, air, detail);
    if (!map.ok) return map;
    const { value } = map;
    const reading = emptyReading();
    all.set(rotor.partId, {
      blade: blade.value,
      read: (angularSpeed, axialSpeed, out) => {
        readRotorMap(value, angularSpeed, axialSpeed, air, reading);
        out.thrust = reading.thrust;
        out.torque = reading.torque;
      },
    });
  }
  return solved(all);
}

function calibrated(blade: Blade, part: PartOf<'propeller'>, sections: SectionTables): Outcome<Blade> {
  if (part.measured.length === 0) return solved(blade);
  const air = standardAtmosphere({ height: 0 });
  const fitted = fitBlade(
    blade,
    sections,
    part.measured.map((point) => ({ ...point, air })),
  );
  return fitted.ok ? fitted : { ok: false, reason: `${part.name}: its measured points: ${fitted.reason}` };
}

import type { Air } from '../air/standardAtmosphere.ts';
import type { Craft } from '../build/craft.ts';
import type { SectionTables } from '../rotor/sections.ts';
import type { RotorDoubt } from './levers.ts';
import type { PreparedRotor } from './prepareRotors.ts';

/** How far thrust and torque of a propeller may be off at a speed in static work [rad/s]. */
export function rotorDoubt(
  craft: Craft,
  rotor: PreparedRotor,
  _sections: SectionTables,
  _air: Air,
  _angularSpeed: number,
): RotorDoubt {
  const { blade } = rotor.facts;
  const of = (lever: string) => craft.unknowns.find((unknown) => unknown.lever === lever);
  return {
    thrust: blade.anchored ? 0.055 : (of('thrustScale')?.deviation ?? 0.2),
    torque: blade.anchored ? 0.06 : (of('torqueScale')?.deviation ?? 0.2),
    correlation: 0.6,
    trust: blade.anchored ? 'measured' : (of('thrustScale')?.trust ?? 'inferred'),
    knownBy: blade.anchored ? `${blade.knownBy} and a measured point` : blade.knownBy,
  };
}

import { DIMENSIONS, type Dimension, type Unit } from '../../units/dimensions.ts';
import type { UnitSystem } from '../../units/shownUnits.ts';

interface EntryUnit {
  readonly text: string;
  readonly shown: (value: number) => number;
  readonly meant: (number: number) => number;
}

/** The units in which a brief is typed. */
export function entryUnits(system: UnitSystem) {
  const metric = system === 'metric';
  return {
    speed: unitOf('speed', metric ? 'm/s' : 'mph'),
    height: unitOf('length', metric ? 'm' : 'ft'),
    mass: unitOf('mass', metric ? 'g' : 'oz'),
    temperature: unitOf('temperature', metric ? 'degC' : 'degF'),
  };
}

function unitOf(dimension: Dimension, text: string): EntryUnit {
  const units: readonly Unit[] = DIMENSIONS[dimension].units;
  const unit = units.find((each) => each.text === text);
  if (unit === undefined) throw new RangeError(`unit: ${dimension} has no unit ${text}`);
  const offset = unit.offset ?? 0;
  return {
    text,
    shown: (value) => value / unit.factor - offset,
    meant: (number) => (number + offset) * unit.factor,
  };
}

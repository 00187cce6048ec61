import { DIMENSIONS, type Dimension, type Unit } from './dimensions.ts';

/** [m/s2], exact (ISO 80000-3). */
const STANDARD_GRAVITY = 9.80665;

export type UnitSystem = 'metric' | 'imperial';

/** The kinds of quantity a face shows; SI inside. */
export type ShownQuantity =
  | 'mass'
  | 'length'
  | 'force'
  | 'torque'
  | 'time'
  | 'speed'
  | 'angle'
  | 'angularSpeed'
  | 'angularAcceleration'
  | 'current'
  | 'voltage'
  | 'power'
  | 'energy'
  | 'temperature'
  | 'frequency'
  | 'inertia'
  | 'money'
  | 'share'
  | 'ratio'
  | 'acceleration'
  | 'pixels'
  | 'count';

interface Shown {
  readonly text: string;
  readonly convert: (value: number) => number;
}

/** The trade's unit for a quantity of this size, and the way into it from SI. */
export function shownIn(
  quantity: ShownQuantity,
  value: number,
  options: { readonly system?: UnitSystem; readonly currency?: string },
): Shown {
  const size = Math.abs(value);
  const metric = options.system !== 'imperial';
  switch (quantity) {
    case 'mass':
      return metric ? unit('mass', size < 1 ? 'g' : 'kg') : unit('mass', size < 0.45 ? 'oz' : 'lb');
    case 'length':
      return metric
        ? unit('length', size < 1 ? 'mm' : size < 2000 ? 'm' : 'km')
        : unit('length', size < 0.6 ? 'in' : size < 1600 ? 'ft' : 'mi');
    case 'force':
      return unit('force', 'gf');
    case 'torque':
      return unit('torque', 'N m');
    case 'time':
      return unit(
        'time',
        size > 0 && size < 0.5
          ? 'ms'
          : size < 120
            ? 's'
            : size < 3 * 3600
              ? 'min'
              : size < 48 * 3600
                ? 'h'
                : 'days',
      );
    case 'speed':
      return unit('speed', metric ? 'm/s' : 'mph');
    case 'angle':
      return unit('angle', 'deg');
    case 'angularSpeed':
      // Bodies turn slower than this, shafts faster.
      return unit('angularSpeed', size < 50 ? 'deg/s' : 'rpm');
    case 'angularAcceleration':
      return { text: 'deg/s2', convert: (each) => (each * 180) / Math.PI };
    case 'current':
      return unit('current', size < 0.1 ? 'mA' : 'A');
    case 'voltage':
      return unit('voltage', 'V');
    case 'power':
      return unit('power', size < 0.5 ? 'mW' : size < 2000 ? 'W' : 'kW');
    case 'energy':
      return unit('energy', size < 360 ? 'J' : 'Wh');
    case 'temperature':
      return unit('temperature', metric ? 'degC' : 'degF');
    case 'frequency':
      return unit('frequency', size < 2000 ? 'Hz' : size < 2e6 ? 'kHz' : size < 2e9 ? 'MHz' : 'GHz');
    case 'inertia':
      return { text: 'kg cm2', convert: (each) => each * 1e4 };
    case 'acceleration':
      return { text: 'g', convert: (each) => each / STANDARD_GRAVITY };
    case 'pixels':
      return { text: 'px', convert: (each) => each };
    case 'money':
      return { text: options.currency ?? '', convert: (each) => each };
    case 'share':
      return unit('share', '%');
    case 'ratio':
    case 'count':
      return { text: '', convert: (each) => each };
  }
}

function unit(dimension: Dimension, text: string): Shown {
  const units: readonly Unit[] = DIMENSIONS[dimension].units;
  const found = units.find((each) => each.text === text);
  if (!found) throw new RangeError(`unit: ${dimension} has no unit ${text}`);
  return { text, convert: (value) => value / found.factor - (found.offset ?? 0) };
}

import type { Trusted } from '../units/trusted.ts';
import { chemistries } from './chemistry.ts';
import type { Chemistry, PackModel } from './types.ts';

/** What a pack's label says. */
export interface PackNameplate {
  readonly chemistry: Chemistry;
  /** Cells in series, and rows of them side by side, 1 or more. */
  readonly series: number;
  readonly parallel: number;
  /** Of the whole pack [C]. */
  readonly capacity: number;
  /** Continuous rating on the label in multiples of the capacity per hour; for Li-ion cell amps / Ah. */
  readonly labelRate: number;
  /** [kg]; from the chemistry's energy per mass when absent. */
  readonly mass?: number;
  /** Measured resistance of the whole pack [ohm], warm. */
  readonly resistance?: Trusted;
  /** Charges behind it; a new one when absent. */
  readonly cycles?: number;
}

export interface PackGuess {
  readonly resistance: Trusted;
  readonly continuousCurrent: Trusted;
  readonly model: PackModel;
}

/** Sustained drop of a cell at its honest continuous current [V] (common practice, no source). */
const HONEST_DROP = 0.35;
/** However bold the label, no cell is better than this times its amp-hours [ohm Ah]. */
const BEST_RESISTANCE = 0.0045;

/**
 * A pack from its label. Pouch cells' ratings are halved (common practice, no source); round cells' amps
 * are taken as told. A cell drops about 0.35 V at its honest current, which gives its resistance,
 * +-30 % (one standard deviation). A resistance read by a charger holds only the fast part at 1 kHz: pass it
 * as `resistance` only when it was taken from the sag under a load of some seconds.
 */
export function packFromNameplate(plate: PackNameplate): PackGuess {
  const { chemistry, series, parallel, capacity, labelRate } = plate;
  if (!(series >= 1 && parallel >= 1)) {
    throw new RangeError(`series and parallel must be at least 1; found ${series} and ${parallel}`);
  }
  if (!(capacity > 0)) throw new RangeError(`capacity must be above 0 C; found ${capacity} C`);
  if (!(labelRate > 0)) throw new RangeError(`labelRate must be above 0; found ${labelRate}`);
  const facts = chemistries[chemistry];
  const ampHours = capacity / 3600;
  const honestRate = chemistry === 'Li-ion' ? labelRate : labelRate / 2;
  const honestCurrent = honestRate * ampHours;
  const groupResistance = Math.max(HONEST_DROP / honestCurrent, BEST_RESISTANCE / ampHours);
  const resistance: Trusted = plate.resistance ?? {
    value: series * groupResistance,
    deviation: 0.3 * series * groupResistance,
    trust: 'inferred',
    source: 'drop of 0.35 V a cell at half the label rating (common practice, no source)',
  };
  const current = Math.min(honestCurrent, HONEST_DROP / groupResistance);
  const mass = plate.mass ?? (capacity * series * facts.nominalVoltage) / facts.specificEnergy;
  return {
    resistance,
    continuousCurrent: {
      value: current,
      deviation: (chemistry === 'Li-ion' ? 0.1 : 0.25) * current,
      trust: 'inferred',
      source: 'label rating, halved for pouch cells (common practice, no source)',
    },
    model: {
      chemistry,
      series,
      parallel,
      capacity,
      resistance: resistance.value,
      slowShare: 0.4,
      polarisationTime: 30,
      continuousCurrent: current,
      cycles: plate.cycles ?? 0,
      cutOffCellVoltage: facts.cutOffVoltage,
      heatCapacity: 1000 * mass,
    },
  };
}

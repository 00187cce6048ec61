/** The packs of a session and what charges them. */
export interface ChargingRequest {
  /** Cells in series, whole number >= 1. */
  readonly cells: number;
  /** Charge of one pack [C]; 1 Ah is 3600 C. */
  readonly capacity: number;
  /** Charging current over capacity [1/h], the trade's C-rate; 1 is the careful one. */
  readonly rate: number;
  /** Packs flown in a session, and how many charge at once; whole numbers >= 1. */
  readonly packs: number;
  readonly atOnce: number;
  /** Share of the charge flown out, 0 to 1. */
  readonly usedShare: number;
  /** Largest power the charger gives [W]; Infinity where it does not bind. */
  readonly chargerPower: number;
}

export interface Charging {
  /** Asked for one pack and for those charging at once, at full cells [W]. */
  readonly powerOnePack: number;
  readonly power: number;
  /** The rate the charger can really hold [1/h]. */
  readonly rate: number;
  /** One round, and all packs [s]. */
  readonly roundTime: number;
  readonly sessionTime: number;
  readonly limitedBy: 'rate' | 'charger';
}

const FULL_CELL = 4.2; // [V], end of charge of an ordinary lithium polymer cell; common practice, no source
/**
 * The current falls off towards the end while the voltage is held; the last stretch takes as long as
 * this share of a full charge at the even rate would. Common practice, no source.
 */
const TAPER = 0.2;

/**
 * Power and time that charging asks for: W = S x 4.2 V x Ah x C-rate for each pack on the charger.
 *
 * @throws RangeError for values out of range
 */
export function charging(request: ChargingRequest): Charging {
  const { cells, capacity, rate, packs, atOnce, usedShare, chargerPower } = request;
  for (const [name, value] of Object.entries({ cells, packs, atOnce })) {
    if (!(Number.isInteger(value) && value >= 1)) {
      throw new RangeError(`${name} must be a whole number of at least 1; found ${value}`);
    }
  }
  for (const [name, value] of Object.entries({ capacity, rate, chargerPower })) {
    if (!(value > 0)) throw new RangeError(`${name} must be above 0; found ${value}`);
  }
  if (!(usedShare >= 0 && usedShare <= 1)) {
    throw new RangeError(`usedShare must be between 0 and 1; found ${usedShare}`);
  }
  const powerOnePack = cells * FULL_CELL * (capacity / 3600) * rate;
  const together = Math.min(atOnce, packs);
  const power = together * powerOnePack;
  const held = rate * Math.min(1, chargerPower / power);
  const roundTime = usedShare > 0 ? (3600 * (usedShare + TAPER)) / held : 0;
  return {
    powerOnePack,
    power,
    rate: held,
    roundTime,
    sessionTime: Math.ceil(packs / together) * roundTime,
    limitedBy: held < rate ? 'charger' : 'rate',
  };
}

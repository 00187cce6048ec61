import { DIMENSIONS, type Dimension, type Unit } from './dimensions.ts';
import { nearestName } from './nearestName.ts';

/** What is wrong with a text, what was found, what is allowed and what to do, each in words. */
export interface QuantityError {
  readonly ok: false;
  /** The whole as one sentence. */
  readonly reason: string;
  readonly found: string;
  readonly allowed: string;
  readonly remedy: string;
}

export type QuantityOutcome = { readonly ok: true; readonly value: number } | QuantityError;

const NUMBER_THEN_UNIT = /^\s*([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,3})?)\s*(.*?)\s*$/u;
const LONGEST = 64;

/**
 * Reads a number with its unit, `"5.1 in"` or `"1850rpm/V"`, into SI [SI unit of the dimension].
 * A number without a unit is an error: the unit is never guessed. For money use `parseMoney`, for
 * wire sections also given as AWG `parseWireArea`.
 */
export function parseQuantity(text: string, dimension: Dimension): QuantityOutcome {
  const units: readonly Unit[] = DIMENSIONS[dimension].units;
  const allowed = `a number with one of ${units.map((unit) => unit.text).join(', ')}`;
  const example = `"${exampleOf(dimension)}"`;
  const found = `"${text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text}"`;
  const match = text.length > LONGEST ? null : NUMBER_THEN_UNIT.exec(text);
  if (!match) {
    return failure(`${found} is not a ${inWords(dimension)}`, found, allowed, `Write it like ${example}.`);
  }
  const number = Number(match[1]);
  const unitText = match[2] ?? '';
  if (unitText === '') {
    const remedy = `Write the unit too, such as "${match[1]} ${units[0]?.text}".`;
    return failure(`${found} has no unit`, found, allowed, remedy);
  }
  const unit = units.find((each) => each.text === unitText || each.also?.includes(unitText));
  if (!unit) {
    const near = nearestName(
      unitText,
      units.map((each) => each.text),
    );
    const remedy = near ? `Did you mean "${match[1]} ${near}"?` : `Write it like ${example}.`;
    return failure(`"${unitText}" is not a unit of ${inWords(dimension)}`, found, allowed, remedy);
  }
  const value = (number + (unit.offset ?? 0)) * unit.factor;
  if (!Number.isFinite(value)) {
    return failure(`${found} is too large a number`, found, allowed, `Write it like ${example}.`);
  }
  return { ok: true, value };
}

/** The dimension's name as a person would say it: `motorSpeedConstant` is `motor speed constant`. */
export function inWords(dimension: Dimension): string {
  return dimension.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** A text of the right form for a dimension, for messages and for the published schema. */
export function exampleOf(dimension: Dimension): string {
  return EXAMPLES[dimension];
}

const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: '5.1 in',
  mass: '33.2 g',
  time: '20 min',
  speed: '8 m/s',
  angularSpeed: '24000 rpm',
  motorSpeedConstant: '1850 rpm/V',
  resistance: '62 mohm',
  charge: '1300 mAh',
  capacitance: '470 uF',
  voltage: '22.2 V',
  current: '45 A',
  power: '800 mW',
  energy: '28.9 Wh',
  temperature: '15 degC',
  angle: '25 deg',
  area: '2.1 mm2',
  frequency: '5.8 GHz',
  pressure: '60 GPa',
  density: '1.55 g/cm3',
  inertia: '4200 g mm2',
  force: '12 N',
  torque: '120 mN m',
  share: '80 %',
};

function failure(reason: string, found: string, allowed: string, remedy: string): QuantityError {
  return { ok: false, reason, found, allowed, remedy };
}

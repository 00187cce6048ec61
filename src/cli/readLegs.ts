import { type NamedLeg, styleLegs } from '../assess/parts/mission/usualLegs.ts';
import type { Leg } from '../flight/mission/types.ts';
import { styles } from '../flight/styles.ts';
import type { Dimension } from '../units/dimensions.ts';
import { nearestName } from '../units/nearestName.ts';
import { BadInput } from './io.ts';
import { numberOption, quantityWithin } from './options.ts';

export const LEG_FORMS = [
  'idle 10 s',
  'hover 60 s',
  'full 5 s',
  'pull 2.5 for 10 s',
  'climb 30 m at 4 m/s',
  'cruise 1500 m at 18 m/s [against 5 m/s | with 5 m/s]',
  `${Object.keys(styles).join(', ')} 120 s`,
] as const;

/** Reads legs with semicolons between, in the forms of `LEG_FORMS`; bad input says which leg and what is allowed. */
export function readLegs(text: string): readonly NamedLeg[] {
  const parts = text
    .split(';')
    .map((part) => part.trim().replace(/\s+/g, ' '))
    .filter((part) => part !== '');
  if (parts.length === 0) throw new BadInput(`--legs: there is no leg. Allowed: ${LEG_FORMS.join('; ')}.`);
  if (parts.length > 60) throw new BadInput(`--legs: ${parts.length} legs; at most 60.`);
  return parts.flatMap((part, index) => readLeg(part, `--legs, leg ${index + 1}`));
}

function readLeg(text: string, where: string): readonly NamedLeg[] {
  const [word = '', ...rest] = text.split(' ');
  const after = rest.join(' ');
  const one = (leg: Leg): readonly NamedLeg[] => [{ what: text, leg }];
  switch (word) {
    case 'idle':
      return one({ kind: 'idle', duration: duration(where, after) });
    case 'hover':
      return one({ kind: 'hover', duration: duration(where, after) });
    case 'full':
      return one({ kind: 'full throttle', duration: duration(where, after) });
    case 'pull': {
      const [pull, time] = split(where, text, after, [' for ']);
      const thrustToWeight = numberOption(`${where}, pull`, pull, 0.05, 30);
      return one({ kind: 'pull', thrustToWeight, duration: duration(where, time) });
    }
    case 'climb': {
      const [height, speed] = split(where, text, after, [' at ']);
      return one({
        kind: 'climb',
        height: amount(where, height, 'length', 0.1, 1000, '0.1 m to 1000 m'),
        speed: amount(where, speed, 'speed', 0.1, 30, '0.1 m/s to 30 m/s'),
      });
    }
    case 'cruise':
      return one(cruise(where, text, after));
  }
  const style = Object.entries(styles).find(([name]) => name === word)?.[1];
  if (style !== undefined) {
    const seconds = duration(where, after);
    return styleLegs(style, seconds, Math.max(1, Math.round(seconds / 30)), 1);
  }
  const words = ['idle', 'hover', 'full', 'pull', 'climb', 'cruise', ...Object.keys(styles)];
  const near = nearestName(word, words);
  throw new BadInput(
    `${where}: "${text}" does not begin like a leg. Allowed: ${LEG_FORMS.join('; ')}.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

function cruise(where: string, text: string, after: string): Leg {
  const against = after.includes(' against ');
  const withWind = after.includes(' with ');
  const marks = against ? [' at ', ' against '] : withWind ? [' at ', ' with '] : [' at '];
  const [distance, speed, wind] = split(where, text, after, marks);
  const airspeed = amount(where, speed, 'speed', 0.5, 100, '0.5 m/s to 100 m/s');
  const blows = wind === '' ? 0 : amount(where, wind, 'speed', 0, 30, '0 m/s to 30 m/s');
  const headwind = against ? blows : -blows;
  if (airspeed - headwind < 0.1) {
    throw new BadInput(`${where}: "${text}" makes no way. The airspeed must be above the wind against it.`);
  }
  return {
    kind: 'cruise',
    airspeed,
    distance: amount(where, distance, 'length', 1, 1e5, '1 m to 100 km'),
    headwind,
  };
}

/** Pieces between the marks, as many as three. */
function split(
  where: string,
  text: string,
  after: string,
  marks: readonly string[],
): readonly [first: string, second: string, third: string] {
  let left = after;
  const pieces: string[] = [];
  for (const mark of marks) {
    const at = left.indexOf(mark);
    if (at < 0) {
      throw new BadInput(`${where}: "${text}" lacks "${mark.trim()}". Allowed: ${LEG_FORMS.join('; ')}.`);
    }
    pieces.push(left.slice(0, at));
    left = left.slice(at + mark.length);
  }
  pieces.push(left);
  return [pieces[0] ?? '', pieces[1] ?? '', pieces[2] ?? ''];
}

const duration = (where: string, text: string): number =>
  amount(where, text, 'time', 0.1, 36000, '0.1 s to 10 h');

const amount = (
  where: string,
  text: string,
  dimension: Dimension,
  low: number,
  high: number,
  words: string,
): number => quantityWithin(where, text, dimension, { low, high, words });

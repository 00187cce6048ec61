import type { z } from 'zod';
import { nearestName } from '../../units/nearestName.ts';
import { shown } from '../schema/shown.ts';
import type { Path } from './fileError.ts';

interface Words {
  readonly path: Path;
  /** The error is the field's name, not its value. */
  readonly onKey: boolean;
  readonly says: string;
  readonly found: string;
  readonly allowed: string;
  readonly remedy: string;
}

/** A schema's complaint in words a builder can act on; several when several fields are unknown. */
export function wordsOf(
  issue: z.core.$ZodIssue,
  path: Path,
  data: unknown,
  instance: z.core.$ZodType | undefined,
): readonly Words[] {
  const value = valueAt(data, path);
  const found = shown(value);
  const one = (says: string, allowed: string, remedy: string): readonly Words[] => [
    { path, onKey: false, says, found, allowed, remedy },
  ];
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownField(key, path, knownFields(instance)));
    case 'custom': {
      const given = issue.params ?? {};
      const text = (key: string, other: string) => (typeof given[key] === 'string' ? given[key] : other);
      return [
        {
          path,
          onKey: false,
          says: issue.message,
          found: text('found', found),
          allowed: text('allowed', 'see the description of the format'),
          remedy: text('remedy', 'Change the value.'),
        },
      ];
    }
    case 'invalid_type': {
      const seat = knownFields(instance)[0] === 'part';
      const allowed = seat
        ? 'the id of a part, or a group of fields'
        : (TYPE_WORDS[issue.expected] ?? issue.expected);
      if (value === undefined) return one('is missing', allowed, 'Add the field.');
      return one(`${found} is not ${allowed}`, allowed, `Give ${allowed}.`);
    }
    case 'invalid_value':
      return choice(value, issue.values.map(String), one);
    case 'invalid_union':
      return choice(value, discriminatorValues(instance), one);
    case 'too_small':
    case 'too_big':
      return one(...sizeWords(issue, found));
    case 'not_multiple_of':
      return one(
        `${found} is not a multiple of ${issue.divisor}`,
        `multiples of ${issue.divisor}`,
        'Change it.',
      );
    case 'invalid_format':
      return one(`${found} ${issue.message}`, issue.message.replace(/^must be /, ''), 'Change the text.');
    case 'invalid_key':
      return one(
        'a field here has a name that is not allowed',
        'three-letter currency codes',
        'Change the name.',
      );
    case 'invalid_element':
      return one(issue.message, 'see the description of the format', 'Change the value.');
  }
}

function unknownField(key: string, path: Path, known: readonly string[]): Words {
  const short = key.length > 40 ? `${key.slice(0, 40)}...` : key;
  const near = nearestName(key, known);
  return {
    path: [...path, key],
    onKey: true,
    says: `unknown field "${short}"`,
    found: `"${short}"`,
    allowed: known.length > 0 ? known.join(', ') : 'no fields here',
    remedy: near ? `Did you mean "${near}"?` : 'Take it out, or see the description of the format.',
  };
}

function choice(
  value: unknown,
  values: readonly string[],
  one: (says: string, allowed: string, remedy: string) => readonly Words[],
): readonly Words[] {
  const allowed = values.length > 1 ? `one of ${values.join(', ')}` : (values[0] ?? 'another value');
  if (value === undefined) return one('is missing', allowed, 'Add the field.');
  const near = typeof value === 'string' ? nearestName(value, values) : undefined;
  return one(
    `${shown(value)} is not allowed here`,
    allowed,
    near ? `Did you mean "${near}"?` : `Give ${allowed}.`,
  );
}

function sizeWords(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  found: string,
): [says: string, allowed: string, remedy: string] {
  const limit = issue.code === 'too_small' ? issue.minimum : issue.maximum;
  const less = issue.code === 'too_small';
  const unit = SIZE_UNITS[issue.origin] ?? '';
  const strict = issue.inclusive === false;
  const bound = `${less ? (strict ? 'above' : 'at least') : strict ? 'below' : 'at most'} ${limit}${unit}`;
  return [
    `${found} is too ${unit === '' ? (less ? 'small' : 'large') : less ? 'short' : 'long'}`,
    bound,
    `Give ${bound}.`,
  ];
}

const SIZE_UNITS: Readonly<Record<string, string>> = { string: ' letters', array: ' entries' };

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a group of fields',
  record: 'a group of fields',
  array: 'a list',
};

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (step === 'part' && typeof value === 'string') return value; // a seat written as the id alone
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = Reflect.get(value, step);
  }
  return value;
}

function knownFields(instance: z.core.$ZodType | undefined): readonly string[] {
  const def = instance?._zod.def;
  return def && 'shape' in def && typeof def.shape === 'object' && def.shape !== null
    ? Object.keys(def.shape)
    : [];
}

function discriminatorValues(instance: z.core.$ZodType | undefined): readonly string[] {
  const def = instance?._zod.def;
  if (!def || !('options' in def) || !Array.isArray(def.options)) return [];
  const options: readonly z.core.$ZodType[] = def.options;
  return options.flatMap((option) => [...(option._zod.propValues?.kind ?? [])].map(String));
}

/** Read back as text whatever comes after: no number, no sign of YAML, no word that means something else. */
const PLAIN = /^[A-Za-z][A-Za-z0-9 _./()'-]*$/;
const QUANTITY = /^-?\d+(\.\d+)? [A-Za-z%][A-Za-z0-9/ ]*$/;
const WORDS_OF_YAML = /^(true|false|null|yes|no|on|off|y|n)$/i;

/**
 * Plain data as YAML that a person can go on writing: groups by indentation, small ones on one line.
 * For our own files; the reader is `parseText`.
 */
export function yamlText(data: Readonly<Record<string, unknown>>): string {
  return `${fields(data, '')}\n`;
}

const fields = (data: Readonly<Record<string, unknown>>, indent: string): string =>
  Object.entries(data)
    .map(([key, value]) => `${indent}${scalar(key)}:${after(value, indent)}`)
    .join('\n');

/** What stands after a colon. */
function after(value: unknown, indent: string): string {
  const short = inline(value);
  if (short !== undefined && short.length + indent.length < 90) return ` ${short}`;
  if (Array.isArray(value))
    return value.map((item) => `\n${indent}  - ${inline(item) ?? JSON.stringify(item)}`).join('');
  if (isGroup(value)) return `\n${fields(value, `${indent}  `)}`;
  return ` ${short ?? JSON.stringify(value)}`;
}

/** On one line; undefined where a group holds groups. */
function inline(value: unknown): string | undefined {
  if (Array.isArray(value)) {
    const items = value.map(inline);
    return items.every((item) => item !== undefined) ? `[${items.join(', ')}]` : undefined;
  }
  if (!isGroup(value)) return scalar(value);
  const entries = Object.entries(value);
  if (entries.length === 0) return '{}';
  const crowded = entries.length > 3 && entries.some(([, each]) => isGroup(each));
  const inner = entries.map(([, each]) => inline(each));
  if (crowded || inner.includes(undefined)) return undefined;
  return `{ ${entries.map(([key], i) => `${scalar(key)}: ${inner[i]}`).join(', ')} }`;
}

function scalar(value: unknown): string {
  if (typeof value !== 'string') return JSON.stringify(value);
  const plain = (PLAIN.test(value) && !value.endsWith(' ')) || QUANTITY.test(value);
  return plain && !WORDS_OF_YAML.test(value) ? value : JSON.stringify(value);
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A found value as an error shows it: short, in quotes when text, never throwing. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return `"${value.length > 40 ? `${value.slice(0, 40)}...` : value}"`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'a group of fields';
  return String(value);
}

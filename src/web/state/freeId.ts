/** A name that files may refer to, made of a build's name, and not yet taken. */
export function freeId(name: string, taken: Readonly<Record<string, unknown>>): string {
  const base =
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '')
      .slice(0, 50) || 'build';
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!Object.hasOwn(taken, id)) return id;
  }
}

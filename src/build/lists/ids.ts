/** An id of a part made from its name: small letters, digits and hyphens. */
export function idOfName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 50)
    .replace(/-+$/, '');
  return plain === '' ? 'part' : plain;
}

/** The id itself, or with the first number behind it that nothing else has. */
export function freeId(id: string, taken: { readonly has: (id: string) => boolean }): string {
  if (!taken.has(id)) return id;
  for (let number = 2; ; number++) if (!taken.has(`${id}-${number}`)) return `${id}-${number}`;
}

import { readdirSync } from 'node:fs';

/** README and all pages of docs, by their paths from the root. */
export const pages = (): readonly string[] => [
  'README.md',
  ...readdirSync('docs', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => `docs/${name}`),
];

import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { pages } from '../../scripts/told/pages.ts';

const PLACE = /^(demo|shelf|src|test|docs|scripts|bench|schema)\/[\w./-]*\w$/;

it.each(['CONTRIBUTING.md', ...pages()])('%s links to pages and names files that are there', (file) => {
  const page = readFileSync(file, 'utf8').replace(/```[\s\S]*?```/g, '');
  const links = [...page.matchAll(/\]\(([^)#]+)(?:#[^)]*)?\)/g)]
    .map(([, link]) => link ?? '')
    .filter((link) => !link.includes(':'))
    .map((link) => join(dirname(file), link));
  const named = [...page.matchAll(/`([^`\n]+)`/g)].map(([, name]) => name ?? '');
  const missing = [...links, ...named.filter((name) => PLACE.test(name))].filter((path) => !existsSync(path));
  expect(missing).toEqual([]);
});

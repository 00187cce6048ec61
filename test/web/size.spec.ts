import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const ASSETS = fileURLToPath(new URL('../../dist/web/assets/', import.meta.url));

describe('the built page', () => {
  it('loads under 400 kB gzip of script, worker included', () => {
    const scripts = readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(1);
    const total = scripts.reduce((sum, name) => sum + gzipSync(readFileSync(ASSETS + name)).length, 0);
    console.log(`script, gzip: ${(total / 1000).toFixed(0)} kB of 400`);
    expect(total).toBeLessThan(400_000);
  });
});

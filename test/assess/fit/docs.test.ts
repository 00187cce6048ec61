import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { withTable } from '../../../scripts/fitRulesTable.ts';
import { fitRules } from '../../../src/assess/fit/fitLines.ts';

describe('docs/method/fit.md', () => {
  it('lists every rule as it is: else run npx tsx scripts/writeFitRules.ts', () => {
    const page = readFileSync('docs/method/fit.md', 'utf8');
    expect(withTable(page, fitRules)).toBe(page);
  });

  it('has at least 45 rules, each named once', () => {
    const ids = fitRules.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBeGreaterThanOrEqual(45);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });
});

// Runs the import rule and makes sure it really looked: a cruise over nothing would pass.

import { createRequire } from 'node:module';
import { cruise } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';

const rules = createRequire(import.meta.url)('../.dependency-cruiser.cjs');
const result = await cruise(
  ['src'],
  { ...rules.options, ruleSet: { forbidden: rules.forbidden }, validate: true },
  undefined,
  { tsConfig: extractTSConfig('./tsconfig.json') },
);
const { summary, modules } = result.output;
const seen = modules.filter((module) => module.source.startsWith('src/')).length;
for (const violation of summary.violations) {
  console.error(`${violation.rule.name}: ${violation.from} -> ${violation.to}`);
}
console.log(`${seen} modules looked at, ${summary.violations.length} violations`);
if (seen < 20) {
  console.error('The import rule saw too few modules to mean anything.');
  process.exit(1);
}
process.exit(summary.violations.length > 0 ? 1 : 0);

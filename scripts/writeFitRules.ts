import { readFileSync, writeFileSync } from 'node:fs';
import { fitRules } from '../src/assess/fit/fitLines.ts';
import { withTable } from './fitRulesTable.ts';

/** Writes the table of fit rules into its method page. */
const file = new URL('../docs/method/fit.md', import.meta.url);
writeFileSync(file, withTable(readFileSync(file, 'utf8'), fitRules));

import { type FitRule, TRADE } from '../src/assess/fit/types.ts';

/** The rules as a Markdown table, in the order they are looked at. */
function fitRulesTable(rules: readonly FitRule[]): string {
  const rows = rules.map(({ id, title, limit, severities, source }) => [
    `\`${id}\``,
    title,
    limit,
    severities.join(', '),
    source ?? TRADE,
  ]);
  const head = [['rule', 'looks at', 'limit', 'severity', 'source'], Array.from({ length: 5 }, () => '---')];
  return [...head, ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

const TABLE_START = '<!-- rules: written by scripts/writeFitRules.ts -->';
const TABLE_END = '<!-- end of rules -->';

/** The page with the table between its marks made new. */
export function withTable(page: string, rules: readonly FitRule[]): string {
  const start = page.indexOf(TABLE_START);
  const end = page.indexOf(TABLE_END);
  if (start < 0 || end < start) throw new RangeError(`page: has no marks ${TABLE_START} and ${TABLE_END}`);
  return `${page.slice(0, start)}${TABLE_START}\n\n${fitRulesTable(rules)}\n\n${page.slice(end)}`;
}

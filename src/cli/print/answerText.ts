import type { PartResult } from '../../assess/parts/types.ts';
import type { Finding } from '../../assess/types.ts';

/** Findings of one part, worst first as they come, each with its remedy. */
export function findingLines(findings: readonly Finding[]): readonly string[] {
  return findings.flatMap(({ severity, says, remedy }) => [
    '',
    `${severity.toUpperCase()}  ${says}`,
    `      ${remedy}`,
  ]);
}

/** A part's answer as JSON: measures, findings and one key of its data. */
export function partJson(result: PartResult, data: unknown): string {
  const { measures, findings } = result;
  return `${JSON.stringify({ measures, findings, data }, null, 2)}\n`;
}

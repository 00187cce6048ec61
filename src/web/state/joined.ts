import type { PartResult } from '../../assess/parts/types.ts';
import type { Severity } from '../../assess/types.ts';
import type { BuildView } from '../worker/protocol.ts';

const GRAVITY: Readonly<Record<Severity, number>> = { stop: 0, risk: 1, note: 2 };

/** A quick answer with what the full assessment has added to it so far. */
export function joined(view: BuildView, parts: Readonly<Record<string, PartResult>> = {}): BuildView {
  if (!view.ok) return view;
  const results = Object.values(parts);
  if (results.length === 0) return view;
  const { assessment } = view;
  const told = new Set(results.flatMap((part) => part.measures.map(({ id }) => id)));
  const findings = [...assessment.findings, ...results.flatMap((part) => part.findings)];
  return {
    ...view,
    assessment: {
      ...assessment,
      // What was told quickly gives way to the same measure worked out.
      measures: [
        ...assessment.measures.filter(({ id }) => !told.has(id)),
        ...results.flatMap((part) => part.measures),
      ],
      findings: findings.toSorted((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]),
      data: Object.assign({}, assessment.data, ...results.map((part) => part.data)),
    },
  };
}

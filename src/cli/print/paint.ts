import pc from 'picocolors';
import type { Severity } from '../../assess/types.ts';

/** Colour where the terminal wants it; words and marks carry the meaning without. */
export interface Paint {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly severity: (severity: Severity, text: string) => string;
}

export function paintFor(colours: boolean): Paint {
  const c = pc.createColors(colours);
  return {
    strong: c.bold,
    faint: c.dim,
    severity: (severity, text) =>
      severity === 'stop' ? c.bold(c.red(text)) : severity === 'risk' ? c.yellow(text) : c.cyan(text),
  };
}

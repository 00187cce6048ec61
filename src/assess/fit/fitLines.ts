import { cameraRules } from './cameraRules.ts';
import { motorRules } from './motorRules.ts';
import { packRules } from './packRules.ts';
import { pilotRules } from './pilotRules.ts';
import { powerRules } from './powerRules.ts';
import { propellerRules } from './propellerRules.ts';
import { radioRules } from './radioRules.ts';
import { stackRules } from './stackRules.ts';
import { type FitContext, type FitLine, type FitRule, TRADE } from './types.ts';

export const fitRules: readonly FitRule[] = [
  ...motorRules,
  ...propellerRules,
  ...stackRules,
  ...powerRules,
  ...packRules,
  ...cameraRules,
  ...radioRules,
  ...pilotRules,
];

/** Every rule's lines for one craft, failing ones first by severity, then in the order of the rules. */
export function fitLines(context: FitContext): readonly FitLine[] {
  const order = { stop: 0, risk: 1, note: 2 } as const;
  const rank = (line: FitLine) => (line.passes ? 3 : order[line.severity]);
  return fitRules
    .flatMap(({ id, title, look }) =>
      look(context).map((verdict): FitLine => ({ id, title, source: TRADE, ...verdict })),
    )
    .sort((a, b) => rank(a) - rank(b));
}

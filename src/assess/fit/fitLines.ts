import { antennaRules } from './antennaRules.ts';
import { cameraRules } from './cameraRules.ts';
import { cellRules } from './cellRules.ts';
import { controllerRules } from './controllerRules.ts';
import { frameRules } from './frameRules.ts';
import { guardRules } from './guardRules.ts';
import { kitRules } from './kitRules.ts';
import { lawRules } from './lawRules.ts';
import { motorRules } from './motorRules.ts';
import { packRules } from './packRules.ts';
import { pilotRules } from './pilotRules.ts';
import { propellerRules } from './propellerRules.ts';
import { radioRules } from './radioRules.ts';
import { screwRules } from './screwRules.ts';
import { stackRules } from './stackRules.ts';
import { strapRules } from './strapRules.ts';
import { supplyRules } from './supplyRules.ts';
import { type FitContext, type FitLine, type FitRule, TRADE } from './types.ts';
import { videoRules } from './videoRules.ts';
import { wiringRules } from './wiringRules.ts';

export const fitRules: readonly FitRule[] = [
  ...screwRules,
  ...motorRules,
  ...frameRules,
  ...propellerRules,
  ...guardRules,
  ...stackRules,
  ...supplyRules,
  ...controllerRules,
  ...wiringRules,
  ...cellRules,
  ...packRules,
  ...strapRules,
  ...cameraRules,
  ...videoRules,
  ...radioRules,
  ...antennaRules,
  ...kitRules,
  ...pilotRules,
  ...lawRules,
];

/** Every rule's lines for one craft, failing ones first by severity, then in the order of the rules. */
export function fitLines(context: FitContext): readonly FitLine[] {
  const order = { stop: 0, risk: 1, note: 2 } as const;
  const rank = (line: FitLine) => (line.passes ? 3 : order[line.severity]);
  return fitRules
    .flatMap(({ id, title, source, look }) =>
      look(context).map((verdict): FitLine => ({ id, title, source: source ?? TRADE, ...verdict })),
    )
    .sort((a, b) => rank(a) - rank(b));
}

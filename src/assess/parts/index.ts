import { wiringHeat } from './heat.ts';
import { hitsPart } from './hits/hitsPart.ts';
import { knocksPart } from './knocks/knocksPart.ts';
import { levelFlight } from './levelFlight.ts';
import { usualMission } from './mission.ts';
import { picturePart } from './picture/picturePart.ts';
import { controlInReserve } from './reserve.ts';
import { shakePart } from './shake/shakePart.ts';
import type { AssessPart, PartContext, PartResult } from './types.ts';
import { windHolding } from './wind.ts';

/** The full tier, in the order a face shows it. */
export const assessParts: readonly AssessPart[] = [
  levelFlight,
  windHolding,
  controlInReserve,
  wiringHeat,
  usualMission,
  picturePart,
  shakePart,
  hitsPart,
  knocksPart,
];

/** Runs the parts one after another and hands each over as it is done, so that a face can show it meanwhile. */
export function* runParts(
  context: PartContext,
  parts: readonly AssessPart[] = assessParts,
): Generator<{ readonly part: AssessPart; readonly result: PartResult }> {
  for (const part of parts) yield { part, result: part.run(context) };
}

import { minutesByStyle } from '../../assess/parts/minutes.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import type { Io } from '../io.ts';
import { partJson } from '../print/answerText.ts';
import { measuresText, withFindings } from '../print/partText.ts';

/** `ask minutes`: how long one pack lasts in every flying style. */
export function askMinutes(file: string, options: AskFlightOptions, io: Io): void {
  const measures = minutesByStyle(flightOf(file, options, io));
  io.writeOut(
    options.json
      ? partJson({ measures, findings: [] }, {})
      : withFindings([measuresText(measures, options.how)], []),
  );
}

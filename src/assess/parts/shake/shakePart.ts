import type { ModeReport, ShakeReport } from '../airframeData.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { changesOf } from './changes.ts';
import { craftFrame } from './craftFrame.ts';
import { forcingOf, pointAt } from './forcing.ts';
import { cameraShake, crossingsOf, feltAt, responseOver } from './respond.ts';
import { shakeFindings } from './shakeFindings.ts';
import { shakeMeasures } from './shakeMeasures.ts';
import { firstModes, kindOf, structureOf } from './structure.ts';

/** How the frame rings, and what the gyro and the cameras feel of the propellers. */
export const shakePart: AssessPart = {
  id: 'shake',
  label: 'how the frame rings and shakes',
  run: ({ craft, brief, shelf, flight }: PartContext): PartResult => {
    const question = craftFrame(craft);
    const structure = structureOf(question);
    if (!structure.ok) return { measures: [], findings: [unsolved(structure.reason)] };
    const forcing = flight && forcingOf(craft, flight);
    const hoverThrottle = flight?.told.figures['hover-throttle'];
    const measures = shakeMeasures(craft, question, structure.value, forcing, hoverThrottle);
    const felt = forcing ? feltAt(craft, structure.value, forcing) : [];
    const band = (id: string) => {
      const found = measures.find((measure) => measure.id === id);
      return found === undefined
        ? ([0.9, 1.1] as const)
        : ([found.band[0] / found.value, found.band[1] / found.value] as const);
    };
    const relative = { upright: band('first-upright-mode'), sideways: band('first-sideways-mode') };
    const modes = structure.value.modes.map(({ frequency, shape }, i): ModeReport => {
      const kind = kindOf(shape);
      const [low, high] = relative[kind === 'other' ? 'upright' : kind];
      return { frequency, band: [frequency * low, frequency * high], shape, felt: felt[i] ?? 1 };
    });
    const hover =
      forcing && hoverThrottle !== undefined ? pointAt(forcing.throttles, hoverThrottle) : undefined;
    const report: ShakeReport = {
      modes,
      orders: forcing?.orders ?? [],
      throttles: forcing?.throttles.map(({ throttle, angularSpeed }) => ({ throttle, angularSpeed })) ?? [],
      crossings: forcing ? crossingsOf(structure.value, felt, forcing) : [],
      response: forcing && forcing.throttles.length > 1 ? responseOver(craft, structure.value, forcing) : [],
      cameras:
        forcing && hover
          ? craft.cameras.flatMap((_, i) => cameraShake(craft, i, structure.value, forcing, hover) ?? [])
          : [],
      changes: changesOf(craft, brief, shelf, question),
      now: firstModes(modes),
    };
    return { measures, findings: shakeFindings(craft, report, hoverThrottle), data: { shake: report } };
  },
};

function unsolved(reason: string) {
  return {
    id: 'frame-unsolved',
    sheet: 'shake',
    severity: 'note',
    says: `The beam model of the frame has no solution: ${reason}.`,
    remedy: 'Check the sizes of the arms.',
    source: 'docs/method/airframe.md',
    parts: ['frame'],
  } as const;
}

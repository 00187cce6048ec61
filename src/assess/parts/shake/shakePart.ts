import type { FrameMode } from '../../../airframe/frameModes.ts';
import type { ModeReport, ShakeReport } from '../airframeData.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { changesOf } from './changes.ts';
import { craftFrame } from './craftFrame.ts';
import { type Forcing, forcingOf, pointAt, throttleAt } from './forcing.ts';
import { cameraShake, crossingsOf, feltAt, responseOver } from './respond.ts';
import { shakeFindings } from './shakeFindings.ts';
import { shakeMeasures } from './shakeMeasures.ts';
import { DAMPING, firstModes, kindOf, structureOf } from './structure.ts';

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
    const crossings = forcing ? crossingsOf(structure.value, felt, forcing) : [];
    const modes = structure.value.modes.map((mode, i): ModeReport => {
      const { frequency, shape } = mode;
      const kind = kindOf(shape);
      const [low, high] = relative[kind === 'other' ? 'upright' : kind];
      const met = forcing && throttleAt(forcing.throttles, 2 * Math.PI * frequency) !== undefined;
      return {
        frequency,
        band: [frequency * low, frequency * high],
        shape,
        felt: felt[i] ?? 1,
        motion: {
          hub: [...mode.hub],
          tips: mode.tips.map(({ name, motion }) => ({ arm: name, motion: [...motion] })),
        },
        ...(met ? { swing: swingAt(mode, forcing) } : {}),
      };
    });
    const hover =
      forcing && hoverThrottle !== undefined ? pointAt(forcing.throttles, hoverThrottle) : undefined;
    const report: ShakeReport = {
      modes,
      orders: forcing?.orders ?? [],
      throttles: forcing?.throttles.map(({ throttle, angularSpeed }) => ({ throttle, angularSpeed })) ?? [],
      crossings,
      response: forcing && forcing.throttles.length > 1 ? responseOver(craft, structure.value, forcing) : [],
      cameras:
        forcing && hover
          ? craft.cameras.flatMap((_, i) => cameraShake(craft, i, structure.value, forcing, hover) ?? [])
          : [],
      changes: changesOf(craft, brief, shelf, question),
      now: firstModes(modes),
    };
    return {
      measures,
      findings: shakeFindings(craft, report, measures, brief.currency, hoverThrottle),
      data: { shake: report },
    };
  },
};

/**
 * Largest motion of an arm's tip at resonance with every motor's imbalance, phases unknown [m]: a mode answers with
 * phi phi . F / (2 zeta omega2), and F = m e omega2.
 */
function swingAt({ tips }: FrameMode, { motors }: Forcing): number {
  let square = 0;
  for (const { arm, discHeight, imbalance } of motors) {
    const [x = 0, y = 0, , a = 0, b = 0] = tips.find(({ name }) => name === arm)?.motion ?? [];
    square += (imbalance * Math.hypot(x - b * discHeight, y + a * discHeight)) ** 2;
  }
  const largest = Math.max(...tips.map(({ motion: [x = 0, y = 0, z = 0] }) => Math.hypot(x, y, z)));
  return (largest * Math.sqrt(square)) / (2 * DAMPING);
}

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

import { resolveBuild } from '../build/resolve/resolveBuild.ts';
import type { Build } from '../build/schema/build.ts';
import type { Shelf } from '../build/shelf.ts';
import { type Minimum, nelderMead } from './nelderMead.ts';
import { type EvaluationContext, evaluateCraft } from './shortlist/evaluate.ts';
import type { ShortlistQuestion } from './shortlist/types.ts';

/** What may be set between ends, and the ends. */
export const KNOBS = {
  'pack-position': { label: 'pack forward of the middle', quantity: 'length' },
  'camera-tilt': { label: 'tilt of the flying camera', quantity: 'angle' },
  'layout-size': { label: 'distances between motors, over the frame as it is', quantity: 'ratio' },
  'layout-sweep': { label: 'length over width, over the frame as it is', quantity: 'ratio' },
  'arm-thickness': { label: 'thickness of the arms', quantity: 'length' },
} as const;
export type Knob = keyof typeof KNOBS;

export interface KnobRange {
  readonly knob: Knob;
  readonly low: number;
  readonly high: number;
}

export interface Tuned {
  readonly build: Build;
  readonly before: number;
  readonly standing: number;
  readonly settings: Readonly<Partial<Record<Knob, number>>>;
  readonly minimum: Minimum;
}

/**
 * Sets knobs of a build so that it stands highest under the wants, hard limits and rules held as walls: Nelder and Mead
 * from the build as it is. Local and not exact: what it finds is no worse than the start. Another layout's
 * frame keeps its mass as told, so arms made longer or thicker weigh more only in what follows from places: take
 * `layout-size` and `arm-thickness` as a hint which way to look for a frame.
 */
export function tune(
  start: Build,
  ranges: readonly KnobRange[],
  question: ShortlistQuestion,
  context: EvaluationContext,
  most = 400,
): Tuned {
  const { shelf } = context;
  const standing = (build: Build): number => {
    const craft = resolveBuild(build, shelf, undefined, context.ready);
    if (!craft.ok) return Number.NEGATIVE_INFINITY;
    const verdict = evaluateCraft(question, craft.value, context);
    return verdict.ok ? verdict.scored.standing : Number.NEGATIVE_INFINITY;
  };
  const at = (point: readonly number[]): Build =>
    ranges.reduce((build, { knob }, index) => turned(build, start, knob, point[index] ?? 0, shelf), start);
  const from = ranges.map(({ knob, low, high }) =>
    Math.min(high, Math.max(low, settingOf(start, knob, shelf))),
  );
  const minimum = nelderMead(
    (point) => -standing(at(point)),
    from,
    ranges.map(({ low, high }) => [low, high] as const),
    { tolerance: 1e-3, most },
  );
  const before = standing(start);
  const better = -minimum.value > before;
  return {
    build: better ? at(minimum.point) : start,
    before,
    standing: better ? -minimum.value : before,
    settings: Object.fromEntries(
      ranges.map(({ knob }, index) => [knob, (better ? minimum.point : from)[index] ?? 0]),
    ),
    minimum,
  };
}

/** A knob as a build has it. */
function settingOf(build: Build, knob: Knob, shelf: Shelf): number {
  const frame = shelf.parts.get(build.frame.part);
  switch (knob) {
    case 'pack-position':
      return build.pack.offset;
    case 'camera-tilt':
      return build.cameras.find(({ role }) => role === 'flying')?.tilt ?? 0;
    case 'layout-size':
    case 'layout-sweep':
      return 1;
    case 'arm-thickness':
      return build.frame.armThickness ?? (frame?.kind === 'frame' ? frame.arms.thickness.value : 0);
  }
}

function turned(build: Build, start: Build, knob: Knob, value: number, shelf: Shelf): Build {
  switch (knob) {
    case 'pack-position':
      return { ...build, pack: { ...build.pack, offset: value } };
    case 'camera-tilt':
      return {
        ...build,
        cameras: build.cameras.map((camera) =>
          camera.role === 'flying' ? { ...camera, tilt: value } : camera,
        ),
      };
    case 'arm-thickness':
      return { ...build, frame: { ...build.frame, armThickness: value } };
    case 'layout-size':
      return stretched(build, start, shelf, value, value);
    case 'layout-sweep':
      return stretched(build, start, shelf, Math.sqrt(value), 1 / Math.sqrt(value));
  }
}

/** The layout with its lengths along and across times a factor; layouts told by one distance are only scaled. */
function stretched(build: Build, start: Build, shelf: Shelf, along: number, across: number): Build {
  const frame = shelf.parts.get(start.frame.part);
  const layout = build.frame.layout ?? (frame?.kind === 'frame' ? frame.layout : undefined);
  if (layout === undefined) return build;
  switch (layout.kind) {
    case 'stretched X':
    case 'squashed X':
    case 'H':
    case 'X8 coaxial':
      return withLayout(build, { ...layout, length: layout.length * along, width: layout.width * across });
    case 'dead cat':
      return withLayout(build, {
        ...layout,
        length: layout.length * along,
        frontWidth: layout.frontWidth * across,
        rearWidth: layout.rearWidth * across,
      });
    case 'true X':
    case 'plus':
    case 'hexa X':
    case 'hexa plus':
    case 'octo':
    case 'octo plus':
      return withLayout(build, { ...layout, diagonal: layout.diagonal * Math.sqrt(along * across) });
    case 'tri':
    case 'Y6 coaxial':
      return withLayout(build, {
        ...layout,
        length: layout.length * along,
        frontWidth: layout.frontWidth * across,
      });
    case 'positions':
      return withLayout(build, {
        ...layout,
        motors: layout.motors.map((motor) => ({ ...motor, x: motor.x * along, y: motor.y * across })),
      });
  }
}

const withLayout = (build: Build, layout: NonNullable<Build['frame']['layout']>): Build => ({
  ...build,
  frame: { ...build.frame, layout },
});

import { resolveBuild } from '../build/resolve/resolveBuild.ts';
import type { Build } from '../build/schema/build.ts';
import type { Shelf } from '../build/shelf.ts';
import { type Minimum, nelderMead } from './nelderMead.ts';
import { type EvaluationContext, evaluateCraft, type Verdict } from './shortlist/evaluate.ts';
import type { Scored, ShortlistQuestion } from './shortlist/types.ts';

/** An end in SI and as a face says it. */
const end = (value: number, text: string) => ({ value, text }) as const;

/** What may be set, and how far at most. */
export const KNOBS = {
  'pack-position': {
    label: 'pack forward of the middle',
    quantity: 'length',
    least: end(-0.2, '-200 mm'),
    most: end(0.2, '200 mm'),
  },
  'camera-tilt': {
    label: 'tilt of the flying camera',
    quantity: 'angle',
    least: end((-30 * Math.PI) / 180, '-30 deg'),
    most: end(Math.PI / 2, '90 deg'),
  },
  'layout-size': {
    label: 'distances between motors, over the frame as it is',
    quantity: 'ratio',
    least: end(0.5, '0.5'),
    most: end(2, '2'),
  },
  'layout-sweep': {
    label: 'length over width, over the frame as it is',
    quantity: 'ratio',
    least: end(0.5, '0.5'),
    most: end(2, '2'),
  },
  'arm-thickness': {
    label: 'thickness of the arms',
    quantity: 'length',
    least: end(0.0005, '0.5 mm'),
    most: end(0.02, '20 mm'),
  },
} as const;
export type Knob = keyof typeof KNOBS;

export interface KnobRange {
  readonly knob: Knob;
  readonly low: number;
  readonly high: number;
}

export interface Tuned {
  readonly build: Build;
  /** Standings; minus infinity where a limit or a rule stops it. */
  readonly before: number;
  readonly standing: number;
  /** The rule or limit that stops the build as it was; absent where none does. */
  readonly stoppedBy?: string;
  /** Wanted and limited measures of the build as it was and as it is now, SI; empty where it is stopped. */
  readonly values: readonly [before: Scored['values'], after: Scored['values']];
  readonly start: Readonly<Partial<Record<Knob, number>>>;
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
  const verdictOf = (build: Build): Verdict => {
    const craft = resolveBuild(build, shelf, undefined, context.ready);
    return craft.ok ? evaluateCraft(question, craft.value, context) : { ok: false, because: 'no aircraft' };
  };
  const judge = (build: Build): Scored | undefined => {
    const verdict = verdictOf(build);
    return verdict.ok ? verdict.scored : undefined;
  };
  const standing = (build: Build): number => judge(build)?.standing ?? Number.NEGATIVE_INFINITY;
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
  const first = verdictOf(start);
  const judged = first.ok ? first.scored : undefined;
  const before = judged?.standing ?? Number.NEGATIVE_INFINITY;
  const better = -minimum.value > before;
  const build = better ? at(minimum.point) : start;
  const settingsOf = (point: readonly number[]) =>
    Object.fromEntries(ranges.map(({ knob }, index) => [knob, point[index] ?? 0]));
  return {
    build,
    before,
    ...(first.ok ? {} : { stoppedBy: first.because }),
    standing: better ? -minimum.value : before,
    values: [judged?.values ?? {}, judge(build)?.values ?? {}],
    start: settingsOf(ranges.map(({ knob }) => settingOf(start, knob, shelf))),
    settings: settingsOf(better ? minimum.point : ranges.map(({ knob }) => settingOf(start, knob, shelf))),
    minimum,
  };
}

/** Why a knob of a build has nothing to turn, in words; nothing when it has. */
export function cannotTurn(knob: Knob, build: Build, shelf: Shelf): string | undefined {
  if (knob === 'camera-tilt' && !build.cameras.some(({ role }) => role === 'flying')) {
    return 'the build has no flying camera';
  }
  if (knob !== 'layout-sweep') return undefined;
  const frame = shelf.parts.get(build.frame.part);
  const layout = build.frame.layout ?? (frame?.kind === 'frame' ? frame.layout : undefined);
  return layout !== undefined && layout.kind !== 'true X' && 'diagonal' in layout
    ? `a layout of ${layout.kind} has one distance only`
    : undefined;
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
    case 'true X': {
      if (along === across) return withLayout(build, { ...layout, diagonal: layout.diagonal * along });
      const side = layout.diagonal / Math.SQRT2;
      return withLayout(build, {
        kind: along > across ? 'stretched X' : 'squashed X',
        length: side * along,
        width: side * across,
        frontSpin: layout.frontSpin,
      });
    }
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

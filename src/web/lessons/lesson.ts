import type { Build } from '../../build/schema/build.ts';
import { type Seat, swapsBetween } from '../../choose/swaps.ts';
import { LAYOUT_KINDS, layoutOfKind } from '../schedule/layouts.ts';

/** One thing that may differ between two builds; of the frame its layout is told apart. */
export type Cause = Seat | 'layout' | 'mass' | 'balance';

export interface Step {
  readonly cause: Cause;
  /** The build after this step: with this cause and all before it. */
  readonly build: Build;
}

type Layout = NonNullable<Build['frame']['layout']>;

/**
 * The way from one build to another, one cause at a time. Where the frames differ the layout comes first by itself:
 * the same parts, with their motors where the other frame has them.
 */
export function stepsBetween(from: Build, to: Build, layouts: readonly [Layout, Layout]): readonly Step[] {
  const swaps = swapsBetween(from, to);
  const elsewhere = JSON.stringify(layouts[0]) !== JSON.stringify(layouts[1]);
  return swaps.flatMap(({ seat, build }): readonly Step[] => {
    if (seat !== 'frame' || !elsewhere) return [{ cause: seat, build }];
    const moved: Build = { ...from, frame: { ...from.frame, layout: layouts[1] } };
    const same = from.frame.part === to.frame.part && from.frame.armThickness === to.frame.armThickness;
    return [{ cause: 'layout', build: moved }, ...(same ? [] : [{ cause: seat, build }])];
  });
}

/** A single change to a build, for who wants to see what one thing does. */
export interface SingleChange {
  readonly id: string;
  readonly says: string;
  readonly step: Step;
}

const MORE_MASS = 0.05; // [kg]
const PACK_MOVED = 0.015; // [m]

/** @param mass all-up [kg] @param spacing between the nearest motors [m] */
export function singleChanges(build: Build, mass: number, spacing: number): readonly SingleChange[] {
  const layouts = LAYOUT_KINDS.map(
    (kind): SingleChange => ({
      id: `layout ${kind}`,
      says: `the same parts as ${kind}`,
      step: {
        cause: 'layout',
        build: { ...build, frame: { ...build.frame, layout: layoutOfKind(kind, spacing) } },
      },
    }),
  );
  return [
    ...layouts,
    {
      id: 'mass',
      says: 'the same, 50 g heavier',
      step: {
        cause: 'mass',
        build: { ...build, measured: { ...build.measured, mass: { value: mass + MORE_MASS } } },
      },
    },
    {
      id: 'balance',
      says: 'the same, its pack 15 mm further forward',
      step: {
        cause: 'balance',
        build: { ...build, pack: { ...build.pack, offset: build.pack.offset + PACK_MOVED } },
      },
    },
  ];
}

/**
 * A drawing as plain data: the page gives it to React, the report writes it out as a string.
 * Coordinates in [mm] of the aircraft, sheet axes: x right, y down the sheet.
 */
export interface Drawing {
  /** The part of the plane that is shown [mm]. */
  readonly frame: Frame;
  readonly shapes: readonly Shape[];
  /** What the drawing shows, as a sentence for those who can't see it. */
  readonly description: string;
}

export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The pen a shape is drawn with. Weight, dash and colour belong to `drawing.css`. */
export type Ink =
  | 'outline'
  | 'body'
  | 'carbon'
  | 'hatch'
  | 'hidden'
  | 'fine'
  | 'disc'
  | 'blade'
  | 'centre'
  | 'dimension'
  | 'sight'
  | 'solid'
  | 'balance'
  | 'thrust'
  | 'curve'
  | 'band'
  | 'window'
  | 'limit'
  | 'grid'
  | 'bar'
  | 'sky'
  | 'ground'
  | 'veil'
  | 'silhouette';

/** The hand a text is lettered in. */
export type Hand = 'figure' | 'label' | 'dimension' | Tone;

/** How grave the thing is that a mark or text speaks of. */
export type Tone = 'stop' | 'risk' | 'note';

export type Shape =
  | { readonly kind: 'path'; readonly ink: Ink; readonly d: string }
  | { readonly kind: 'circle'; readonly ink: Ink; readonly x: number; readonly y: number; readonly r: number }
  | {
      readonly kind: 'text';
      readonly hand: Hand;
      readonly x: number;
      readonly y: number;
      /** Letter height [mm of the aircraft]. */
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      /** Turn about (x, y), clockwise on the sheet [deg]. */
      readonly turn?: number;
      readonly text: string;
    }
  /** Turned about a place, clockwise on the sheet [deg]. */
  | {
      readonly kind: 'turned';
      readonly angle: number;
      readonly about: Point;
      readonly shapes: readonly Shape[];
    }
  | { readonly kind: 'group'; readonly part: PartKey; readonly shapes: readonly Shape[] };

/** The part of the aircraft a group of shapes stands for; findings name parts by the same words. */
export type PartKey = 'frame' | 'motors' | 'propeller' | 'pack' | 'camera' | 'recording' | 'guards' | 'stack';

/** Shapes that stand for one part. */
export const group = (part: PartKey, shapes: readonly Shape[]): Shape => ({ kind: 'group', part, shapes });

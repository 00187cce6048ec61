import { Color } from 'three';
import type { Look } from '../../report/solids/solidsOf.ts';

/** The sheet's own colours for the view in the round, read where the view stands. */
export interface Inks {
  readonly ink: Color;
  readonly pencil: Color;
  readonly accent: Color;
  readonly looks: Readonly<Record<Look, Color>>;
  /** Of the bands of stress, lowest first: each clearly darker on paper, clearly lighter on a blueprint. */
  readonly bands: readonly Color[];
  readonly dark: boolean;
}

export function inksOf(element: Element): Inks {
  const style = getComputedStyle(element);
  const read = (name: string): Color => new Color(style.getPropertyValue(name).trim());
  const [ink, pencil, accent, plate, carbon] = ['--ink', '--pencil', '--accent', '--plate', '--carbon'].map(
    read,
  ) as [Color, Color, Color, Color, Color];
  const dark = plate.getHSL({ h: 0, s: 0, l: 0 }).l < 0.4;
  const mixed = (a: Color, b: Color, share: number): Color => a.clone().lerp(b, share);
  const low = mixed(plate, accent, dark ? 0.12 : 0.1);
  const high = dark ? new Color('#ffe9c7') : new Color('#5d1030');
  const middle = dark ? mixed(accent, plate, 0.25) : accent;
  return {
    ink,
    pencil,
    accent,
    looks: {
      carbon: mixed(carbon, pencil, dark ? 0.18 : 0.22),
      metal: mixed(plate, pencil, dark ? 0.24 : 0.14),
      blade: mixed(accent, plate, dark ? 0.62 : 0.62),
      body: mixed(plate, carbon, 0.25),
      board: mixed(accent, plate, dark ? 0.72 : 0.8),
      guard: mixed(plate, pencil, 0.1),
      soft: mixed(pencil, plate, dark ? 0.55 : 0.5),
    },
    bands: [0, 0.25, 0.5, 0.75, 1].map((share) =>
      share <= 0.5 ? mixed(low, middle, share * 2) : mixed(middle, high, share * 2 - 1),
    ),
    dark,
  };
}

import type { Build } from '../../build/schema/build.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';

type Layout = NonNullable<Build['frame']['layout']>;

/** The layouts a newcomer asks about, in the order they are told. */
export const LAYOUT_KINDS = [
  'true X',
  'stretched X',
  'squashed X',
  'H',
  'dead cat',
  'plus',
  'tri',
  'hexa X',
  'octo',
  'X8 coaxial',
  'Y6 coaxial',
] as const satisfies readonly Layout['kind'][];
export type LayoutChoice = (typeof LAYOUT_KINDS)[number];

/** Between the discs of a coaxial pair, back to back on one arm [m]. Common practice, no source. */
const DISC_SPACING = 0.06;

/**
 * A layout whose nearest motors are `spacing` [m] apart, so that the tip gap stays what it was
 * and only the layout differs. Proportions are common practice, no source.
 */
export function layoutOfKind(kind: LayoutChoice, spacing: number): Layout {
  switch (kind) {
    case 'true X':
    case 'plus':
      return { kind, diagonal: spacing * Math.SQRT2 };
    case 'stretched X':
      return { kind, width: spacing, length: spacing * 1.12 };
    case 'squashed X':
      return { kind, width: spacing * 1.12, length: spacing };
    case 'H':
      return { kind, width: spacing, length: spacing * 1.2 };
    case 'dead cat':
      return { kind, frontWidth: spacing * 1.25, rearWidth: spacing, length: spacing };
    case 'tri':
      return { kind, frontWidth: spacing, length: (spacing * Math.sqrt(3)) / 2 };
    case 'hexa X':
      return { kind, diagonal: spacing * 2 };
    case 'octo':
      return { kind, diagonal: spacing / Math.sin(Math.PI / 8) };
    case 'X8 coaxial':
      return { kind, width: spacing, length: spacing, discSpacing: DISC_SPACING };
    case 'Y6 coaxial':
      return { kind, frontWidth: spacing, length: (spacing * Math.sqrt(3)) / 2, discSpacing: DISC_SPACING };
  }
}

/** Distance of the nearest two motors that do not share an axis [m]. */
export function spacingOf(aircraft: AircraftPicture): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const a of aircraft.rotors) {
    for (const b of aircraft.rotors) {
      const distance = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);
      if (distance > 0.001) nearest = Math.min(nearest, distance);
    }
  }
  return nearest;
}

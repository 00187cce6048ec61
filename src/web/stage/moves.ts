import type { StationReport } from '../../assess/assessment.ts';
import type { Build } from '../../build/schema/build.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';

type Layout = NonNullable<Build['frame']['layout']>;

/** What a drag needs to know beside the picture. */
export interface Movable {
  readonly layout: Layout;
  readonly stations: readonly StationReport[];
}

/** Nearest and farthest that a file may tell between motors [m]. */
const LEAST = 0.03;
const MOST = 1.5;
/** By so much at least [m]. */
const WIDER = 0.001;
const within = (length: number): number => Math.min(Math.max(length, LEAST), MOST);

/** The layout with one motor brought to a place (x forward, y right) [m]; a trade layout keeps its symmetry. */
export function withMotorAt(
  layout: Layout,
  index: number,
  to: { readonly x: number; readonly y: number },
): Layout {
  const across = within(2 * Math.abs(to.y));
  const along = within(2 * Math.abs(to.x));
  switch (layout.kind) {
    case 'true X':
    case 'plus':
    case 'hexa X':
    case 'hexa plus':
    case 'octo':
    case 'octo plus':
      return { ...layout, diagonal: within(2 * Math.hypot(to.x, to.y)) };
    case 'stretched X':
    case 'squashed X':
    case 'H':
    case 'X8 coaxial':
      return { ...layout, width: across, length: along };
    case 'dead cat':
      // A dead cat is wider in front: the hand stops where it would be none.
      return to.x > 0
        ? { ...layout, frontWidth: Math.max(across, layout.rearWidth + WIDER), length: along }
        : { ...layout, rearWidth: Math.min(across, layout.frontWidth - WIDER), length: along };
    case 'tri':
    case 'Y6 coaxial':
      // The origin is the mean of the motors: two in front lie a third of the length ahead of it.
      return to.x > 0
        ? { ...layout, frontWidth: across, length: within(3 * to.x) }
        : { ...layout, length: within(1.5 * Math.abs(to.x)) };
    case 'positions':
      return {
        ...layout,
        motors: layout.motors.map((motor, i) => (i === index ? { ...motor, x: to.x, y: to.y } : motor)),
      };
  }
}

/** The same motors, each free to stand where it likes. Undefined for coaxial pairs, which share a place. */
export function eachByItself({ layout, stations }: Movable): Layout | undefined {
  if (layout.kind === 'positions' || layout.kind === 'X8 coaxial' || layout.kind === 'Y6 coaxial')
    return undefined;
  return {
    kind: 'positions',
    motors: stations.map(({ name, place, spin }) => ({
      name,
      x: place[0],
      y: place[1],
      spin: spin === 1 ? 'clockwise' : 'counterclockwise',
    })),
  };
}

/** The build with its pack so far forward of its middle [m]. */
export const withPackAt = (build: Build, offset: number): Build => ({
  ...build,
  pack: { ...build.pack, offset },
});

/** The build with a camera moved forward and to the right from where it is drawn [m]. */
export function withCameraAt(build: Build, index: number, at: AircraftPicture['centreOfGravity']): Build {
  const place = { x: at.x, y: at.y, z: at.z };
  return { ...build, cameras: build.cameras.map((each, i) => (i === index ? { ...each, place } : each)) };
}

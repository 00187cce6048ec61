import type { PictureChange } from '../../assess/parts/airframeData.ts';
import type { Finding } from '../../assess/types.ts';
import type { Build } from '../../build/schema/build.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { ADDITIONS, type Slot, slotsOf } from '../schedule/slots.ts';
import type { BuildView, ShelfRow } from '../worker/protocol.ts';

/** What could be done about a finding: a change that is known, or a part of the shelf to be found. */
export type Remedy =
  | { readonly kind: 'change'; readonly says: string; readonly build: Build }
  | { readonly kind: 'search'; readonly says: string; readonly builds: readonly Build[] };

type Shown = Extract<BuildView, { ok: true }>;

/** The remedies of a finding that the page can try by itself; empty when there is none. */
export function remediesOf(
  finding: Finding,
  build: Build,
  view: Shown,
  shelf: readonly ShelfRow[],
): readonly Remedy[] {
  const changes = known(finding, build, view, shelf);
  // A note is for knowing; only what ought to be mended is looked for on the shelf.
  return finding.severity === 'note' ? changes : [...changes, ...searches(finding, build, shelf)];
}

const tenths = (length: number): number => Number((length * 1000).toFixed(1));
const millimetres = (length: number): string => withUnit(tenths(length), 'mm');
/** What is bought by it: said so in any units. */
const size = (length: number): string => `${tenths(length)} mm`;
const degrees = (angle: number): string => `${Number(((angle * 180) / Math.PI).toFixed(1))} deg`;
const change = (says: string, build: Build): readonly Remedy[] => [{ kind: 'change', says, build }];

function known(finding: Finding, build: Build, view: Shown, shelf: readonly ShelfRow[]): readonly Remedy[] {
  switch (finding.id) {
    case 'balance':
      return slidePack(build, view, shelf);
    case 'motor-screw-into-winding':
    case 'motor-screw-short':
      return otherScrews(build, view);
    case 'motor-screws-at-hand':
      return boxedScrews(finding, build);
    case 'hover-resonance':
    case 'throttle-ranges-that-ring':
    case 'mode-in-controller-band':
      return thickerArms(build, view);
    case 'camera-tilt-window':
    case 'camera-tilt-range':
    case 'camera-against-cruise':
      return toTheLimit(finding, build);
    case 'video-power-legal':
      return lessPower(finding, build);
    case 'gyro-mounting': {
      const flightController = { ...build.flightController, gyroMounting: 'soft' as const };
      return change('mount the gyro soft', { ...build, flightController });
    }
    case 'main-wire':
      return thickerWire(build);
    case 'pack-side': {
      const side = build.pack.side === 'below' ? ('above' as const) : ('below' as const);
      return change(`pack ${side} the plate`, { ...build, pack: { ...build.pack, side } });
    }
    default:
      return finding.sheet === 'picture' ? clearing(finding, build, view) : [];
  }
}

/** Slides the pack until the centre of gravity lies under the centre of lift. */
function slidePack(
  build: Build,
  { picture, assessment }: Shown,
  shelf: readonly ShelfRow[],
): readonly Remedy[] {
  const mass = assessment.measures.find(({ id }) => id === 'all-up-mass')?.value;
  const pack = shelf.find(({ id }) => id === build.pack.part)?.mass;
  if (mass === undefined || pack === undefined || !(pack > 0)) return [];
  const off = picture.centreOfGravity.x - picture.thrustCentre.x;
  const by = Math.round(((-off * mass) / pack) * 1000) / 1000;
  if (by === 0) return [];
  const offset = build.pack.offset + by;
  const way = by > 0 ? 'forward' : 'back';
  return change(`slide the pack ${millimetres(Math.abs(by))} ${way}`, {
    ...build,
    pack: { ...build.pack, offset },
  });
}

/** Arm and at most 3 mm of thread (common practice, no source); screws come in whole millimetres. */
function otherScrews(build: Build, { picture }: Shown): readonly Remedy[] {
  const arm = picture.arms[0]?.thickness;
  if (arm === undefined) return [];
  const motorLength = Math.floor(arm * 1000 + 3 + 1e-6) / 1000;
  if (motorLength === build.screws.motorLength) return [];
  return change(`motor screws of ${size(motorLength)}`, {
    ...build,
    screws: { ...build.screws, motorLength },
  });
}

/** The screws that the frame goes with. */
function boxedScrews({ number }: Finding, build: Build): readonly Remedy[] {
  if (number?.quantity !== 'length') return [];
  const motorLength = number.limit;
  return change(`motor screws of ${size(motorLength)}`, {
    ...build,
    screws: { ...build.screws, motorLength },
  });
}

const THICKER = 0.001; // [m], the step in which plates are sold

/** Stiffer arms move the modes up; mass and price go with them. */
function thickerArms(build: Build, { picture }: Shown): readonly Remedy[] {
  const arm = picture.arms[0]?.thickness;
  if (arm === undefined) return [];
  const armThickness = Math.round((arm + THICKER) * 1e5) / 1e5;
  return change(`arms of ${size(armThickness)}`, {
    ...build,
    frame: { ...build.frame, armThickness },
  });
}

function toTheLimit({ number }: Finding, build: Build): readonly Remedy[] {
  if (number?.quantity !== 'angle') return [];
  const tilt = number.limit;
  const cameras = build.cameras.map((each) => (each.role === 'flying' ? { ...each, tilt } : each));
  return change(`tilt the camera to ${degrees(tilt)}`, { ...build, cameras });
}

function lessPower({ number }: Finding, build: Build): readonly Remedy[] {
  if (number?.quantity !== 'power' || build.videoLink === undefined) return [];
  const { value, limit } = number;
  const now = build.videoLink.outputPower;
  // The value is what is radiated: the antenna bundles, so that less goes into it. In whole milliwatts.
  const outputPower =
    now !== undefined && value > now ? Math.floor((1000 * now * limit) / value) / 1000 : limit;
  if (!(outputPower > 0) || outputPower === now) return [];
  return change(`set the video link to ${Math.round(outputPower * 1000)} mW`, {
    ...build,
    videoLink: { ...build.videoLink, outputPower },
  });
}

/** Two gauge numbers thicker: 1.59 times the section (ASTM B258: a gauge is a step of 92^(1/39) in diameter). */
const TWO_GAUGES = 92 ** (4 / 39);

function thickerWire(build: Build): readonly Remedy[] {
  const { packLead } = build.wiring;
  if (packLead === undefined) return [];
  const lead = { ...packLead, area: packLead.area * TWO_GAUGES };
  return change('pack lead two gauges thicker', { ...build, wiring: { ...build.wiring, packLead: lead } });
}

/** The smallest changes that clear a camera's picture, as the picture's own search found them. */
function clearing(finding: Finding, build: Build, { assessment, picture }: Shown): readonly Remedy[] {
  return (assessment.data?.pictures ?? [])
    .filter(({ camera }) => finding.parts.includes(`cameras[${camera}]`))
    .flatMap(({ camera, clearing = [] }) => {
      const at = picture.boxes.filter(({ part }) => part === 'camera' || part === 'recording')[camera]?.at;
      const seat = build.cameras[camera];
      if (at === undefined || seat === undefined) return [];
      return clearing.flatMap((each) => {
        const moved = movedCamera(each, seat, seat.place ?? at);
        if (moved === undefined) return [];
        const cameras = build.cameras.map((other, i) => (i === camera ? moved.seat : other));
        return change(moved.says, { ...build, cameras });
      });
    });
}

type Seat = Build['cameras'][number];

function movedCamera(
  { change: way, amount }: PictureChange,
  seat: Seat,
  at: NonNullable<Seat['place']>,
): { readonly says: string; readonly seat: Seat } | undefined {
  if (amount === undefined) return undefined;
  switch (way) {
    case 'forward':
      return {
        says: `carry the camera ${millimetres(amount)} forward`,
        seat: { ...seat, place: { ...at, x: at.x + amount } },
      };
    case 'up':
      return {
        says: `raise the camera ${millimetres(amount)}`,
        seat: { ...seat, place: { ...at, z: at.z - amount } },
      };
    case 'tilt up':
      return { says: `tilt it ${degrees(amount)} further up`, seat: { ...seat, tilt: seat.tilt + amount } };
    case 'tilt down':
      return { says: `tilt it ${degrees(amount)} down`, seat: { ...seat, tilt: seat.tilt - amount } };
    case 'smaller propellers':
      return undefined;
  }
}

/** Parts that a finding may be mended by adding. */
const ADDED: Readonly<Record<string, (row: ShelfRow) => boolean>> = {
  'capacitor-fitted': ({ kind }) => kind === 'capacitor',
  'bus-spike': ({ kind }) => kind === 'capacitor',
  'strap-count': ({ kind }) => kind === 'strap',
  'recording-camera-mount': ({ kind }) => kind === 'mount',
  'flying-camera-mount': ({ kind }) => kind === 'mount',
  'video-antenna': ({ kind }) => kind === 'antenna',
  'receiver-antenna': ({ kind }) => kind === 'antenna',
};

/** Another part in the place of one that the finding speaks of, or one more on board. */
function searches(finding: Finding, build: Build, shelf: readonly ShelfRow[]): readonly Remedy[] {
  const slots = slotsOf(build);
  const named = (slot: Slot): boolean =>
    finding.parts.some(
      (part) => slot.key === part || (part === 'cameras' && slot.key.startsWith('cameras[')),
    );
  const other = slots
    .filter((slot) => named(slot) && slot.key !== 'frame' && slot.part !== undefined)
    .slice(0, 3)
    .map((slot): Remedy => {
      const rows = shelf.filter((row) => slot.takes(row) && row.id !== slot.part);
      return {
        kind: 'search',
        says: `look for other ${slot.label}`,
        builds: rows.map(({ id }) => slot.put(build, id)),
      };
    });
  const fits = ADDED[finding.id];
  const addition = ADDITIONS.find(({ takes }) => shelf.some((row) => fits?.(row) && takes(row)));
  const added: readonly Remedy[] =
    fits && addition
      ? [
          {
            kind: 'search',
            says: 'look for one to add',
            builds: shelf.filter(fits).map(({ id }) => addition.put(build, id)),
          },
        ]
      : [];
  const connectors = shelf.filter(({ kind }) => kind === 'connector');
  const plugs: readonly Remedy[] = finding.id.startsWith('connector-')
    ? [
        {
          kind: 'search',
          says: 'look for another plug',
          builds: connectors.map(({ id }) => ({ ...build, wiring: { ...build.wiring, connector: id } })),
        },
      ]
    : [];
  return [...added, ...plugs, ...other].filter(
    (remedy) => remedy.kind === 'change' || remedy.builds.length > 0,
  );
}

import type { Build } from '../../build/schema/build.ts';
import type { PartKind } from '../../build/schema/partKinds.ts';
import type { ShelfRow } from '../worker/protocol.ts';

/** A place of a build that a part is chosen for. */
export interface Slot {
  /** As findings name the part: `motors`, `cameras[0]`. */
  readonly key: string;
  readonly label: string;
  readonly kind: PartKind;
  readonly part: string | undefined;
  readonly put: (build: Build, part: string) => Build;
  /** Takes the part out; absent where the craft can't be without. */
  readonly empty?: (build: Build) => Build;
  /** Whether a part of the shelf may go here. */
  readonly takes: (row: ShelfRow) => boolean;
}

/** Every place of a build that has a part or may have one, in the order of the schedule. */
export function slotsOf(build: Build): readonly Slot[] {
  const of =
    (kind: PartKind) =>
    (row: ShelfRow): boolean =>
      row.kind === kind;
  const cameras = build.cameras.map((camera, i): Slot => {
    const rest = (now: Build) => now.cameras.filter((_, k) => k !== i);
    return {
      key: `cameras[${i}]`,
      label: `${camera.role} camera`,
      kind: 'camera',
      part: camera.part,
      put: (now, part) => ({
        ...now,
        cameras: now.cameras.map((each, k) => (k === i ? { ...each, part } : each)),
      }),
      ...(camera.role === 'recording' ? { empty: (now: Build) => ({ ...now, cameras: rest(now) }) } : {}),
      takes: (row) => row.kind === 'camera' && row.roles?.includes(camera.role) === true,
    };
  });
  return [
    {
      key: 'frame',
      label: 'frame',
      kind: 'frame',
      part: build.frame.part,
      // Another frame comes with its own layout.
      put: (now, part) => ({ ...now, frame: { part } }),
      takes: of('frame'),
    },
    {
      key: 'motors',
      label: 'motors',
      kind: 'motor',
      part: build.motors.part,
      put: (now, part) => ({ ...now, motors: { ...now.motors, part, except: [] } }),
      takes: of('motor'),
    },
    {
      key: 'propellers',
      label: 'propellers',
      kind: 'propeller',
      part: build.propellers.part,
      put: (now, part) => ({ ...now, propellers: { ...now.propellers, part, except: [] } }),
      takes: of('propeller'),
    },
    {
      key: 'pack',
      label: 'pack',
      kind: 'pack',
      part: build.pack.part,
      put: (now, part) => ({ ...now, pack: { ...now.pack, part } }),
      takes: of('pack'),
    },
    {
      key: 'controllers',
      label: 'controllers',
      kind: 'controller',
      part: build.controllers?.part,
      put: (now, part) => ({ ...now, controllers: { part } }),
      empty: ({ controllers: _, ...now }) => now,
      takes: of('controller'),
    },
    ...cameras,
    {
      key: 'flightController',
      label: 'flight controller',
      kind: 'flightController',
      part: build.flightController.part,
      put: (now, part) => ({ ...now, flightController: { ...now.flightController, part } }),
      takes: of('flightController'),
    },
    {
      key: 'videoLink',
      label: 'video link',
      kind: 'videoLink',
      part: build.videoLink?.part,
      put: (now, part) => ({ ...now, videoLink: { ...now.videoLink, part } }),
      empty: ({ videoLink: _, ...now }) => now,
      takes: of('videoLink'),
    },
    {
      key: 'receiver',
      label: 'receiver',
      kind: 'receiver',
      part: build.receiver?.part,
      put: (now, part) => ({ ...now, receiver: { ...now.receiver, part } }),
      empty: ({ receiver: _, ...now }) => now,
      takes: of('receiver'),
    },
    ...build.antennas.map(
      (antenna, i): Slot => ({
        key: `antennas[${i}]`,
        label: build.antennas.length > 1 ? `antenna ${i + 1}` : 'antenna',
        kind: 'antenna',
        part: antenna.part,
        put: (now, part) => ({
          ...now,
          antennas: now.antennas.map((each, k) => (k === i ? { ...each, part } : each)),
        }),
        empty: (now) => ({ ...now, antennas: now.antennas.filter((_, k) => k !== i) }),
        takes: of('antenna'),
      }),
    ),
    ...build.extras.map((extra, i): Slot => {
      const kinds = EXTRA_KINDS;
      return {
        key: `extras[${i}]`,
        label: `extra ${i + 1}`,
        kind: 'mount',
        part: extra.part,
        put: (now, part) => ({
          ...now,
          extras: now.extras.map((each, k) => (k === i ? { ...each, part } : each)),
        }),
        empty: (now) => ({ ...now, extras: now.extras.filter((_, k) => k !== i) }),
        takes: (row) => kinds.includes(row.kind),
      };
    }),
  ];
}

/** What else may be on board. */
export const EXTRA_KINDS: readonly PartKind[] = [
  'mount',
  'strap',
  'capacitor',
  'positionReceiver',
  'beeper',
  'guardSet',
  'lamp',
];

/** The places that can be filled beyond those a build has. */
export const ADDITIONS: readonly {
  readonly label: string;
  readonly takes: (row: ShelfRow) => boolean;
  readonly put: (build: Build, part: string) => Build;
}[] = [
  {
    label: 'recording camera',
    takes: (row) => row.kind === 'camera' && row.roles?.includes('recording') === true,
    put: (now, part) => ({ ...now, cameras: [...now.cameras, { part, role: 'recording', tilt: 0 }] }),
  },
  {
    label: 'antenna',
    takes: (row) => row.kind === 'antenna',
    put: (now, part) => ({ ...now, antennas: [...now.antennas, { part }] }),
  },
  {
    label: 'extra',
    takes: (row) => EXTRA_KINDS.includes(row.kind),
    put: (now, part) => ({ ...now, extras: [...now.extras, { part, count: 1 }] }),
  },
];

import type { Layout } from '../../airframe/types.ts';
import { nearestName } from '../../units/nearestName.ts';
import type { CraftParts } from '../craft.ts';
import { type FileError, failed, type Path, pathText, type Reading } from '../read/fileError.ts';
import type { FilePlace } from '../read/plainData.ts';
import type { Build } from '../schema/build.ts';
import type { Part, PartKind } from '../schema/part.ts';
import { partsOf, type Shelf } from '../shelf.ts';

/** Where a build was read, so that an error can point into its file. */
export interface BuildPlace {
  readonly file: string;
  readonly placeOf: (path: Path) => FilePlace;
}

/** Looks every id of a build up on the shelf: all that are missing or of a wrong kind are told at once. */
export function findParts(
  build: Build,
  shelf: Shelf,
  layout: Layout,
  where: BuildPlace,
): Reading<CraftParts> {
  const errors: FileError[] = [];
  const complain = (
    path: Path,
    words: Pick<FileError, 'says' | 'found' | 'allowed' | 'remedy'>,
  ): undefined => {
    errors.push({ file: where.file, ...where.placeOf(path), path: pathText(path), ...words });
    return undefined;
  };

  const any = (path: Path, id: string): Part | undefined => {
    const part = shelf.parts.get(id);
    if (part) return part;
    const near = nearestName(id, [...shelf.parts.keys()]);
    const remedy = near ? `Did you mean "${near}"?` : 'Look through the shelf, or add the part to your own.';
    const says = `no part with the id "${id}" is on the shelf`;
    return complain(path, { says, found: `"${id}"`, allowed: 'the id of a part on the shelf', remedy });
  };

  const one = <K extends PartKind>(
    path: Path,
    id: string,
    kind: K,
  ): Extract<Part, { kind: K }> | undefined => {
    const found = shelf.parts.get(id);
    if (found && found.kind !== kind) {
      const says = `"${id}" is a ${found.kind}, not a ${kind}`;
      return complain(path, { says, found: found.kind, allowed: kind, remedy: `Give the id of a ${kind}.` });
    }
    const all = partsOf(shelf, kind);
    const match = all.find((part) => part.id === id);
    if (match) return match;
    const near = nearestName(id, all.map((part) => part.id)); // biome-ignore format: one thought
    const few = all.slice(0, 6).map((part) => part.id);
    const allowed =
      all.length === 0 ? `a ${kind}, of which the shelf has none` : `a ${kind} such as ${few.join(', ')}`;
    const remedy = near
      ? `Did you mean "${near}"?`
      : `Give the id of a ${kind}, or add it to your own shelf.`;
    return complain(path, {
      says: `no ${kind} with the id "${id}" is on the shelf`,
      found: `"${id}"`,
      allowed,
      remedy,
    });
  };

  const perMotor = <K extends PartKind>(
    seat: 'motors' | 'propellers',
    kind: K,
  ): (Extract<Part, { kind: K }> | undefined)[] => {
    const usual = one([seat, 'part'], build[seat].part, kind);
    const parts = layout.motors.map(() => usual);
    const names = layout.motors.map(({ name }) => name);
    for (const [index, exception] of build[seat].except.entries()) {
      const at = names.indexOf(exception.at);
      if (at < 0) {
        const near = nearestName(exception.at, names);
        const says = `no motor is called "${exception.at}"`;
        const remedy = near ? `Did you mean "${near}"?` : 'Give the name of a motor of this layout.';
        complain([seat, 'except', index, 'at'], {
          says,
          found: `"${exception.at}"`,
          allowed: names.join(', '),
          remedy,
        });
        continue;
      }
      parts[at] = one([seat, 'except', index, 'part'], exception.part, kind);
    }
    return parts;
  };

  const frame = one(['frame', 'part'], build.frame.part, 'frame');
  const motors = perMotor('motors', 'motor');
  const propellers = perMotor('propellers', 'propeller');
  const flightController = one(['flightController', 'part'], build.flightController.part, 'flightController');
  const pack = one(['pack', 'part'], build.pack.part, 'pack');
  const controllers = build.controllers && one(['controllers', 'part'], build.controllers.part, 'controller');
  const videoLink = build.videoLink && one(['videoLink', 'part'], build.videoLink.part, 'videoLink');
  const receiver = build.receiver && one(['receiver', 'part'], build.receiver.part, 'receiver');
  const plug = build.wiring.connector;
  const connector = plug === undefined ? undefined : one(['wiring', 'connector'], plug, 'connector');
  const cameras = build.cameras.map(({ part }, index) => one(['cameras', index, 'part'], part, 'camera'));
  const antennas = build.antennas.map(({ part }, index) => one(['antennas', index, 'part'], part, 'antenna'));
  const extras = build.extras.map(({ part, count }, index) => ({
    part: any(['extras', index, 'part'], part),
    count,
  }));

  if (flightController && !build.controllers && !flightController.builtInController) {
    complain(['controllers'], {
      says: 'is missing, and the flight controller has no motor controllers built in',
      found: 'nothing',
      allowed: 'the id of a controller',
      remedy: 'Add the field, or take a flight controller with built-in motor controllers.',
    });
  }
  if (errors.length > 0 || !frame || !flightController || !pack) return failed(errors);
  return {
    ok: true,
    value: {
      frame,
      motors: motors.filter(isThere),
      propellers: propellers.filter(isThere),
      ...(controllers ? { controllers } : {}),
      flightController,
      pack,
      cameras: cameras.filter(isThere),
      ...(videoLink ? { videoLink } : {}),
      ...(receiver ? { receiver } : {}),
      antennas: antennas.filter(isThere),
      extras: extras.flatMap(({ part, count }) => (part ? [{ part, count }] : [])),
      ...(connector ? { connector } : {}),
    },
  };
}

const isThere = <T>(value: T | undefined): value is T => value !== undefined;

import type { Build } from '../../build/schema/build.ts';
import { partsOf, type Shelf } from '../../build/shelf.ts';
import type { Electronics, SearchSpace } from './types.ts';

/** The seats that can be searched. */
export const SEATS = [
  'frame',
  'motors',
  'propellers',
  'pack',
  'controllers',
  'flightController',
  'cameras',
] as const;
export type SearchSeat = (typeof SEATS)[number];

/**
 * Every part of the shelf for the seats searched, the template's own for the others. Four-in-one and single
 * controllers go with every flight controller that has none built in; one that has stands alone.
 * Flying cameras are those that speak the template's video system.
 */
export function spaceOf(template: Build, shelf: Shelf, seats: readonly SearchSeat[]): SearchSpace {
  const ids = (seat: SearchSeat, kind: 'frame' | 'motor' | 'propeller' | 'pack', own: string) =>
    seats.includes(seat) ? partsOf(shelf, kind).map(({ id }) => id) : [own];
  return {
    frames: ids('frame', 'frame', template.frame.part),
    motors: ids('motors', 'motor', template.motors.part),
    propellers: ids('propellers', 'propeller', template.propellers.part),
    packs: ids('pack', 'pack', template.pack.part),
    electronics: electronicsOf(template, shelf, seats),
    cameras: camerasOf(template, shelf, seats.includes('cameras')),
  };
}

function electronicsOf(template: Build, shelf: Shelf, seats: readonly SearchSeat[]): readonly Electronics[] {
  const boards = partsOf(shelf, 'flightController').filter(
    ({ id }) => seats.includes('flightController') || id === template.flightController.part,
  );
  const controllers = partsOf(shelf, 'controller').filter(
    ({ id }) => seats.includes('controllers') || id === template.controllers?.part,
  );
  return boards.flatMap((board): readonly Electronics[] =>
    board.builtInController === undefined
      ? controllers.map(({ id }) => ({ controllers: id, flightController: board.id }))
      : [{ flightController: board.id }],
  );
}

function camerasOf(template: Build, shelf: Shelf, searched: boolean): readonly string[] {
  const own = template.cameras.find(({ role }) => role === 'flying');
  if (own === undefined) return [];
  if (!searched) return [own.part];
  const link = template.videoLink && shelf.parts.get(template.videoLink.part);
  const system = link?.kind === 'videoLink' ? link.system : undefined;
  return partsOf(shelf, 'camera')
    .filter((camera) => camera.roles.includes('flying') && (system === undefined || camera.system === system))
    .map(({ id }) => id);
}

/** How many combinations a space holds. */
export function sizeOfSpace(space: SearchSpace): number {
  const { frames, motors, propellers, packs, electronics, cameras } = space;
  return (
    frames.length *
    motors.length *
    propellers.length *
    packs.length *
    electronics.length *
    Math.max(1, cameras.length)
  );
}

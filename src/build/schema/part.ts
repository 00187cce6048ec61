import { z } from 'zod';
import {
  antenna,
  beeper,
  camera,
  flightController,
  positionReceiver,
  receiver,
  videoLink,
} from './electronics.ts';
import { frame } from './frame.ts';
import type { PartKind } from './partKinds.ts';
import { controller, motor, pack, propeller } from './propulsion.ts';
import {
  bench,
  capacitor,
  charger,
  connector,
  goggles,
  guardSet,
  lamp,
  mount,
  screws,
  strap,
  transmitter,
  wire,
} from './sundries.ts';

/** The schema of each kind of part. */
export const PART_SCHEMAS = {
  frame,
  motor,
  propeller,
  pack,
  controller,
  flightController,
  camera,
  videoLink,
  receiver,
  antenna,
  positionReceiver,
  beeper,
  mount,
  strap,
  connector,
  wire,
  capacitor,
  screws,
  guardSet,
  lamp,
  goggles,
  transmitter,
  charger,
  bench,
} as const satisfies Record<PartKind, z.ZodType>;

export type { PartKind } from './partKinds.ts';
export type PartOf<K extends PartKind> = z.output<(typeof PART_SCHEMAS)[K]>;
export type Part = { [K in PartKind]: PartOf<K> }[PartKind];

const { frame: first, ...rest } = PART_SCHEMAS;

/** Any part, told apart by its `kind`. */
export const part = z.discriminatedUnion('kind', [first, ...Object.values(rest)]);

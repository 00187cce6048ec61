/** Every kind of part, aircraft first, then the kit round it. */
export const PART_KINDS = [
  'frame',
  'motor',
  'propeller',
  'pack',
  'controller',
  'flightController',
  'camera',
  'videoLink',
  'receiver',
  'antenna',
  'positionReceiver',
  'beeper',
  'mount',
  'strap',
  'connector',
  'wire',
  'capacitor',
  'screws',
  'guardSet',
  'lamp',
  'goggles',
  'transmitter',
  'charger',
  'bench',
] as const;

export type PartKind = (typeof PART_KINDS)[number];

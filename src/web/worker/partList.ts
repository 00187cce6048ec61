import { wiringHeat } from '../../assess/parts/heat.ts';
import { levelFlight } from '../../assess/parts/levelFlight.ts';
import { picturePart } from '../../assess/parts/picture/picturePart.ts';
import { controlInReserve } from '../../assess/parts/reserve.ts';
import type { AssessPart } from '../../assess/parts/types.ts';
import { windHolding } from '../../assess/parts/wind.ts';

/** The full tier's parts in the order they are run: what a newcomer asks first comes first. */
export const PARTS: readonly AssessPart[] = [
  levelFlight,
  windHolding,
  picturePart,
  controlInReserve,
  wiringHeat,
];

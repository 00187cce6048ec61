import type { Part } from '../../build/schema/part.ts';
import type { CostGroup } from '../../knocks/types.ts';
import type { Money } from '../../units/parseMoney.ts';

/** Adds a line for pieces of a part, rounded up to what the shop sells. */
export type AddPart = (group: CostGroup, part: Part, pieces: number, why: string) => void;
export type AddPrice = (
  group: CostGroup,
  id: string,
  what: string,
  count: number,
  price: Money | undefined,
  why: string,
) => void;

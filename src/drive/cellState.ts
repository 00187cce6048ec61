import { withUnit } from '../units/formatQuantity.ts';
import { chemistries } from './chemistry.ts';
import type { PackModel } from './types.ts';

/** What the loaded voltage of a cell says: fly on, land, or no answer since neither the model nor the electronics hold. */
export type CellState = 'holds' | 'under cut-off' | 'gives out';

/** @param cellVoltage loaded [V] */
export function cellState(
  { chemistry, cutOffCellVoltage }: Pick<PackModel, 'chemistry' | 'cutOffCellVoltage'>,
  cellVoltage: number,
): CellState {
  if (cellVoltage < chemistries[chemistry].lowestVoltage) return 'gives out';
  return cellVoltage < cutOffCellVoltage ? 'under cut-off' : 'holds';
}

/** The same in words; undefined where it holds. */
export function cellWords(
  pack: Pick<PackModel, 'chemistry' | 'cutOffCellVoltage'>,
  cellVoltage: number,
): string | undefined {
  switch (cellState(pack, cellVoltage)) {
    case 'holds':
      return undefined;
    case 'under cut-off':
      return `under the cut-off of ${withUnit(pack.cutOffCellVoltage, 'V')} a cell: land`;
    case 'gives out':
      return `the pack gives out, under ${withUnit(chemistries[pack.chemistry].lowestVoltage, 'V')} a cell`;
  }
}

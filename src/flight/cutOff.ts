import type { PackModel, PackSource } from '../drive/types.ts';

/** Loaded voltage under which no pilot lets the whole pack fall [V]. Minutes flown and missions share it. */
export const cutOffVoltage = (pack: PackModel): number => pack.series * pack.cutOffCellVoltage;

/** Current at which a pack's terminals stand at its cut-off [A]; 0 when they are there without any, endless when nothing sags. */
export function currentAtCutOff(pack: PackModel, source: PackSource): number {
  const room = source.emf - cutOffVoltage(pack);
  if (room <= 0) return 0;
  return source.resistance > 0 ? room / source.resistance : Number.POSITIVE_INFINITY;
}

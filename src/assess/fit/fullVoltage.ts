import { chemistries } from '../../drive/chemistry.ts';
import type { FitContext } from './types.ts';

/** Of a full pack, no load [V]: 4.2 V a cell, 4.35 V for high-voltage cells. */
export function fullVoltage({ craft }: FitContext): number {
  const { cells, chemistry } = craft.parts.pack;
  return cells * chemistries[chemistry].fullVoltage;
}

/** Of a pack when it is time to land [V]. */
export function emptyVoltage({ craft }: FitContext): number {
  const { cells, chemistry } = craft.parts.pack;
  return cells * chemistries[chemistry].cutOffVoltage;
}

import type { HitsReport } from '../assess/parts/airframeData.ts';

/** What meets the ground first in a level drop and what meets an obstacle ahead first, in words. */
export function loadPathWords(
  { landsFirst, leadsNose }: Pick<HitsReport, 'landsFirst' | 'leadsNose'>,
  length: (value: number) => string,
): string {
  return `In a level drop the ${landsFirst.what} ${meets(landsFirst.what)} the ground first, by ${length(landsFirst.lead)}. Ahead, propellers apart, the ${leadsNose.what} ${reaches(leadsNose.what)} furthest, by ${length(leadsNose.lead)}: what comes from there is taken by ${leadsNose.what === 'motors' ? 'the arms' : leadsNose.what === 'guards' ? 'the guards, and through them by the arms' : `the ${leadsNose.what}`}.`;
}

const isMany = (what: string): boolean => what.endsWith('s');
const meets = (what: string): string => (isMany(what) ? 'meet' : 'meets');
const reaches = (what: string): string => (isMany(what) ? 'reach' : 'reaches');

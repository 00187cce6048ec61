import { frameStructure } from '../../../airframe/askFrame.ts';
import { SURFACES } from '../../../airframe/hits.ts';
import type { Craft } from '../../../build/craft.ts';
import type { Brief } from '../../../build/schema/brief.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { HitsReport } from '../airframeData.ts';
import { craftFrame } from '../shake/craftFrame.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { hitAll } from './hitAll.ts';
import { hitFindings } from './hitFindings.ts';
import { hitMeasures } from './hitMeasures.ts';
import { landsFirst, leadsNose } from './leading.ts';

/** What a hit does to each arm. */
export const hitsPart: AssessPart = {
  id: 'hits',
  label: 'what a hit does to the arms',
  run: ({ craft, brief }: PartContext): PartResult => {
    const found = hitsOf(craft, brief);
    if (!found.ok) return { measures: [], findings: [] };
    const { report, stiffer } = found.value;
    return {
      measures: hitMeasures(craft, report.hits, stiffer.hits),
      findings: hitFindings(craft, report),
      data: { hits: report },
    };
  },
};

/** All hits, and those on wood again with a contact twice as stiff, to see how much that guess matters. */
export function hitsOf(
  craft: Craft,
  brief: Brief,
): Outcome<{ readonly report: HitsReport; readonly stiffer: Pick<HitsReport, 'hits'> }> {
  const structure = frameStructure(craftFrame(craft));
  if (!structure.ok) return structure;
  const struck = { craft, arms: structure.value.arms, purpose: brief.purpose };
  const hits = hitAll(struck);
  if (!hits.ok) return hits;
  const twice = SURFACES.filter(({ name }) => name === 'wood').map((surface) => ({
    ...surface,
    contactStiffness: 2 * surface.contactStiffness,
  }));
  const stiffer = hitAll({ ...struck, surfaces: twice });
  if (!stiffer.ok) return stiffer;
  return solved({
    report: { hits: hits.value, landsFirst: landsFirst(craft), leadsNose: leadsNose(craft) },
    stiffer: { hits: stiffer.value },
  });
}

import { frameStructure } from '../../../airframe/askFrame.ts';
import { SURFACES } from '../../../airframe/hits.ts';
import type { Craft } from '../../../build/craft.ts';
import type { Brief } from '../../../build/schema/brief.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { HitReport, HitsReport } from '../airframeData.ts';
import { craftFrame } from '../shake/craftFrame.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { hitAll, type StruckCraft } from './hitAll.ts';
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
    const report = found.value;
    return {
      measures: hitMeasures(craft, report.hits, stiffer(craft, brief)),
      findings: hitFindings(craft, report),
      data: { hits: report },
    };
  },
};

/** All hits of a craft, and what of it leads. */
export function hitsOf(craft: Craft, brief: Brief): Outcome<HitsReport> {
  const struck = struckOf(craft, brief);
  if (!struck.ok) return struck;
  const hits = hitAll(struck.value);
  return hits.ok
    ? solved({ hits: hits.value, landsFirst: landsFirst(craft), leadsNose: leadsNose(craft) })
    : hits;
}

/** Those on wood again with a contact twice as stiff, to see how much that guess matters. */
function stiffer(craft: Craft, brief: Brief): readonly HitReport[] {
  const struck = struckOf(craft, brief);
  const surfaces = SURFACES.filter(({ name }) => name === 'wood').map((surface) => ({
    ...surface,
    contactStiffness: 2 * surface.contactStiffness,
  }));
  const hits = struck.ok ? hitAll({ ...struck.value, surfaces }) : struck;
  return hits.ok ? hits.value : [];
}

function struckOf(craft: Craft, brief: Brief): Outcome<StruckCraft> {
  const structure = frameStructure(craftFrame(craft));
  return structure.ok ? solved({ craft, arms: structure.value.arms, purpose: brief.purpose }) : structure;
}

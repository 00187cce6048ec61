import type { TipGive } from '../../../airframe/armBeam.ts';
import { frameArms } from '../../../airframe/askFrame.ts';
import type { FrameArm } from '../../../airframe/frameModel.ts';
import { SURFACES } from '../../../airframe/hits.ts';
import type { Craft } from '../../../build/craft.ts';
import type { Brief } from '../../../build/schema/brief.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { Measure } from '../../types.ts';
import type { HitsReport } from '../airframeData.ts';
import { craftFrame } from '../shake/craftFrame.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { hitAll, type StruckCraft, struckCraft } from './hitAll.ts';
import { hitFindings } from './hitFindings.ts';
import { hitMeasures } from './hitMeasures.ts';
import { landsFirst, leadsNose } from './leading.ts';
import { stoppingOf } from './stopping.ts';

/** What a hit does to each arm. */
export const hitsPart: AssessPart = {
  id: 'hits',
  label: 'what a hit does to the arms',
  run: ({ craft, brief, flight }: PartContext): PartResult => {
    const struck = struckOf(craft, brief);
    if (!struck.ok) return { measures: [], findings: [] };
    const report = reportOf(struck.value, flight?.told.figures['hover-speed']);
    return {
      measures: hitMeasures(craft, report.hits, hitAll(struck.value, STIFFER)),
      findings: hitFindings(craft, report),
      data: { hits: report },
    };
  },
};

/**
 * Its measures alone, from the arms of one side: quick enough for a slider.
 *
 * @param arms in the order of `craft.frame.arms`, and what their tips give, where they have been worked out before
 */
export function quickHits(
  craft: Craft,
  brief: Brief,
  arms: readonly FrameArm[] = armsOf(craft),
  gives?: Outcome<readonly TipGive[]>,
): readonly Measure[] {
  const struck = struckCraft(craft, brief.purpose, arms, gives);
  if (!struck.ok) return [];
  const right = { ...struck.value, arms: struck.value.arms.filter(({ arm }) => Math.sin(arm.yaw) >= 0) };
  return hitMeasures(craft, hitAll(right, WOOD), hitAll(right, STIFFER));
}

/** All hits of a craft, and what of it leads. */
export function hitsOf(craft: Craft, brief: Brief): Outcome<HitsReport> {
  const struck = struckOf(craft, brief);
  return struck.ok ? solved(reportOf(struck.value)) : struck;
}

const reportOf = (struck: StruckCraft, angularSpeed = USUAL_SPEED): HitsReport => ({
  hits: hitAll(struck),
  stopping: stoppingOf(struck.craft, angularSpeed),
  landsFirst: landsFirst(struck.craft),
  leadsNose: leadsNose(struck.craft),
});

/** Of propellers before they strike, for a craft without a hover [rad/s] (common practice, no source). */
const USUAL_SPEED = 1500;
const WOOD = SURFACES.filter(({ name }) => name === 'wood');
/** Wood with a contact twice as stiff, to see how much that guess matters. */
const STIFFER = WOOD.map((surface) => ({ ...surface, contactStiffness: 2 * surface.contactStiffness }));

const struckOf = (craft: Craft, brief: Brief): Outcome<StruckCraft> =>
  struckCraft(craft, brief.purpose, armsOf(craft));

const armsOf = (craft: Craft): readonly FrameArm[] => frameArms(craftFrame(craft).arms);

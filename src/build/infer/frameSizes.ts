import type { PartOf } from '../schema/part.ts';

/** Every size of a frame that drawing and physics need [m]; `inferred` names those that are ours. */
export interface FrameSizes {
  readonly rootWidth: number;
  readonly neckWidth: number;
  readonly tipWidth: number;
  readonly padDiameter: number;
  readonly clampedLength: number;
  readonly thickness: number;
  readonly bodyLength: number;
  readonly bodyWidth: number;
  readonly bottomThickness: number;
  readonly topThickness: number;
  readonly standoffHeight: number;
  readonly standoffCount: number;
  readonly packMaxLength: number;
  readonly packMaxWidth: number;
  readonly inferred: readonly string[];
}

/**
 * Fills in what a listing leaves out, from the largest propeller, the stack's and the motors' holes,
 * by proportions common in the trade (no source): arms 0.115 of the propeller wide at the root, plates
 * 5 mm wider than the stack's holes and 0.85 of the propeller long, 7 mm of carbon round the motor's holes.
 */
export function frameSizes(frame: PartOf<'frame'>, armThickness?: number): FrameSizes {
  const inferred: string[] = [];
  const known = (name: string, told: number | undefined, rule: number): number => {
    if (told === undefined) inferred.push(name);
    return told ?? rule;
  };
  const { arms } = frame;
  const onePiece = arms.construction === 'one-piece plate';
  const propeller = frame.maxPropeller;
  const pattern = Math.max(...frame.stackPatterns);
  const thickness = armThickness ?? arms.thickness.value;
  const padDiameter = known('padDiameter', arms.padDiameter, Math.max(...frame.motorCircles) + 0.007);
  const rootWidth = known('rootWidth', arms.rootWidth, Math.max(0.006, 0.115 * propeller));
  const tipWidth = known('tipWidth', arms.tipWidth, Math.min(0.8 * rootWidth, padDiameter));
  const bodyWidth = known('body width', frame.body?.width, pattern + 0.005);
  const bodyLength = known('body length', frame.body?.length, Math.max(bodyWidth, 0.85 * propeller));
  return {
    rootWidth,
    tipWidth,
    neckWidth: known('neckWidth', arms.neckWidth, (rootWidth + tipWidth) / 2),
    padDiameter,
    clampedLength: known('clampedLength', arms.clampedLength, onePiece ? 0 : 1.7 * rootWidth),
    thickness,
    bodyLength,
    bodyWidth,
    bottomThickness: known('bottomThickness', frame.bottomThickness, onePiece ? thickness : 0.0025),
    topThickness: known('topThickness', frame.topThickness, pattern > 0.022 ? 0.002 : 0.0015),
    standoffHeight: known('standoffHeight', frame.standoffHeight, pattern > 0.028 ? 0.025 : 0.02),
    standoffCount: known('standoffCount', frame.standoffCount, pattern > 0.028 ? 6 : 4),
    packMaxLength: known('pack length', frame.pack.maxLength, 1.1 * bodyLength),
    packMaxWidth: known('pack width', frame.pack.maxWidth, 1.3 * bodyWidth),
    inferred,
  };
}

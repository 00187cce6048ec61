import type { FrameQuestion } from '../../../airframe/askFrame.ts';
import type { Craft } from '../../../build/craft.ts';
import type { Brief } from '../../../build/schema/brief.ts';
import { partsOf, type Shelf } from '../../../build/shelf.ts';
import { inBriefCurrency } from '../../money/price.ts';
import type { StiffeningChange } from '../airframeData.ts';
import { type ArmChange, armsMass, withArms } from './craftFrame.ts';
import { firstModesOf } from './structure.ts';

const THICKER = 1e-3;
const WIDER = 2e-3;
const SHORTER = 5e-3;

/** What moves the first modes, with its mass and money where they can be told. */
export function changesOf(
  craft: Craft,
  brief: Brief,
  shelf: Shelf,
  question: FrameQuestion,
): readonly StiffeningChange[] {
  const thickness = craft.frame.arms[0]?.thickness ?? THICKER;
  const thicker = THICKER / thickness;
  const list: (readonly [what: string, change: ArmChange, price?: number | undefined])[] = [
    ['arms 1 mm thicker', { thicknessScale: 1 + thicker }, dearerArms(craft, brief, thicker)],
    ['arms 2 mm wider', { wider: WIDER }],
    ['arms 5 mm shorter, as far as the tip gaps let', { shorter: SHORTER }],
  ];
  const lighter = lighterPropeller(craft, brief, shelf);
  if (lighter !== undefined) list.push([`${lighter.name} instead`, { tipMass: lighter.mass }, lighter.price]);
  const before = armsMass(question);
  return list.flatMap(([what, change, price]): readonly StiffeningChange[] => {
    const changed = withArms(question, change);
    const modes = firstModesOf(changed);
    if (!modes.ok) return [];
    const tips = (change.tipMass ?? 0) * craft.motors.length;
    const mass = armsMass(changed) - before + tips;
    return [{ what, ...modes.value, mass, ...(price === undefined ? {} : { price }) }];
  });
}

/** Sheet is priced about by its thickness, so arms are too (common practice, no source). */
function dearerArms(craft: Craft, brief: Brief, thicker: number): number | undefined {
  const { sparePrice, construction } = craft.parts.frame.arms;
  const each = sparePrice === undefined ? undefined : inBriefCurrency(sparePrice, brief);
  if (each === undefined) return undefined;
  return thicker * each * (construction === 'one-piece plate' ? 1 : craft.frame.arms.length);
}

/** The lightest propeller of the shelf that fits the same shaft and is alike in size, pitch and blades, if lighter. */
function lighterPropeller(
  craft: Craft,
  brief: Brief,
  shelf: Shelf,
): { readonly name: string; readonly mass: number; readonly price?: number } | undefined {
  const own = craft.parts.propellers[0];
  const rotor = craft.rotors[0];
  if (own === undefined || rotor === undefined) return undefined;
  const alike = partsOf(shelf, 'propeller').filter(
    ({ size, bore, fixing, mass }) =>
      Math.abs(size.diameter / own.size.diameter - 1) < 0.015 &&
      Math.abs(size.pitch / own.size.pitch - 1) < 0.1 &&
      size.bladeCount === own.size.bladeCount &&
      (bore ?? rotor.bore) === rotor.bore &&
      (fixing ?? rotor.fixing) === rotor.fixing &&
      mass.value < 0.97 * own.mass.value,
  );
  const lightest = alike.sort((a, b) => a.mass.value - b.mass.value)[0];
  if (lightest === undefined) return undefined;
  const [now, then] = [own, lightest].map((part) => {
    const price = inBriefCurrency(part.price, brief);
    return price === undefined ? undefined : (price / part.soldIn) * craft.motors.length;
  });
  const price = now === undefined || then === undefined ? {} : { price: then - now };
  return { name: lightest.name, mass: lightest.mass.value - own.mass.value, ...price };
}

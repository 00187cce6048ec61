import { controllerFromNameplate } from '../../drive/controller.ts';
import { packFromNameplate } from '../../drive/packFromNameplate.ts';
import { DIMENSIONS, type Dimension, type Unit } from '../../units/dimensions.ts';
import type { Trusted } from '../../units/trusted.ts';
import { UNTOLD_RATE } from '../resolve/electrics.ts';
import type { Part, PartOf } from '../schema/part.ts';
import { frameSizes } from './frameSizes.ts';
import { inferredWords } from './inferredWords.ts';
import { motorFacts } from './motorFacts.ts';
import { rotorFacts } from './rotorFacts.ts';
import { sizeOf } from './sizes.ts';

/** A value that a part does not tell and the physics needs. */
export interface InferredValue {
  readonly label: string;
  /** Three digits with their unit; with the spread of one standard deviation where we know it. */
  readonly text: string;
  /** What it is taken from. */
  readonly source: string;
}

const USUAL = 'common practice, no source';

/** What is made up for a part from what it tells, to be shown beside it; `resolveBuild` flies with the same values. */
export function inferredOf(part: Part): readonly InferredValue[] {
  switch (part.kind) {
    case 'motor':
      return ofMotor(part);
    case 'propeller':
      return ofPropeller(part);
    case 'pack':
      return [...ofPack(part), ...outside(part)];
    case 'controller':
      return [...ofController(part), ...outside(part)];
    case 'frame':
      return ofFrame(part);
    default:
      return outside(part);
  }
}

function ofMotor(part: PartOf<'motor'>): readonly InferredValue[] {
  const { guess, fit, bellInertia } = motorFacts(part);
  const electrical = [
    ...(part.windingResistance ? [] : [trusted('winding resistance', guess.resistance, 'resistance')]),
    ...(part.noLoadCurrent ? [] : [trusted('no-load current', guess.noLoadCurrent, 'current')]),
    ...(part.maxCurrent ? [] : [trusted('burst current', guess.maximumCurrent, 'current')]),
    ...(part.maxPower ? [] : [trusted('burst power', guess.maximumPower, 'power')]),
    ...(part.rotorInertia ? [] : [plain('inertia of the bell', bellInertia, 'inertia', USUAL)]),
  ];
  const size = `usual for a stator of ${say(part.stator.diameter, 'length')} (${USUAL})`;
  const sizes: readonly (readonly [string, string])[] = [
    ['mountCircles', fit.mountCircles.map((each) => say(each, 'length')).join(', ')],
    ['mountScrew', fit.mountScrew],
    ['threadDepth', say(fit.threadDepth, 'length')],
    ['shaft', say(fit.shaftDiameter, 'length')],
    ['fixing', fit.fixing],
    ['bellDiameter', say(fit.bellDiameter, 'length')],
    ['height', say(fit.height, 'length')],
  ];
  return [
    ...electrical,
    ...sizes.flatMap(([field, text]) =>
      fit.inferred.includes(field) ? [{ label: inferredWords(field), text, source: size }] : [],
    ),
  ];
}

function ofPropeller(part: PartOf<'propeller'>): readonly InferredValue[] {
  const { blade, hubDiameter, hubThickness, bore, fixing, inertia, inferred } = rotorFacts(part);
  const nearest = blade.radiusRatio.reduce(
    (best, ratio, i) => (Math.abs(ratio - 0.75) < Math.abs((blade.radiusRatio[best] ?? 0) - 0.75) ? i : best),
    0,
  );
  const chord = ((blade.chordRatio[nearest] ?? 0) * blade.diameter) / 2;
  const shaped = part.bladeTable || part.chordAt75;
  const usual = `usual for its size (${USUAL})`;
  const rest: readonly (readonly [string, string])[] = [
    ['bore', say(bore, 'length')],
    ['fixing', fixing],
    ['hubDiameter', say(hubDiameter, 'length')],
    ['hubThickness', say(hubThickness, 'length')],
    ['inertia', say(inertia, 'inertia')],
  ];
  return [
    ...(shaped
      ? []
      : [plain('blade width at 3/4 of the radius', chord, 'length', `from the ${blade.knownBy}`)]),
    ...rest.flatMap(([field, text]) =>
      inferred.includes(field) ? [{ label: inferredWords(field), text, source: usual }] : [],
    ),
  ];
}

function ofPack(part: PartOf<'pack'>): readonly InferredValue[] {
  const { resistance, continuousCurrent } = packFromNameplate({
    chemistry: part.chemistry,
    series: part.cells,
    parallel: part.parallel,
    capacity: part.capacity.value,
    labelRate: part.cRating ?? UNTOLD_RATE[part.chemistry],
    mass: part.mass.value,
  });
  return [
    ...(part.cellResistance ? [] : [trusted('resistance of the pack', resistance, 'resistance')]),
    trusted('honest continuous current', continuousCurrent, 'current'),
  ];
}

function ofController(part: PartOf<'controller'>): readonly InferredValue[] {
  const { resistance, burstCurrent, pulseFrequency } = controllerFromNameplate({
    continuousCurrent: part.current.value,
    maximumVoltage: 1,
  });
  return [
    ...(part.resistance
      ? []
      : [plain('resistance, each motor', resistance, 'resistance', `from its rating (${USUAL})`)]),
    ...(part.burst ? [] : [plain('burst current', burstCurrent, 'current', `1.2 of its rating (${USUAL})`)]),
    ...(part.switchingFrequency === undefined
      ? [plain('pulse frequency', pulseFrequency, 'frequency', USUAL)]
      : []),
  ];
}

function ofFrame(part: PartOf<'frame'>): readonly InferredValue[] {
  const { inferred, ...sizes } = frameSizes(part);
  const source = `in proportion to the propeller (${USUAL})`;
  const lengths: readonly (readonly [string, number])[] = [
    ['rootWidth', sizes.rootWidth],
    ['neckWidth', sizes.neckWidth],
    ['tipWidth', sizes.tipWidth],
    ['padDiameter', sizes.padDiameter],
    ['clampedLength', sizes.clampedLength],
    ['body length', sizes.bodyLength],
    ['body width', sizes.bodyWidth],
    ['bottomThickness', sizes.bottomThickness],
    ['topThickness', sizes.topThickness],
    ['standoffHeight', sizes.standoffHeight],
    ['pack length', sizes.packMaxLength],
    ['pack width', sizes.packMaxWidth],
  ];
  const count = { label: inferredWords('standoffCount'), text: String(sizes.standoffCount), source };
  return [
    ...lengths.flatMap(([field, value]) =>
      inferred.includes(field) ? [plain(inferredWords(field), value, 'length', source)] : [],
    ),
    ...(inferred.includes('standoffCount') ? [count] : []),
  ];
}

function outside(part: Part): readonly InferredValue[] {
  const { size, inferred } = sizeOf(part);
  const sides = [size.length, size.width, size.height].map((side) => say(side, 'length')).join(' x ');
  return inferred ? [{ label: 'outer size', text: sides, source: `from its kind and mass (${USUAL})` }] : [];
}

const trusted = (
  label: string,
  { value, deviation, source }: Trusted,
  dimension: Dimension,
): InferredValue => ({
  label,
  text: `${say(value, dimension)}, give or take ${Math.round((100 * deviation) / Math.abs(value))} %`,
  source,
});

const plain = (label: string, value: number, dimension: Dimension, source: string): InferredValue => ({
  label,
  text: say(value, dimension),
  source,
});

/** In the dimension's first unit, three digits. */
function say(value: number, dimension: Dimension): string {
  const units: readonly Unit[] = DIMENSIONS[dimension].units;
  const unit = units[0];
  if (unit === undefined) throw new RangeError(`dimension: ${dimension} has no units`);
  const number = Number((value / unit.factor).toPrecision(3));
  return `${number} ${unit.text}`;
}

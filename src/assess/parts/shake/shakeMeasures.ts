import type { FrameQuestion, SolvedArms } from '../../../airframe/askFrame.ts';
import type { Craft } from '../../../build/craft.ts';
import type { Outcome } from '../../../numerics/outcome.ts';
import type { Uncertainty } from '../../propagate.ts';
import type { Measure } from '../../types.ts';
import { bandedMeasures, type MeasureForm, type Numbers } from '../banded.ts';
import { type ArmChange, craftFrame, withArms } from './craftFrame.ts';
import { type Forcing, pointAt } from './forcing.ts';
import { boardShake, cameraShake, type ForceDoubt, likely, responseOver } from './respond.ts';
import { DAMPING, firstModes, firstModesOf, type Structure, structureOf } from './structure.ts';

/** One way the frame and what shakes it may really be. */
interface Doubt {
  readonly arms: ArmChange;
  readonly force: ForceDoubt;
  readonly damping: number;
}

const sure: Doubt = { arms: {}, force: likely, damping: DAMPING };
const MODULUS_SPREAD = 0.08;
const SHEAR_SPREAD = 0.12;
const TIP_MASS_SPREAD = 0.03;
/** Give of a screwed root beyond the model's [m]. */
const LOOSE = 1.5e-3;
/**
 * A one-piece frame's plate bends between stack and arms, and the middle is taken as rigid: `condenseHubPlate` on the demo's
 * plates, held within 0.8 of the roots' radius, lowers the upright modes by 8 %, as this share of an arm's length does.
 */
const PLATE_GIVE = 0.06;
const PLATE_LOWERS = 0.08;
/** A grade of balance to the next is 2.5 times (ISO 21940-11); one standard deviation is a little less. */
const IMBALANCE_SPREAD = 0.8;
const PULSE_SPREAD = 0.5;

const isOnePiece = ({ frame }: Craft): boolean => frame.construction === 'one-piece plate';

/** Spreads without another source are common practice. */
function doubts(craft: Craft): readonly Uncertainty<Doubt>[] {
  const of = (change: Partial<Doubt>): Doubt => ({ ...sure, ...change });
  const { thicknessScatter } = craft.frame.material;
  const plate: Uncertainty<Doubt> = {
    input: 'give of the plate between the arms',
    trust: 'inferred',
    raised: of({ arms: { plateGive: PLATE_GIVE } }),
  };
  return [
    ...(isOnePiece(craft) ? [plate] : []),
    {
      input: 'stiffness of the sheet along the arms',
      trust: 'inferred',
      raised: of({ arms: { modulusScale: 1 + MODULUS_SPREAD } }),
    },
    {
      input: 'thickness of the sheet',
      trust: 'maker',
      raised: of({ arms: { thicknessScale: 1 + thicknessScatter } }),
    },
    {
      input: 'stiffness of the sheet in shear',
      trust: 'inferred',
      raised: of({ arms: { shearScale: 1 + SHEAR_SPREAD } }),
    },
    {
      input: 'mass of motor and propeller',
      trust: 'maker',
      raised: of({ arms: { tipMassScale: 1 + TIP_MASS_SPREAD } }),
    },
    { input: "give of the arms' roots", trust: 'inferred', raised: of({ arms: { looser: LOOSE } }) },
    {
      input: 'balance of the propellers',
      trust: 'inferred',
      raised: of({ force: { ...likely, imbalance: 1 + IMBALANCE_SPREAD } }),
    },
    {
      input: 'pulse of the blades on the arms',
      trust: 'inferred',
      raised: of({ force: { ...likely, pulse: 1 + PULSE_SPREAD } }),
    },
    { input: 'damping of the frame', trust: 'inferred', raised: of({ damping: 0.7 * DAMPING }) },
  ];
}

const MODE_SOURCE =
  'beam finite elements, Craig and Bampton 1968, docs/method/airframe.md; spreads: common practice';
const SHAKE_SOURCE =
  'ISO 21940-11, modal superposition (Craig and Kurdila); spreads: common practice, no source';
const ODDS = 'Believe where it peaks more than how high: damping decides the height.';

const MODE_FORMS: readonly MeasureForm[] = [
  {
    id: 'first-upright-mode',
    label: 'lowest mode, arms up and down',
    sheet: 'shake',
    quantity: 'frequency',
    better: 'more',
    how: 'The whole free frame with everything on it, arms as tapered beams on a rigid middle.',
    source: MODE_SOURCE,
  },
  {
    id: 'first-sideways-mode',
    label: 'lowest mode, arms sideways',
    sheet: 'shake',
    quantity: 'frequency',
    better: 'more',
    how: 'As above, for modes in the plane of the arms, twisting them by the motors standing above.',
    source: MODE_SOURCE,
  },
];

const shakeForm = (id: string, label: string, quantity: Measure['quantity'], how: string): MeasureForm => ({
  id,
  label,
  sheet: 'shake',
  quantity,
  better: 'less',
  how: `${how} ${ODDS}`,
  source: SHAKE_SOURCE,
});

function shakeForms(craft: Craft): readonly MeasureForm[] {
  const cameras = craft.cameras.map(({ role }) => role);
  const roles = (['flying', 'recording'] as const).filter((role) => cameras.includes(role));
  return [
    shakeForm(
      'hover-shake',
      'shake at the gyro in hover',
      'acceleration',
      'Amplitude from propellers balanced to G 6.3 and from blades passing the arms, through the mount of the board.',
    ),
    shakeForm(
      'hover-gyro-rate',
      'gyro shake in hover',
      'angularSpeed',
      'The same as a rate of turn, as pilots see it.',
    ),
    shakeForm(
      'worst-gyro-rate',
      'worst gyro shake over the throttle',
      'angularSpeed',
      'The largest from a tenth to full throttle, half charge.',
    ),
    shakeForm(
      'nicked-gyro-rate',
      'gyro shake in hover, one blade nicked',
      'angularSpeed',
      'One blade has lost a hundredth of itself near the tip.',
    ),
    ...roles.flatMap((role) => [
      shakeForm(
        `${role}-camera-blur`,
        `blur of the ${role} camera in hover`,
        'pixels',
        'Smear of a picture 720 high, exposed 1/500 s, by its turning with the frame.',
      ),
      shakeForm(
        `${role}-camera-jello`,
        `jello of the ${role} camera in hover`,
        'pixels',
        'Rows of one picture apart, peak to peak, read out in 12 ms.',
      ),
    ]),
  ];
}

/**
 * First modes with bands, without forces: for a slider, and for a craft that has no hover.
 *
 * @param question the craft's frame, and its arms where they have been solved before
 */
export function quickModes(
  craft: Craft,
  question: FrameQuestion = craftFrame(craft),
  arms?: Outcome<SolvedArms>,
): readonly Measure[] {
  const first = firstModesOf(question, arms);
  if (!first.ok) return [];
  const { thicknessScatter } = craft.frame.material;
  // Closed form of an arm with its mass on the tip: f ~ sqrt(E b t3 / m l3), sideways sqrt(E t b3 / m l3).
  const share = (power: number, plate: number) =>
    Math.hypot(MODULUS_SPREAD / 2, power * thicknessScatter, TIP_MASS_SPREAD / 2, 0.03, plate);
  const plate = isOnePiece(craft) ? PLATE_LOWERS : 0;
  return MODE_FORMS.map((form, i) => {
    const value = i === 0 ? first.value.upright : first.value.sideways;
    const spread = 1.28 * (i === 0 ? share(1.5, plate) : share(0.5, 0));
    return {
      ...form,
      value,
      band: [value * (1 - spread), value * (1 + spread)],
      leansOn: [],
    } satisfies Measure;
  }).filter(({ value }) => Number.isFinite(value));
}

/** All measures of the shake, each doubt solved for itself. */
export function shakeMeasures(
  craft: Craft,
  question: FrameQuestion,
  structure: Structure,
  forcing: Forcing | undefined,
  hoverThrottle: number | undefined,
): readonly Measure[] {
  const read = (solvedFrame: Structure, force: ForceDoubt): Numbers => ({
    ...modeNumbers(solvedFrame),
    ...(forcing && hoverThrottle !== undefined
      ? shakeNumbers(craft, solvedFrame, forcing, hoverThrottle, force)
      : {}),
  });
  const forms = [...MODE_FORMS, ...(forcing ? shakeForms(craft) : [])];
  const measures = bandedMeasures(
    forms,
    read(structure, likely),
    doubts(craft),
    ({ arms, force, damping }) => {
      if (Object.keys(arms).length === 0) {
        return read({ ...structure, shaken: { ...structure.shaken, damping } }, force);
      }
      const changed = structureOf(withArms(question, arms));
      return changed.ok ? read(changed.value, force) : {};
    },
  );
  return measures.map((measure) => ({ ...measure, band: [Math.max(0, measure.band[0]), measure.band[1]] }));
}

function modeNumbers({ modes }: Structure): Numbers {
  const { upright, sideways } = firstModes(modes);
  return { 'first-upright-mode': upright, 'first-sideways-mode': sideways };
}

function shakeNumbers(
  craft: Craft,
  structure: Structure,
  forcing: Forcing,
  hoverThrottle: number,
  force: ForceDoubt,
): Numbers {
  const hover = pointAt(forcing.throttles, hoverThrottle);
  if (hover === undefined) return {};
  const at = boardShake(craft, structure, forcing, hover, force);
  const over = responseOver(craft, structure, forcing, force)
    .filter(({ throttle }) => throttle >= 0.1)
    .map(({ gyroTurnRate }) => gyroTurnRate);
  const numbers: Record<string, number> = {
    'hover-shake': at.gyroAcceleration,
    'hover-gyro-rate': at.gyroTurnRate,
    'worst-gyro-rate': Math.max(...over, at.gyroTurnRate),
    'nicked-gyro-rate': at.nickedTurnRate,
  };
  for (const [index, { role }] of craft.cameras.entries()) {
    const seen = cameraShake(craft, index, structure, forcing, hover, force);
    if (seen === undefined) continue;
    numbers[`${role}-camera-blur`] = Math.max(numbers[`${role}-camera-blur`] ?? 0, seen.blur);
    numbers[`${role}-camera-jello`] = Math.max(numbers[`${role}-camera-jello`] ?? 0, seen.wobble);
  }
  return numbers;
}

import { z } from 'zod';
import type { ArmQuestion } from '../../airframe/askArm.ts';
import { armModuli } from '../../airframe/laminate.ts';
import { PLY_PRESETS } from '../../airframe/plyPresets.ts';
import type { PlateModuli } from '../../airframe/section.ts';
import { count } from './common.ts';
import { plainQuantity } from './fields.ts';

const span = (says: string) => plainQuantity('length', ['0.5 mm', '2 m'], says);
const offset = (says: string) => plainQuantity('length', ['-2 m', '2 m'], says);
const modulus = (says: string) => plainQuantity('pressure', ['1 MPa', '2000 GPa'], says);
const ratio = z.number().min(-1).max(1);
const inertia = (says: string) => plainQuantity('inertia', ['0 g mm2', '1 kg m2'], says);
const density = plainQuantity('density', ['100 kg/m3', '25000 kg/m3'], 'Density');

/** An orthotropic sheet: 1 along the arm, 2 across it in the plate, 3 through the thickness. */
export const sheetMaterial = z.strictObject({
  E1: modulus('Along the arm'),
  E2: modulus('Across it in the plate'),
  E3: modulus('Through the thickness; E2 when absent').optional(),
  nu12: ratio,
  nu13: ratio.optional(),
  nu23: ratio.optional(),
  G12: modulus('In the plate'),
  G13: modulus('Along and through'),
  G23: modulus('Across and through; G13 when absent').optional(),
  density,
});

const laminate = z.strictObject({
  ply: z.enum(['3k plain', '3k twill', 'one-way']),
  plyThickness: plainQuantity('length', ['0.02 mm', '5 mm'], 'Of one ply'),
  angles: z
    .array(plainQuantity('angle', ['-180 deg', '180 deg'], 'From the arm to the fibres'))
    .min(1)
    .max(200)
    .describe('Plies from the top'),
});

const grip = z.strictObject({
  kind: z.enum(['held face', 'between plates', 'one piece', 'plain']),
  extraOutOfPlane: offset('A loose joint makes the arm act longer by this').optional(),
  extraInPlane: offset('The same in the plate').optional(),
  extraTorsion: offset('The same in twist').optional(),
});

export const tipMass = z.strictObject({
  mass: plainQuantity('mass', ['0 g', '5 kg'], 'Motor and propeller as one rigid body'),
  height: offset("Of its centre of gravity above the arm's mid-plane").default(0),
  inertiaAlong: inertia("About its centre of gravity, about the arm's axis").default(0),
  inertiaAcross: inertia('About the axis across the arm').default(0),
  inertiaUp: inertia('About the upright axis').default(0),
});

const force = plainQuantity('force', ['-10000 N', '10000 N'], 'Force');
const moment = plainQuantity('torque', ['-1000 N m', '1000 N m'], 'Moment');

/** Everything of an arm but where it stands. */
export const armFields = {
  rootWidth: span('At the root face').optional(),
  tipWidth: span("At the motor's axis").optional(),
  outline: z
    .array(z.strictObject({ at: z.number().min(0).max(1), width: span('There') }))
    .min(2)
    .max(40)
    .optional()
    .describe(
      'Widths along the arm, from 0 at the root to 1 at the motor, instead of rootWidth and tipWidth',
    ),
  thickness: span('Of the arm'),
  material: sheetMaterial.optional(),
  laminate: laminate.optional(),
  grip: grip.default({ kind: 'held face' }),
  tipMass: tipMass.optional(),
  load: z
    .strictObject({
      force: z.strictObject({ along: force.default(0), across: force.default(0), up: force.default(0) }),
      moment: z
        .strictObject({ along: moment.default(0), across: moment.default(0), up: moment.default(0) })
        .optional(),
    })
    .optional()
    .describe("At the middle of the tip's section"),
  stressAt: z
    .strictObject({
      along: offset('From the root face'),
      across: offset('To the right').default(0),
      up: offset('Above the mid-plane').default(0),
    })
    .optional(),
};

export const armFile = z.strictObject({
  length: span('From root face to motor axis'),
  ...armFields,
  modes: count(1, 20).default(6),
});

type ArmFields = z.output<z.ZodObject<typeof armFields>>;

/** The question a file's arm asks. @throws RangeError in words when its fields contradict each other */
export function armQuestion(fields: ArmFields, length: number, modes = 6): ArmQuestion {
  const { thickness, grip: given, tipMass: tip, load, stressAt } = fields;
  const sheet = sheetOf(fields);
  const { kind, extraOutOfPlane, extraInPlane, extraTorsion } = given;
  return {
    length,
    outline: outlineOf(fields),
    thickness,
    moduli: sheet.moduli,
    density: sheet.density,
    grip: {
      kind,
      ...(extraOutOfPlane === undefined ? {} : { extraOutOfPlane }),
      ...(extraInPlane === undefined ? {} : { extraInPlane }),
      ...(extraTorsion === undefined ? {} : { extraTorsion }),
    },
    ...(tip === undefined
      ? {}
      : {
          tipBody: {
            mass: tip.mass,
            height: tip.height,
            inertia: [tip.inertiaAlong, tip.inertiaAcross, tip.inertiaUp] as const,
          },
        }),
    ...(load === undefined
      ? {}
      : {
          load: {
            force: [load.force.along, load.force.across, load.force.up] as const,
            ...(load.moment === undefined
              ? {}
              : { moment: [load.moment.along, load.moment.across, load.moment.up] as const }),
          },
        }),
    ...(stressAt === undefined ? {} : { stressAt }),
    modes,
  };
}

function outlineOf({ outline, rootWidth, tipWidth }: ArmFields): ArmQuestion['outline'] {
  if (outline !== undefined) {
    if (rootWidth !== undefined || tipWidth !== undefined) {
      throw new RangeError('outline: tells the widths already; leave out rootWidth and tipWidth');
    }
    return outline;
  }
  if (rootWidth === undefined)
    throw new RangeError('rootWidth: is missing; give rootWidth and tipWidth, or outline');
  return [
    { at: 0, width: rootWidth },
    { at: 1, width: tipWidth ?? rootWidth },
  ];
}

function sheetOf({ material, laminate: plies }: Pick<ArmFields, 'material' | 'laminate'>): {
  readonly moduli: PlateModuli;
  readonly density: number;
} {
  if ((material === undefined) === (plies === undefined)) {
    throw new RangeError('material: give either material or laminate');
  }
  if (material !== undefined) return { moduli: moduliOf(material), density: material.density };
  const preset = PLY_PRESETS[plies?.ply ?? '3k plain'];
  const moduli = armModuli(
    (plies?.angles ?? []).map((angle) => ({ material: preset, thickness: plies?.plyThickness ?? 0, angle })),
    0,
  );
  if (!moduli.ok) throw new RangeError(`laminate: ${moduli.reason}`);
  return { moduli: moduli.value, density: preset.density };
}

export function moduliOf(material: z.output<typeof sheetMaterial>): PlateModuli {
  const { E1, E2, E3, nu12, nu13, nu23, G12, G13, G23 } = material;
  return {
    E1,
    E2,
    E3: E3 ?? E2,
    nu12,
    nu13: nu13 ?? nu12,
    nu23: nu23 ?? nu12,
    G12,
    G13,
    G23: G23 ?? G13,
  };
}

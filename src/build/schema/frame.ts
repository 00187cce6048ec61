import { z } from 'zod';
import { common, count, SCREWS } from './common.ts';
import { box, money, plainQuantity, quantity } from './fields.ts';

const span = (says: string) => plainQuantity('length', ['30 mm', '1.5 m'], says);
const frontSpin = z
  .enum(['inward', 'outward'])
  .optional()
  .describe('Which way the front blades sweep over the nose: towards the centre line or away from it');
const discSpacing = plainQuantity('length', ['5 mm', '200 mm'], 'Distance between the discs of a pair');

/** The trade's layouts and the distances between motor axes that fix each. */
export const layout = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal(['true X', 'plus']),
    diagonal: span('Between opposite motors'),
    frontSpin,
  }),
  z.strictObject({
    kind: z.literal(['stretched X', 'squashed X', 'H']),
    width: span('Across, between left and right motors'),
    length: span('Along, between front and rear motors'),
    frontSpin,
  }),
  z.strictObject({
    kind: z.literal('dead cat'),
    frontWidth: span('Between the front motors'),
    rearWidth: span('Between the rear motors'),
    length: span('Along, between front and rear motors'),
    frontSpin,
  }),
  z.strictObject({
    kind: z.literal('tri'),
    frontWidth: span('Between the front motors'),
    length: span('Along, from the front motors to the tail motor'),
  }),
  z.strictObject({
    kind: z.literal(['hexa X', 'hexa plus', 'octo', 'octo plus']),
    diagonal: span('Between opposite motors'),
    frontSpin,
  }),
  z.strictObject({
    kind: z.literal('X8 coaxial'),
    width: span('Across'),
    length: span('Along'),
    discSpacing,
    frontSpin,
  }),
  z.strictObject({
    kind: z.literal('Y6 coaxial'),
    frontWidth: span('Between the front motors'),
    length: span('Along, from the front motors to the tail motors'),
    discSpacing,
  }),
  z.strictObject({
    kind: z.literal('positions'),
    motors: z
      .array(
        z.strictObject({
          name: z.string().min(1).max(40),
          x: plainQuantity('length', ['-1 m', '1 m'], 'Forward'),
          y: plainQuantity('length', ['-1 m', '1 m'], 'To the right'),
          spin: z.enum(['clockwise', 'counterclockwise']).describe('Seen from above'),
        }),
      )
      .min(3)
      .max(12),
  }),
]);

const width = (says: string) => plainQuantity('length', ['1 mm', '100 mm'], says);

const arms = z.strictObject({
  construction: z
    .enum(['separate arms', 'one-piece plate', 'arm pairs'])
    .describe(
      'How arms are cut: each alone, all in one sheet with the bottom plate, or two opposite as one bar',
    ),
  thickness: quantity('length', ['0.5 mm', '20 mm'], 'Thickness of the arm plate'),
  rootWidth: width('Where it leaves the plate').optional(),
  neckWidth: width('At its narrowest').optional(),
  tipWidth: width('Just before the motor pad').optional(),
  padDiameter: width('Round end under the motor').optional(),
  clampedLength: width('How far it runs on inside the clamp').optional(),
  sparePrice: money('A spare arm; for a one-piece plate the whole plate').optional(),
});

const material = z.strictObject({
  kind: z.enum([
    'carbon plain weave',
    'carbon twill',
    'carbon unidirectional',
    'glass laminate',
    'moulded nylon',
    'polycarbonate',
  ]),
  modulusAlong: quantity('pressure', ['0.5 GPa', '300 GPa'], "Young's modulus along the arm").optional(),
  strength: quantity('pressure', ['10 MPa', '3 GPa'], 'Bending strength along the arm').optional(),
  density: quantity('density', ['0.5 g/cm3', '3 g/cm3'], 'Density').optional(),
});

/** Everything about a frame. A listing needs layout, arms, motor circles, stack patterns, mass and price. */
export const frame = z.strictObject({
  ...common,
  kind: z.literal('frame'),
  layout,
  arms,
  material: material.default({ kind: 'carbon twill' }),
  body: box('Outline of the plates round the stack and their height, screws and props left out').optional(),
  bottomThickness: plainQuantity('length', ['0.5 mm', '12 mm'], 'Bottom plate').optional(),
  topThickness: plainQuantity('length', ['0.5 mm', '12 mm'], 'Top plate').optional(),
  standoffHeight: plainQuantity('length', ['3 mm', '80 mm'], 'Between the plates').optional(),
  standoffCount: count(0, 20).optional(),
  stackPatterns: z
    .array(plainQuantity('length', ['10 mm', '60 mm'], 'Side of the square of holes'))
    .min(1)
    .max(5)
    .describe('Squares of stack holes it takes, such as "30.5 mm"'),
  motorCircles: z
    .array(plainQuantity('length', ['5 mm', '60 mm'], 'Diameter of the circle of motor holes'))
    .min(1)
    .max(6)
    .describe('Motor hole circles it takes, such as "16 mm"'),
  motorScrew: z.enum(SCREWS).optional(),
  cameraWidths: z
    .array(plainQuantity('length', ['8 mm', '60 mm'], 'Width between the cheeks'))
    .max(6)
    .default([])
    .describe('Widths of flying camera it takes; none when a printed mount is needed'),
  cameraTilt: z
    .strictObject({
      min: plainQuantity('angle', ['-30 deg', '90 deg'], 'Lowest'),
      max: plainQuantity('angle', ['-30 deg', '90 deg'], 'Highest'),
    })
    .optional(),
  maxPropeller: plainQuantity('length', ['1 in', '20 in'], 'Largest propeller it is sold for'),
  pack: z
    .strictObject({
      side: z.enum(['above', 'below']),
      maxLength: plainQuantity('length', ['10 mm', '400 mm'], 'Longest pack').optional(),
      maxWidth: plainQuantity('length', ['5 mm', '200 mm'], 'Widest pack').optional(),
    })
    .default({ side: 'above' }),
  guards: z
    .strictObject({
      tipGap: plainQuantity('length', ['0.2 mm', '20 mm'], 'Between the largest propeller and the ring'),
      lipRadius: plainQuantity('length', ['0 mm', '20 mm'], 'Radius of the inlet lip; 0 for a plain hoop'),
      height: plainQuantity('length', ['1 mm', '60 mm'], 'Height of the ring'),
      thickness: plainQuantity('length', ['0.3 mm', '10 mm'], 'Wall').default(0.0012),
    })
    .optional()
    .describe('Rings round the propellers, their mass being part of the frame'),
});

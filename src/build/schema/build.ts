import { z } from 'zod';
import { count, id, words } from './common.ts';
import { plainQuantity, quantity, wireArea } from './fields.ts';
import { layout } from './frame.ts';
import { place, seat } from './seat.ts';

export const BUILD_FORMAT = 'quadwright-build-1';

/** Motors or propellers that differ from the rest, by the motor's name: `front left`. */
const except = z
  .array(z.strictObject({ at: z.string().min(1).max(40), part: id }))
  .max(12)
  .default([]);

const lead = (says: string) =>
  z.strictObject({
    area: wireArea(says),
    length: plainQuantity('length', ['0 mm', '2 m'], 'From end to end, one way'),
  });

/** One complete aircraft: frame, parts, where they sit. */
export const build = z.strictObject({
  format: z.literal(BUILD_FORMAT),
  name: words,
  note: z.string().max(1000).optional(),
  frame: seat({
    layout: layout.optional().describe("Other distances between motors than the frame's own"),
    armThickness: plainQuantity('length', ['0.5 mm', '20 mm'], "Other than the frame's own").optional(),
  }),
  motors: seat({ except }),
  propellers: seat({ side: z.enum(['above', 'below']).default('above'), except }),
  controllers: seat({}).optional().describe('Left out when they are built into the flight controller'),
  flightController: seat({ gyroMounting: z.enum(['soft', 'hard']).optional() }),
  pack: seat({
    side: z.enum(['above', 'below']).optional(),
    offset: plainQuantity('length', ['-300 mm', '300 mm'], 'Forward of the middle of its place').default(0),
    cycles: count(0, 2000).default(0).describe('Charges behind it'),
  }),
  cameras: z
    .array(
      seat({
        role: z.enum(['flying', 'recording']).default('flying'),
        tilt: plainQuantity('angle', ['-30 deg', '90 deg'], 'Nose up').default(0),
        place: place.optional(),
      }),
    )
    .max(4)
    .default([]),
  videoLink: seat({
    outputPower: plainQuantity('power', ['1 mW', '5 W'], 'Set in flight').optional(),
    place: place.optional(),
  }).optional(),
  receiver: seat({ place: place.optional() }).optional(),
  antennas: z
    .array(seat({ place: place.optional() }))
    .max(8)
    .default([]),
  extras: z
    .array(seat({ count: count(1, 50).default(1), place: place.optional() }))
    .max(40)
    .default([])
    .describe('Everything else on board: mounts, straps, capacitor, position receiver, beeper, guards'),
  wiring: z
    .strictObject({
      packLead: lead('Pack to controllers').optional(),
      motorLead: lead('Controller to motor, each of three').optional(),
      supplyLead: lead('To each single controller').optional(),
      connector: id.optional().describe('The plug on the pack lead'),
    })
    .default({}),
  screws: z
    .strictObject({
      motorLength: plainQuantity('length', ['2 mm', '40 mm'], 'Motor screws, under the head').optional(),
    })
    .default({}),
  measured: z
    .strictObject({
      mass: quantity('mass', ['5 g', '25 kg'], 'All-up on a scale, pack included').optional(),
      balanceX: quantity(
        'length',
        ['-0.5 m', '0.5 m'],
        "Where it balances, forward of the motors' centre",
      ).optional(),
    })
    .default({})
    .describe('What was measured on the finished aircraft; it overrides what is added up'),
});

export type Build = z.output<typeof build>;

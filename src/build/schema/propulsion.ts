import { z } from 'zod';
import { CHEMISTRIES, cells, common, count, FIXINGS, SCREWS } from './common.ts';
import { plainQuantity, quantity, wireArea } from './fields.ts';
import { propellerSize, statorSize } from './nameplates.ts';

/** One line of a maker's or the user's thrust table. */
const tablePoint = z.strictObject({
  angularSpeed: quantity('angularSpeed', ['300 rpm', '120000 rpm'], 'Shaft speed').optional(),
  throttle: plainQuantity('share', ['0 %', '100 %'], 'Throttle').optional(),
  voltage: quantity('voltage', ['1 V', '70 V'], 'At the controller, under load').optional(),
  current: quantity('current', ['10 mA', '500 A'], 'From the supply').optional(),
  thrust: quantity('force', ['1 gf', '500 N'], 'Static thrust'),
});

/** A motor. A listing gives stator, speed constant, mass, price, circle, shaft and cells. */
export const motor = z.strictObject({
  ...common,
  kind: z.literal('motor'),
  stator: statorSize,
  speedConstant: quantity(
    'motorSpeedConstant',
    ['100 rpm/V', '40000 rpm/V'],
    'K_V, unloaded speed for each volt',
  ),
  windingResistance: quantity('resistance', ['2 mohm', '5 ohm'], 'Phase to phase, at 20 degC').optional(),
  noLoadCurrent: quantity('current', ['20 mA', '10 A'], 'Idle current at noLoadVoltage').optional(),
  noLoadVoltage: quantity('voltage', ['1 V', '60 V'], 'Where the idle current was read').optional(),
  maxCurrent: quantity('current', ['0.5 A', '300 A'], 'Short-time rating').optional(),
  maxPower: quantity('power', ['2 W', '15 kW'], 'Short-time rating').optional(),
  cells: cells.optional(),
  poles: count(2, 56).multipleOf(2).default(14).describe('Magnets'),
  mountCircles: z
    .array(plainQuantity('length', ['5 mm', '60 mm'], 'Diameter of the circle of its threaded holes'))
    .min(1)
    .max(3)
    .optional(),
  mountScrew: z.enum(SCREWS).optional(),
  threadDepth: plainQuantity(
    'length',
    ['0.5 mm', '12 mm'],
    'How deep a screw may go before the winding',
  ).optional(),
  shaft: z
    .strictObject({
      diameter: plainQuantity('length', ['0.8 mm', '12 mm'], 'Where the propeller sits'),
      fixing: z.enum(FIXINGS),
    })
    .optional(),
  bellDiameter: plainQuantity('length', ['6 mm', '120 mm'], 'Outer diameter').optional(),
  height: plainQuantity('length', ['5 mm', '120 mm'], 'Base to the propeller seat').optional(),
  rotorInertia: quantity('inertia', ['1 g mm2', '1e8 g mm2'], 'Of the turning bell').optional(),
  thrustTables: z
    .array(
      z.strictObject({
        propeller: propellerSize.describe('Propeller it was measured with'),
        points: z.array(tablePoint).min(1).max(60),
        source: z.string().max(200).optional(),
      }),
    )
    .max(12)
    .default([]),
});

/** A propeller. A listing gives its size, mass and price. */
export const propeller = z.strictObject({
  ...common,
  kind: z.literal('propeller'),
  size: propellerSize,
  chordAt75: quantity('length', ['1 mm', '100 mm'], 'Blade width at 0.75 of the radius').optional(),
  bladeTable: z
    .array(
      z.strictObject({
        at: z.number().gt(0).lte(1).describe('Radius over tip radius'),
        chord: plainQuantity('length', ['0.2 mm', '200 mm'], 'Blade width'),
        angle: plainQuantity('angle', ['-20 deg', '80 deg'], 'Section to the disc plane'),
      }),
    )
    .min(3)
    .max(60)
    .optional(),
  measured: z
    .array(
      z.strictObject({
        angularSpeed: plainQuantity('angularSpeed', ['300 rpm', '120000 rpm'], 'Shaft speed'),
        thrust: quantity('force', ['1 gf', '500 N'], 'Static thrust'),
        power: quantity('power', ['50 mW', '15 kW'], 'Shaft power'),
        source: z.string().max(200).optional().describe('Whose stand or table it is from'),
      }),
    )
    .max(60)
    .default([])
    .describe('Measured static points, in the air of the standard at sea level'),
  bore: plainQuantity('length', ['0.8 mm', '12 mm'], 'Hole').optional(),
  fixing: z.enum(FIXINGS).optional(),
  hubThickness: plainQuantity('length', ['1 mm', '30 mm'], 'Height of the hub').optional(),
  hubDiameter: plainQuantity('length', ['3 mm', '60 mm'], 'Diameter of the hub').optional(),
  material: z.enum(['polycarbonate', 'glass-filled nylon', 'carbon', 'wood']).default('polycarbonate'),
  inertia: quantity('inertia', ['0.1 g mm2', '1e9 g mm2'], 'About its axis').optional(),
});

/** A battery pack. */
export const pack = z.strictObject({
  ...common,
  kind: z.literal('pack'),
  chemistry: z.enum(CHEMISTRIES).default('LiPo'),
  cells: count(1, 14).describe('In series'),
  parallel: count(1, 10).default(1),
  capacity: quantity('charge', ['50 mAh', '50 Ah'], 'Printed on it'),
  cRating: z.number().min(0.5).max(300).optional().describe('Continuous discharge over capacity, as printed'),
  cellResistance: quantity('resistance', ['0.2 mohm', '500 mohm'], 'One cell, fresh, at 25 degC').optional(),
  connector: z
    .string()
    .min(1)
    .max(40)
    .describe('Name of its plug; packs and leads fit when the names are equal'),
  chargeRating: z.number().min(0.1).max(20).default(1).describe('Charge current over capacity'),
});

const controllerLimits = {
  current: quantity('current', ['1 A', '300 A'], 'Continuous, each motor'),
  burst: quantity('current', ['1 A', '400 A'], 'Short time, each motor').optional(),
  resistance: quantity(
    'resistance',
    ['0.2 mohm', '200 mohm'],
    'Bridge, two switches in series, each motor',
  ).optional(),
  switchingFrequency: plainQuantity('frequency', ['8 kHz', '200 kHz'], 'Pulse frequency').optional(),
};

/** What a flight controller with built-in motor controllers tells of them. */
export const builtInController = z.strictObject(controllerLimits);

/** A speed controller: one board for four motors, or one for each motor. */
export const controller = z.strictObject({
  ...common,
  kind: z.literal('controller'),
  form: z.enum(['four in one', 'single']),
  ...controllerLimits,
  cells,
  pattern: plainQuantity('length', ['10 mm', '60 mm'], 'Side of the square of holes').optional(),
  height: plainQuantity('length', ['1 mm', '30 mm'], 'With its tallest part').optional(),
  telemetry: z.boolean().default(false),
  leadArea: wireArea('Main leads that come with it').optional(),
});

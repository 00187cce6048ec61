import { z } from 'zod';
import { CHEMISTRIES, cells, common, count, SCREWS } from './common.ts';
import { plainQuantity, quantity, wireArea } from './fields.ts';

/** A printed holder. */
export const mount = z.strictObject({
  ...common,
  kind: z.literal('mount'),
  holds: z.enum([
    'flying camera',
    'recording camera',
    'video antenna',
    'receiver antenna',
    'position receiver',
    'arm guard',
  ]),
  material: z.enum(['soft print', 'hard print']).default('soft print'),
  width: plainQuantity('length', ['6 mm', '100 mm'], 'Width of what it holds').optional(),
  tilt: plainQuantity('angle', ['-30 deg', '90 deg'], 'Fixed tilt').optional(),
});

export const strap = z.strictObject({
  ...common,
  kind: z.literal('strap'),
  width: plainQuantity('length', ['4 mm', '50 mm'], 'Width'),
  length: plainQuantity('length', ['50 mm', '600 mm'], 'Length'),
});

export const connector = z.strictObject({
  ...common,
  kind: z.literal('connector'),
  plug: z.string().min(1).max(40).describe("Its name, as a pack's connector"),
  current: quantity('current', ['1 A', '400 A'], 'Continuous rating'),
  resistance: quantity(
    'resistance',
    ['0.05 mohm', '20 mohm'],
    'A mated pair of contacts, both poles',
  ).optional(),
});

/** Wire by length: price and mass are for one metre. */
export const wire = z.strictObject({
  ...common,
  kind: z.literal('wire'),
  area: wireArea('Conductor section'),
  current: quantity('current', ['0.1 A', '400 A'], 'Continuous rating in free air').optional(),
});

export const capacitor = z.strictObject({
  ...common,
  kind: z.literal('capacitor'),
  capacitance: quantity('capacitance', ['10 uF', '10000 uF'], 'Capacitance'),
  voltage: plainQuantity('voltage', ['5 V', '100 V'], 'Rating'),
});

export const screws = z.strictObject({
  ...common,
  kind: z.literal('screws'),
  thread: z.enum(SCREWS),
  length: plainQuantity('length', ['2 mm', '60 mm'], 'Under the head'),
});

export const guardSet = z.strictObject({
  ...common,
  kind: z.literal('guardSet'),
  forPropeller: plainQuantity('length', ['1 in', '10 in'], 'Largest propeller'),
});

export const lamp = z.strictObject({
  ...common,
  kind: z.literal('lamp'),
  power: quantity('power', ['1 mW', '60 W'], 'What it draws in flight').optional(),
});

// --- the kit round the aircraft ---

export const goggles = z.strictObject({
  ...common,
  kind: z.literal('goggles'),
  system: z.string().min(1).max(40).describe('Name of the video system'),
});

export const transmitter = z.strictObject({
  ...common,
  kind: z.literal('transmitter'),
  link: z.string().min(1).max(40).describe('Name of the radio link'),
  frequency: plainQuantity('frequency', ['400 MHz', '10 GHz'], 'Carrier').optional(),
  outputPower: plainQuantity('power', ['1 mW', '5 W'], 'Highest at the antenna').optional(),
});

export const charger = z.strictObject({
  ...common,
  kind: z.literal('charger'),
  power: quantity('power', ['5 W', '2 kW'], 'Highest output'),
  cells,
  chemistries: z.array(z.enum(CHEMISTRIES)).min(1).max(3).default(['LiPo']),
  channels: count(1, 8).default(1).describe('Packs charged at once'),
});

/** Anything else on the bench: tools, solder, bag, simulator, power supply. */
export const bench = z.strictObject({
  ...common,
  kind: z.literal('bench'),
  use: z.enum([
    'soldering iron',
    'solder',
    'hex drivers',
    'propeller tool',
    'fire-safe bag',
    'cell checker',
    'power supply',
    'smoke stopper',
    'simulator',
    'carrying bag',
    'other',
  ]),
});

import { z } from 'zod';
import { cells, common, count, regulator } from './common.ts';
import { plainQuantity, quantity } from './fields.ts';
import { builtInController } from './propulsion.ts';

const supply = {
  power: quantity('power', ['1 mW', '60 W'], 'What it draws in flight'),
  minVoltage: plainQuantity('voltage', ['1 V', '60 V'], 'Lowest supply').optional(),
  maxVoltage: plainQuantity('voltage', ['1 V', '70 V'], 'Highest supply').optional(),
  serialPorts: count(0, 2).default(0).describe('Serial ports of the flight controller it takes'),
};

export const flightController = z.strictObject({
  ...common,
  kind: z.literal('flightController'),
  pattern: plainQuantity('length', ['10 mm', '60 mm'], 'Side of the square of holes'),
  height: plainQuantity('length', ['1 mm', '30 mm'], 'With its tallest part').optional(),
  cells,
  serialPorts: count(0, 12).describe('Serial ports it offers'),
  regulators: z.array(regulator).max(4).default([]),
  gyroMounting: z.enum(['soft', 'hard']).default('soft'),
  usbSide: z.enum(['left', 'right', 'front', 'rear']).optional(),
  power: quantity('power', ['10 mW', '10 W'], 'Its own draw').optional(),
  builtInController: builtInController
    .optional()
    .describe('When the motor controllers are on the same board'),
  builtInReceiver: z.string().max(40).optional().describe('Radio link of a receiver on the same board'),
});

/** Video parts and goggles fit when their `system` is equal. */
const system = z
  .string()
  .min(1)
  .max(40)
  .describe('Name of the video system; camera, link and goggles must agree');

export const camera = z.strictObject({
  ...common,
  kind: z.literal('camera'),
  roles: z
    .array(z.enum(['flying', 'recording']))
    .min(1)
    .max(2),
  system: system.optional(),
  width: plainQuantity('length', ['6 mm', '100 mm'], 'Width between the cheeks that hold it'),
  lens: z.strictObject({
    law: z.enum(['rectilinear', 'equidistant', 'equisolid']),
    fieldOfView: plainQuantity('angle', ['20 deg', '220 deg'], 'Angle seen'),
    across: z
      .enum(['horizontal', 'vertical', 'diagonal'])
      .default('horizontal')
      .describe('Where it is measured'),
  }),
  aspect: z.enum(['4:3', '16:9', '1:1', '8:7', '3:2']).default('4:3'),
  needsMount: z.boolean().default(false).describe('Whether a printed mount must be bought for it'),
  ...supply,
  power: supply.power.optional().describe('What it draws from the aircraft; nothing with its own battery'),
});

export const videoLink = z.strictObject({
  ...common,
  kind: z.literal('videoLink'),
  system,
  signal: z.enum(['digital', 'analogue']),
  ...supply,
  frequency: plainQuantity('frequency', ['400 MHz', '10 GHz'], 'Carrier'),
  outputPower: plainQuantity('power', ['1 mW', '5 W'], 'Highest at the antenna'),
  antennaPlug: z.string().min(1).max(40).describe('Name of its antenna plug'),
  pattern: plainQuantity('length', ['10 mm', '60 mm'], 'Side of the square of holes').optional(),
  height: plainQuantity('length', ['1 mm', '40 mm'], 'With its tallest part').optional(),
  sensitivity: z.number().min(-140).max(-40).optional().describe('Of its receiving side [dBm]'),
});

export const receiver = z.strictObject({
  ...common,
  kind: z.literal('receiver'),
  link: z.string().min(1).max(40).describe('Name of the radio link; transmitter and receiver must agree'),
  ...supply,
  frequency: plainQuantity('frequency', ['400 MHz', '10 GHz'], 'Carrier'),
  sensitivity: z.number().min(-140).max(-40).optional().describe('[dBm]'),
  antennaPlug: z.string().max(40).optional().describe('Name of its antenna plug; none when soldered'),
  needsAntenna: z.boolean().default(false),
});

export const antenna = z.strictObject({
  ...common,
  kind: z.literal('antenna'),
  for: z.enum(['video', 'receiver', 'position']),
  frequency: plainQuantity('frequency', ['400 MHz', '10 GHz'], 'Carrier'),
  gain: z.number().min(-10).max(20).describe('[dBi]'),
  plug: z.string().min(1).max(40),
  length: plainQuantity('length', ['3 mm', '400 mm'], 'Plug to tip'),
  polarisation: z.enum(['linear', 'left-hand circular', 'right-hand circular']).default('linear'),
});

export const positionReceiver = z.strictObject({
  ...common,
  kind: z.literal('positionReceiver'),
  ...supply,
});

export const beeper = z.strictObject({ ...common, kind: z.literal('beeper'), ...supply });

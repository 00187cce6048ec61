import { bandOf } from '../../assess/propagate.ts';
import { motorFacts } from '../../build/infer/motorFacts.ts';
import { type MotorKnown, motorKnown } from '../../build/infer/motorKnown.ts';
import { statorSize } from '../../build/schema/nameplates.ts';
import { motorAt, motorOnVoltage } from '../../drive/motor.ts';
import { motorFromNameplate } from '../../drive/motorFromNameplate.ts';
import type { MotorGuess, MotorModel, MotorPoint } from '../../drive/types.ts';
import { decimalsForBand, roundedText } from '../../units/significance.ts';
import type { Trusted } from '../../units/trusted.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';
import { numberOption, quantityWithin } from '../options.ts';
import { narrowTable } from '../print/narrow.ts';
import { shelfPart } from '../shelfPart.ts';
import { bandedPoint, bandedPointText } from './motorPoint.ts';

export interface AskMotorOptions {
  readonly part?: string;
  readonly stator?: string;
  readonly speedConstant?: string;
  readonly mass?: string;
  readonly rpm?: string;
  readonly torque?: string;
  readonly voltage?: string;
  readonly winding: string;
  readonly shelf: readonly string[];
  readonly json?: boolean;
}

/** `ask motor`: a motor from its nameplate or the shelf, and how it runs at a speed against a torque or on a voltage. */
export function askMotor(options: AskMotorOptions, io: Io): void {
  const { guess, model, known: inputs } = motorOf(options, io);
  const asked = askedOf(options);
  const at = asked && bandedPoint(model, inputs, asked.point);
  const known = Object.entries({
    speedConstant: guess.speedConstant,
    resistance: guess.resistance,
    noLoadCurrent: guess.noLoadCurrent,
    mass: guess.mass,
    maximumCurrent: guess.maximumCurrent,
    maximumPower: guess.maximumPower,
  }).map(([name, value]) => ({ name, ...banded(value) }));
  if (options.json) {
    const motor = Object.fromEntries(known.map(({ name, ...rest }) => [name, rest]));
    const bands = Object.fromEntries(
      Object.entries(at?.banded ?? {}).map(([name, { band }]) => [name, band]),
    );
    const point = at && { ...at.point, bands, ...(at.driven === undefined ? {} : { driven: at.driven }) };
    io.writeOut(`${JSON.stringify({ motor, model, ...(point ? { point } : {}) }, null, 2)}\n`);
    return;
  }
  const shown: Readonly<Record<string, readonly [label: string, scale: number, unit: string]>> = {
    speedConstant: ['speed constant', 30 / Math.PI, 'rpm/V'],
    resistance: ['winding resistance', 1000, 'mohm'],
    noLoadCurrent: ['idle current', 1, 'A'],
    mass: ['mass', 1000, 'g'],
    maximumCurrent: ['burst current', 1, 'A'],
    maximumPower: ['burst power', 1, 'W'],
  };
  const table = narrowTable(
    ['from the nameplate', 'value', 'band', 'unit', 'trust'],
    known.map(({ name, value, band, trust }) => {
      const [label, scale, unit] = shown[name] ?? [name, 1, ''];
      const places = decimalsForBand([band[0] * scale, band[1] * scale]);
      const show = (number: number) => roundedText(number * scale, places);
      return [label, show(value), `${show(band[0])} to ${show(band[1])}`, unit, trust];
    }),
    ['left', 'right', 'left', 'left', 'left'],
  );
  const told =
    options.part === undefined
      ? ''
      : `\n\nThe model takes what the part tells itself: ${(model.resistance * 1000).toPrecision(3)} mohm, ${model.noLoadCurrent.toPrecision(3)} A idle.`;
  io.writeOut(`${table}${told}${asked && at ? `\n\n${bandedPointText(at, asked.words)}` : ''}\n`);
}

function motorOf(
  options: AskMotorOptions,
  io: Io,
): { readonly guess: MotorGuess; readonly model: MotorModel; readonly known: MotorKnown } {
  if (options.part !== undefined) {
    const part = shelfPart(loadShelf(options.shelf, io), 'motor', options.part, '--part');
    const facts = motorFacts(part);
    return { ...facts, known: motorKnown(part, facts) };
  }
  if (options.stator === undefined || options.speedConstant === undefined) {
    throw new BadInput('ask motor: give --part, or --stator and --speed-constant (and --mass when known).');
  }
  const stator = statorSize.safeParse(options.stator);
  if (!stator.success) {
    throw new BadInput(
      `--stator: found "${options.stator}". Allowed: diameter and height in mm, like "2207".`,
    );
  }
  const speedConstant = quantityWithin('--speed-constant', options.speedConstant, 'motorSpeedConstant', {
    low: 5,
    high: 5000,
    words: '50 rpm/V to 47000 rpm/V',
  });
  const { diameter, height } = stator.data;
  if (diameter < 0.005 || diameter > 0.06 || height > 0.04) {
    throw new BadInput(
      `--stator: "${options.stator}" is out of range. Allowed: 5 to 60 mm across, to 40 mm high.`,
    );
  }
  const guess = motorFromNameplate({
    statorDiameter: diameter,
    statorHeight: height,
    speedConstant,
    ...(options.mass === undefined
      ? {}
      : {
          mass: quantityWithin('--mass', options.mass, 'mass', {
            low: 5e-4,
            high: 2,
            words: '0.5 g to 2 kg',
          }),
        }),
  });
  return { guess, model: guess.model, known: guess };
}

interface Asked {
  readonly words: string;
  readonly point: (model: MotorModel) => MotorPoint;
}

/** The point that was asked, for any model; undefined when none was. */
function askedOf(options: AskMotorOptions): Asked | undefined {
  const { rpm, torque, voltage } = options;
  if (rpm === undefined) {
    if (torque === undefined && voltage === undefined) return undefined;
    throw new BadInput('ask motor: --torque and --voltage need a speed as well. Give --rpm.');
  }
  const speed = (numberOption('--rpm', rpm, 0, 200000) * Math.PI) / 30;
  const winding = quantityWithin('--winding', options.winding, 'temperature', {
    low: 233.15,
    high: 473.15,
    words: '-40 degC to 200 degC',
  });
  if ((torque === undefined) === (voltage === undefined)) {
    throw new BadInput('ask motor: with --rpm give one of --torque and --voltage.');
  }
  if (torque !== undefined) {
    const asked = quantityWithin('--torque', torque, 'torque', {
      low: -20,
      high: 20,
      words: '-20 to 20 N m, negative where the propeller drives the motor',
    });
    const words = `${Number((1000 * asked).toPrecision(3))} mN m`;
    return { words, point: (model) => motorAt(model, asked, speed, winding) };
  }
  const volts = quantityWithin('--voltage', voltage ?? '', 'voltage', {
    low: 0,
    high: 100,
    words: '0 V to 100 V',
  });
  const words = `${Number(volts.toPrecision(3))} V`;
  return { words, point: (model) => motorOnVoltage(model, volts, speed, winding) };
}

function banded({ value, deviation, trust, source }: Trusted) {
  return { value, band: bandOf(value, deviation), trust, source };
}

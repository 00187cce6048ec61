import { z } from 'zod';
import { complain } from './fields.ts';
import { shown } from './shown.ts';

/** Stator as the trade writes it, `"2207"`: 22 mm diameter, 7 mm high; `"2207.5"`, `"1404"`. [m] */
export interface Stator {
  readonly diameter: number;
  readonly height: number;
}

export const statorSize = z
  .unknown()
  .transform((raw, context): Stator => {
    const text = typeof raw === 'number' || typeof raw === 'string' ? String(raw).padStart(4, '0') : '';
    const match = /^(\d{2})(\d{2}(?:\.\d)?)$/.exec(text);
    const diameter = Number(match?.[1]) / 1000;
    const height = Number(match?.[2]) / 1000;
    if (diameter >= 0.004 && height >= 0.002 && height <= 0.05) return { diameter, height };
    complain(context, raw, raw === undefined ? 'is missing' : `${shown(raw)} is not a stator size`, {
      found: shown(raw),
      allowed: 'two digits of diameter (from 04) and two of height (02 to 50), in mm',
      remedy: 'Write it like "2207".',
    });
    return z.NEVER;
  })
  .meta({
    description: 'Stator diameter and height in mm run together, such as "2207" or "2207.5"',
    shape: 'text or number',
  });

/** Propeller as printed, `"5.1 x 3.6 x 3"`: diameter and pitch in inches, blades. [m] */
export interface PropellerSize {
  readonly diameter: number;
  readonly pitch: number;
  readonly bladeCount: number;
}

const INCH = 0.0254;
/** A pitch at its very limit stays within it though inches are not kept exactly. */
const ROUNDING = 1e-9;

export const propellerSize = z
  .unknown()
  .transform((raw, context): PropellerSize => {
    const text = typeof raw === 'string' ? raw.slice(0, 60) : '';
    const match = /^\s*([\d.]+)\s*(mm|in)?\s*x\s*([\d.]+)\s*(mm|in)?\s*x\s*([1-8])\s*$/.exec(text);
    const diameter = Number(match?.[1]) * (match?.[2] === 'mm' ? 0.001 : INCH);
    const pitch = Number(match?.[3]) * (match?.[4] === 'mm' ? 0.001 : INCH);
    if (
      diameter >= 0.02 &&
      diameter <= 0.6 &&
      pitch >= 0.2 * diameter * (1 - ROUNDING) &&
      pitch <= 2 * diameter * (1 + ROUNDING)
    ) {
      return { diameter, pitch, bladeCount: Number(match?.[5]) };
    }
    complain(context, raw, raw === undefined ? 'is missing' : `${shown(raw)} is not a propeller size`, {
      found: shown(raw),
      allowed:
        'diameter x pitch x blades, in inches or with mm; 20 to 600 mm, pitch 0.2 to 2 diameters, 1 to 8 blades',
      remedy: 'Write it like "5.1 x 3.6 x 3" (inches) or "75 mm x 60 mm x 3".',
    });
    return z.NEVER;
  })
  .meta({
    description: 'Diameter x pitch x blades as printed, in inches unless "mm" is written: "5.1 x 3.6 x 3"',
    shape: 'text',
  });

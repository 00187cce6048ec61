import { interpolateLinear } from '../numerics/interpolate.ts';
import type { Blade, BladeTable, Nameplate } from './types.ts';

const INCH = 0.0254; // [m]

/**
 * Family planform, chord over the chord at 0.75 R: the mean of the small propellers with measured
 * blades in the UIUC Propeller Database (Brandt and Selig 2011; Deters, Ananda and Selig 2014).
 */
const SHAPE_RADIUS = [0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.9, 0.95, 0.98, 1];
const SHAPE_CHORD = [0.92, 1.04, 1.05, 1.13, 1.13, 1.1, 1, 0.84, 0.74, 0.6, 0.39, 0.17];

/**
 * A blade from what is printed on it, and from its chord where somebody has measured that.
 * Use `bladeFromTable` when the blade's shape is known.
 *
 * @throws RangeError outside: diameter 0.02 to 1 m, pitch 0 to 2 diameters, 1 to 8 blades,
 * chord 0.02 to 0.6 of the radius
 */
export function bladeFromNameplate(plate: Nameplate): Blade {
  const { diameter, pitch, bladeCount, chordAt75 } = plate;
  checkSize(diameter, bladeCount);
  inRange('pitch', pitch, 0, 2 * diameter, 'm');
  const radius = diameter / 2;
  if (chordAt75 !== undefined) inRange('chordAt75', chordAt75, 0.02 * radius, 0.6 * radius, 'm');
  const chord75 = chordAt75 === undefined ? familyChord(diameter) : chordAt75 / radius;
  const radiusRatio = Float64Array.from(SHAPE_RADIUS);
  return {
    diameter,
    bladeCount,
    radiusRatio,
    chordRatio: Float64Array.from(SHAPE_CHORD, (shape) => shape * chord75),
    twist: radiusRatio.map(
      (ratio) => Math.atan(pitch / (2 * Math.PI * ratio * radius)) + namedPitchOffset(pitch / diameter),
    ),
    knownBy: chordAt75 === undefined ? 'nameplate' : 'nameplate and chord',
    anchored: false,
    pitchOffset: 0,
    dragScale: 1,
  };
}

/**
 * A blade from its measured chord and twist. Tables of twist carry one to two degrees of error;
 * where the nameplate's pitch is known the table is turned half way to it at 0.75 R.
 *
 * @throws RangeError outside: diameter 0.02 to 1 m, 1 to 8 blades, at least 3 stations rising in
 * (0, 1], chord ratio 0 to 1, twist -pi/2 to pi/2
 */
export function bladeFromTable(table: BladeTable): Blade {
  const { diameter, bladeCount, pitch } = table;
  checkSize(diameter, bladeCount);
  const radiusRatio = Float64Array.from(table.radiusRatio);
  const chordRatio = Float64Array.from(table.chordRatio);
  const twist = Float64Array.from(table.twist);
  if (
    radiusRatio.length < 3 ||
    chordRatio.length !== radiusRatio.length ||
    twist.length !== radiusRatio.length
  ) {
    throw new RangeError(
      `radiusRatio, chordRatio and twist must be equally long with 3 stations or more; found ${radiusRatio.length}, ${chordRatio.length}, ${twist.length}`,
    );
  }
  let before = 0;
  for (const ratio of radiusRatio) {
    if (!(ratio > before && ratio <= 1)) {
      throw new RangeError(`radiusRatio must rise within (0, 1]; found ${ratio} after ${before}`);
    }
    before = ratio;
  }
  for (const chord of chordRatio) inRange('chordRatio', chord, 0, 1, 'R');
  for (const angle of twist) inRange('twist', angle, -Math.PI / 2, Math.PI / 2, 'rad');
  if (pitch !== undefined) {
    inRange('pitch', pitch, 0, 2 * diameter, 'm');
    const named = Math.atan(pitch / (0.75 * Math.PI * diameter));
    const turn =
      (named + namedPitchOffset(pitch / diameter) - interpolateLinear(0.75, radiusRatio, twist)) / 2;
    for (let i = 0; i < twist.length; i++) twist[i] = (twist[i] as number) + turn;
  }
  return {
    diameter,
    bladeCount,
    radiusRatio,
    chordRatio,
    twist,
    knownBy: 'blade table',
    anchored: false,
    pitchOffset: 0,
    dragScale: 1,
  };
}

/**
 * What a propeller's chord line stands above (or below) its named pitch [rad]. Flat blades are named
 * by their underside and fly a little steeper; steep ones twist back. Straight-line fit over the
 * propellers of the UIUC Propeller Database (development half); with whole families left out of the
 * fit it takes 2 % off the mean error.
 */
function namedPitchOffset(pitchRatio: number): number {
  const held = Math.min(Math.max(pitchRatio, 0.3), 1.1);
  return ((0.4 - 4 * (held - 0.65)) * Math.PI) / 180;
}

/** Chord at 0.75 R over R of the small propellers by size; scatter 18 % (UIUC Propeller Database, our fit). */
function familyChord(diameter: number): number {
  return 0.34 * (diameter / INCH) ** -0.36;
}

function checkSize(diameter: number, bladeCount: number): void {
  inRange('diameter', diameter, 0.02, 1, 'm');
  if (!(Number.isInteger(bladeCount) && bladeCount >= 1 && bladeCount <= 8)) {
    throw new RangeError(`bladeCount must be a whole number from 1 to 8; found ${bladeCount}`);
  }
}

function inRange(name: string, value: number, low: number, high: number, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} must be between ${low} and ${high} ${unit}; found ${value} ${unit}`);
  }
}

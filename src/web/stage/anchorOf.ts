import type { Finding } from '../../assess/types.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { seenFromAbove } from '../../report/path.ts';
import type { Point } from '../../report/shapes.ts';

/** Where on the plan [mm of the sheet] a finding speaks of: its own place, or that of its first part. */
export function anchorOf(finding: Finding, aircraft: AircraftPicture): Point | undefined {
  if (finding.place !== undefined) return seenFromAbove(finding.place);
  for (const part of finding.parts) {
    const place = placeOfPart(part, aircraft);
    if (place !== undefined) return seenFromAbove(place);
  }
  return undefined;
}

/** The middle of the foremost arm on one side, 1 right, -1 left. */
export function middleOfArm(aircraft: AircraftPicture, side: 1 | -1) {
  const halfway = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
  const middles = aircraft.arms.map(({ outline }) => ({
    x: halfway(outline.map((p) => p.x)),
    y: halfway(outline.map((p) => p.y)),
  }));
  return middles.toSorted((a, b) => b.x + side * b.y - a.x - side * a.y)[0];
}

function placeOfPart(part: string, aircraft: AircraftPicture) {
  // Front right reads best: nearest to the margin where notes stand.
  const rotor = aircraft.rotors.toSorted((a, b) => b.at.x + b.at.y - a.at.x - a.at.y)[0];
  const box = (name: string) => aircraft.boxes.find((each) => each.part === name)?.at;
  if (rotor === undefined) return undefined;
  const { at, propellerRadius } = rotor;
  switch (part) {
    case 'motors':
      return at;
    case 'propellers':
      return { x: at.x + propellerRadius * 0.5, y: at.y + propellerRadius * 0.6 };
    case 'frame':
      return middleOfArm(aircraft, 1);
    case 'pack':
      return box('pack');
    case 'controllers':
    case 'flightController':
      return box('stack');
    case 'cameras':
      return box('camera');
    default:
      return undefined;
  }
}

import type { AircraftPicture, RotorPicture } from './aircraftPicture.ts';
import { centreMark, spinMark } from './marks.ts';
import { seenFromAbove } from './path.ts';
import { propellerPath } from './propellerShape.ts';
import type { Shape } from './shapes.ts';

/** The disc a propeller sweeps, the propeller at rest in it and the way it turns. */
export function sweptDisc(rotor: RotorPicture, index: number, pen: number, full: boolean): readonly Shape[] {
  const at = seenFromAbove(rotor.at);
  const r = rotor.propellerRadius * 1000;
  const clockwise = rotor.spin === 'clockwise';
  // Blades of neighbours rest at different angles, as they do on the bench.
  const turn = Math.atan2(at.y, at.x) + Math.PI / 2 + (index % 2 === 0 ? 0.35 : -0.35);
  const outward = at.x >= 0 ? 0 : Math.PI;
  return [
    { kind: 'circle', ink: 'disc', x: at.x, y: at.y, r },
    { kind: 'path', ink: 'blade', d: propellerPath(at, rotor, turn) },
    ...(full ? [spinMark(at, r * 0.88, clockwise, outward, pen)] : []),
  ];
}

/** A motor's can, its bell and its shaft, seen from above. */
export function motorShapes(rotor: RotorPicture, pen: number): readonly Shape[] {
  const at = seenFromAbove(rotor.at);
  const r = rotor.motorRadius * 1000;
  return [
    { kind: 'circle', ink: 'body', x: at.x, y: at.y, r },
    { kind: 'circle', ink: 'fine', x: at.x, y: at.y, r: r * 0.72 },
    { kind: 'circle', ink: 'solid', x: at.x, y: at.y, r: Math.max(r * 0.14, 1.2 * pen) },
    centreMark(at, r + 4 * pen),
  ];
}

/** What is written by a motor: outwards of it in front and behind, so that labels keep clear of the arms. */
export function rotorLabel(
  rotor: RotorPicture,
  index: number,
  aircraft: AircraftPicture,
  pen: number,
): readonly Shape[] {
  if (rotor.label === undefined) return [];
  const at = seenFromAbove(rotor.at);
  // The second of a coaxial pair writes on the other side of its motor.
  const second = aircraft.rotors
    .slice(0, index)
    .some((other) => Math.hypot(other.at.x - rotor.at.x, other.at.y - rotor.at.y) < 0.001);
  const above = at.y <= 1 !== second;
  const r = rotor.motorRadius * 1000;
  const first = above ? at.y - r - 26 * pen : at.y + r + 22 * pen;
  return [
    {
      kind: 'text',
      hand: rotor.label.tone ?? 'figure',
      x: at.x,
      y: first,
      size: 13 * pen,
      anchor: 'middle',
      text: rotor.label.figure,
    },
    {
      kind: 'text',
      hand: 'label',
      x: at.x,
      y: first + 14 * pen,
      size: 10.5 * pen,
      anchor: 'middle',
      text: rotor.label.under,
    },
  ];
}

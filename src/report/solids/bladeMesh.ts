import type { Blade } from '../../rotor/types.ts';
import { closedMesh, joinedMesh, type Mesh } from './mesh.ts';
import { tubeMesh } from './shapes.ts';

/** Thickness over chord of the section the physics flies with (its drag rise is reckoned with the same). */
const THICKNESS = 0.07;
/** Share of the chord ahead of the blade's axis, as the plan draws it. */
const AHEAD = 0.55;
/** Corners of a section over its upper side, and as many under it. */
const SIDE = 6;

export interface HubSize {
  readonly hubDiameter: number;
  readonly hubThickness: number;
}

/**
 * A propeller about the middle of its hub, shaft along z, thrust up (-z): true chord and blade angle at every
 * station, a plain lens for its section, without sweep.
 *
 * @param spin 1 clockwise seen from above, -1 anticlockwise
 * @param turn of the first blade from x towards y [rad]
 */
export function propellerMesh(blade: Blade, hub: HubSize, spin: 1 | -1, turn: number): Mesh {
  const blades = Array.from({ length: blade.bladeCount }, (_, k) =>
    bladeMesh(blade, spin, turn + (2 * Math.PI * k) / blade.bladeCount),
  );
  return joinedMesh([tubeMesh(hub.hubDiameter, 0, hub.hubThickness), ...blades]);
}

function bladeMesh(blade: Blade, spin: 1 | -1, turn: number): Mesh {
  const radius = blade.diameter / 2;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const positions: number[] = [];
  const triangles: number[] = [];
  const n = 2 * SIDE;
  for (let k = 0; k < blade.radiusRatio.length; k++) {
    const out = (blade.radiusRatio[k] ?? 0) * radius;
    const chord = (blade.chordRatio[k] ?? 0) * radius;
    const angle = (blade.twist[k] ?? 0) + blade.pitchOffset;
    for (let i = 0; i < n; i++) {
      const [across, up] = lens(i);
      const [a, b] = [(across - 1 + AHEAD) * chord, up * chord];
      const ahead = spin * (a * Math.cos(angle) - b * Math.sin(angle));
      const lift = a * Math.sin(angle) + b * Math.cos(angle);
      positions.push(out * c - ahead * s, out * s + ahead * c, -lift);
    }
  }
  const stations = blade.radiusRatio.length;
  for (let k = 1; k < stations; k++) {
    const [from, to] = [(k - 1) * n, k * n];
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      triangles.push(from + i, to + i, to + j, from + i, to + j, from + j);
    }
  }
  const end = (stations - 1) * n;
  for (let i = 1; i < n - 1; i++) triangles.push(0, i, i + 1, end, end + i + 1, end + i);
  return closedMesh(positions, triangles);
}

/** Corner i of a lens of unit chord from its trailing edge (0) over the upper side and back below. */
function lens(i: number): readonly [across: number, up: number] {
  const over = i <= SIDE;
  const across = (over ? i : 2 * SIDE - i) / SIDE;
  const half = 2 * THICKNESS * across * (1 - across);
  return [across, over ? half : -half];
}

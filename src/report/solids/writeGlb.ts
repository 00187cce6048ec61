import type { Mesh } from './mesh.ts';
import type { CraftSolids, Look, Solid } from './solidsOf.ts';

/** Base colours (linear), metalness and roughness of what things are made of. */
const SHADES: Readonly<
  Record<Look, readonly [r: number, g: number, b: number, metal: number, rough: number]>
> = {
  carbon: [0.03, 0.032, 0.035, 0.1, 0.5],
  metal: [0.35, 0.36, 0.38, 0.8, 0.4],
  blade: [0.05, 0.2, 0.32, 0, 0.5],
  body: [0.12, 0.13, 0.15, 0, 0.7],
  board: [0.02, 0.1, 0.06, 0, 0.6],
  guard: [0.6, 0.6, 0.6, 0, 0.6],
  soft: [0.08, 0.08, 0.09, 0, 0.9],
};

const FLOAT = 5126;
const UNSIGNED = 5125;
const CORNERS = 34962;
const TRIANGLES = 34963;

/**
 * An aircraft as binary glTF 2.0 (Khronos, ISO/IEC 12113:2022): one named node a part, metres, +Y up and the nose
 * along +Z, as section 3.4 of the standard has an asset's front.
 */
export function writeGlb({ name, solids }: CraftSolids): Uint8Array<ArrayBuffer> {
  const looks = [...new Set(solids.map(({ look }) => look))];
  const chunks: Uint8Array[] = [];
  const views: object[] = [];
  const accessors: object[] = [];
  let length = 0;
  const view = (bytes: Uint8Array, target: number): number => {
    chunks.push(bytes);
    views.push({ buffer: 0, byteOffset: length, byteLength: bytes.byteLength, target });
    length += bytes.byteLength;
    return views.length - 1;
  };
  const bytesOf = ({ buffer, byteOffset, byteLength }: Float32Array | Uint32Array): Uint8Array =>
    new Uint8Array(buffer, byteOffset, byteLength);
  const meshes = solids.map((solid: Solid) => {
    const { positions, triangles } = upright(solid.mesh);
    const { min, max } = extent(positions);
    const count = positions.length / 3;
    const at = view(bytesOf(positions), CORNERS);
    accessors.push({ bufferView: at, componentType: FLOAT, count, type: 'VEC3', min, max });
    const faces = view(bytesOf(triangles), TRIANGLES);
    accessors.push({ bufferView: faces, componentType: UNSIGNED, count: triangles.length, type: 'SCALAR' });
    return {
      name: solid.name,
      primitives: [
        {
          attributes: { POSITION: accessors.length - 2 },
          indices: accessors.length - 1,
          material: looks.indexOf(solid.look),
        },
      ],
    };
  });
  const document = {
    asset: { version: '2.0', generator: 'Quadwright' },
    scene: 0,
    scenes: [{ name, nodes: [0] }],
    nodes: [
      { name, children: solids.map((_, i) => i + 1) },
      ...solids.map((solid, i) => ({ name: solid.name, mesh: i, extras: { part: solid.part } })),
    ],
    meshes,
    materials: looks.map((look) => {
      const [r, g, b, metallicFactor, roughnessFactor] = SHADES[look];
      return {
        name: look,
        pbrMetallicRoughness: { baseColorFactor: [r, g, b, 1], metallicFactor, roughnessFactor },
      };
    }),
    accessors,
    bufferViews: views,
    buffers: [{ byteLength: length }],
  };
  return packed(new TextEncoder().encode(JSON.stringify(document)), chunks, length);
}

/** Header, JSON and binary chunk, each padded to four bytes (section 4.4). */
function packed(json: Uint8Array, chunks: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const jsonLength = Math.ceil(json.length / 4) * 4;
  const whole = 12 + 8 + jsonLength + 8 + length;
  const bytes = new Uint8Array(whole);
  const words = new DataView(bytes.buffer);
  const write = (at: number, values: readonly number[]): void => {
    for (const [i, value] of values.entries()) words.setUint32(at + 4 * i, value, true);
  };
  write(0, [0x46546c67, 2, whole, jsonLength, 0x4e4f534a]);
  bytes.fill(0x20, 20, 20 + jsonLength);
  bytes.set(json, 20);
  write(20 + jsonLength, [length, 0x004e4942]);
  let at = 28 + jsonLength;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** From x forward, y right, z down to +Y up, +Z forward; a turn, so that outsides stay outside. */
function upright({ positions, triangles }: Mesh): Mesh {
  const turned = new Float32Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    turned[i] = -(positions[i + 1] as number);
    turned[i + 1] = -(positions[i + 2] as number);
    turned[i + 2] = positions[i] as number;
  }
  return { positions: turned, triangles };
}

function extent(positions: Float32Array): {
  readonly min: readonly number[];
  readonly max: readonly number[];
} {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (const [i, value] of positions.entries()) {
    min[i % 3] = Math.min(min[i % 3] as number, value);
    max[i % 3] = Math.max(max[i % 3] as number, value);
  }
  return { min, max };
}

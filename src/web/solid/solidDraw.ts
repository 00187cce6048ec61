import {
  BackSide,
  BufferAttribute,
  BufferGeometry,
  Color,
  EdgesGeometry,
  Group,
  type IUniform,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  ShaderMaterial,
} from 'three';
import { toCreasedNormals } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import type { Solid } from '../../report/solids/solidsOf.ts';
import type { Inks } from './inks.ts';

/** Values that every material shares. */
export interface Shared {
  /** How far along its swing a mode is, times the amplitude. */
  readonly swing: IUniform<number>;
  /** Width of an outline in clip space, across and up. */
  readonly outline: IUniform<readonly [number, number]>;
}

/** Edges sharper than this are inked [deg], and surfaces flatter than it are shaded as round [rad]. */
const SHARP = 32;
const ROUND = 0.6;

export interface Drawn {
  readonly solid: Solid;
  readonly group: Group;
  readonly fill: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly paint: (inks: Inks, picked: boolean) => void;
  /** One colour a triangle, or the look's own again. */
  readonly colour: (of: ((triangle: number) => Color) | undefined) => void;
  /** Where each corner goes for a unit of swing; stays when absent. A pale line keeps the place at rest. */
  readonly swing: (field: Float32Array | undefined) => void;
  readonly dispose: () => void;
}

/** A solid as the drawing office has it: shaded calmly, edges in ink, and a heavier line round its outline. */
export function drawSolid(solid: Solid, shared: Shared): Drawn {
  const { positions, triangles } = solid.mesh;
  const whole = new BufferGeometry();
  whole.setAttribute('position', new BufferAttribute(positions, 3));
  whole.setIndex(new BufferAttribute(triangles, 1));
  whole.computeVertexNormals();
  const shaded = toCreasedNormals(whole, ROUND);
  const edges = new EdgesGeometry(whole, SHARP);
  const rest = edges.clone();

  const fillMaterial = swinging(
    new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 }),
    shared,
  );
  const edgeMaterial = swinging(new LineBasicMaterial({ transparent: true, opacity: 0.8 }), shared);
  const restMaterial = new LineBasicMaterial({ transparent: true, opacity: 0.4 });
  const hullMaterial = outlineMaterial(shared);
  const fill = new Mesh(shaded, fillMaterial);
  const hull = new Mesh(whole, hullMaterial);
  const atRest = new LineSegments(rest, restMaterial);
  atRest.visible = false;
  const group = new Group();
  group.name = solid.name;
  group.add(fill, new LineSegments(edges, edgeMaterial), hull, atRest);

  return {
    solid,
    group,
    fill,
    paint: ({ looks, ink, accent, pencil }, picked) => {
      if (!fillMaterial.vertexColors)
        fillMaterial.color.copy(picked ? looks[solid.look].clone().lerp(accent, 0.45) : looks[solid.look]);
      edgeMaterial.color.copy(ink);
      restMaterial.color.copy(pencil);
      (hullMaterial.uniforms.ink as IUniform<Color>).value = picked ? accent : ink;
      (hullMaterial.uniforms.heavy as IUniform<number>).value = picked ? 2.2 : 1;
    },
    colour: (of) => {
      fillMaterial.vertexColors = of !== undefined;
      fillMaterial.needsUpdate = true;
      if (of === undefined) return;
      const corners = shaded.getAttribute('position').count;
      const colours = new Float32Array(3 * corners);
      // Creased surfaces hold three corners a triangle, in the order of the triangles.
      for (let i = 0; i < corners; i++) of(Math.floor(i / 3)).toArray(colours, 3 * i);
      shaded.setAttribute('color', new BufferAttribute(colours, 3));
      fillMaterial.color.set(0xffffff);
    },
    swing: (field) => {
      atRest.visible = field !== undefined;
      if (field === undefined) return;
      whole.setAttribute('swing', new BufferAttribute(field, 3));
      shaded.setAttribute('swing', new BufferAttribute(unindexed(field, triangles), 3));
      edges.setAttribute('swing', new BufferAttribute(atCorners(field, positions, edges), 3));
    },
    dispose: () => {
      for (const geometry of [whole, shaded, edges, rest]) geometry.dispose();
      for (const material of [fillMaterial, edgeMaterial, restMaterial, hullMaterial]) material.dispose();
    },
  };
}

/** Makes a material's corners follow the swing. */
function swinging<M extends MeshLambertMaterial | LineBasicMaterial>(material: M, { swing }: Shared): M {
  material.onBeforeCompile = (shader) => {
    shader.uniforms.swingNow = swing;
    shader.vertexShader = `attribute vec3 swing;\nuniform float swingNow;\n${shader.vertexShader.replace(
      '#include <begin_vertex>',
      '#include <begin_vertex>\ntransformed += swing * swingNow;',
    )}`;
  };
  return material;
}

/** The far side of a solid, blown up by a pen's width: what shows is its outline. */
const outlineMaterial = ({ swing, outline }: Shared): ShaderMaterial =>
  new ShaderMaterial({
    side: BackSide,
    uniforms: { swingNow: swing, outline, ink: { value: new Color() }, heavy: { value: 1 } },
    vertexShader: `
      attribute vec3 swing;
      uniform float swingNow;
      uniform vec2 outline;
      uniform float heavy;
      void main() {
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position + swing * swingNow, 1.0);
        vec2 away = (modelViewMatrix * vec4(normal, 0.0)).xy;
        float size = length(away);
        if (size > 0.001) gl_Position.xy += away / size * outline * heavy;
      }`,
    fragmentShader: `
      uniform vec3 ink;
      void main() {
        gl_FragColor = vec4(ink, 1.0);
        #include <colorspace_fragment>
      }`,
  });

function unindexed(field: Float32Array, triangles: Uint32Array): Float32Array {
  const out = new Float32Array(3 * triangles.length);
  for (const [i, corner] of triangles.entries()) out.set(field.subarray(3 * corner, 3 * corner + 3), 3 * i);
  return out;
}

/** Edges keep no numbers of their corners: they are found again by their place. */
function atCorners(field: Float32Array, positions: Float32Array, edges: BufferGeometry): Float32Array {
  const key = (values: ArrayLike<number>, at: number): string =>
    `${values[at]} ${values[at + 1]} ${values[at + 2]}`;
  const corner = new Map<string, number>();
  for (let i = 0; i < positions.length; i += 3) corner.set(key(positions, i), i);
  const places = edges.getAttribute('position').array;
  const out = new Float32Array(places.length);
  for (let i = 0; i < places.length; i += 3) {
    const at = corner.get(key(places, i)) ?? 0;
    out.set(field.subarray(at, at + 3), i);
  }
  return out;
}

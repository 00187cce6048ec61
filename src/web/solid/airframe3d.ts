import {
  DirectionalLight,
  HemisphereLight,
  Matrix4,
  OrthographicCamera,
  Raycaster,
  Scene,
  SRGBColorSpace,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { type ArmLoad, bandsOfArm } from '../../report/solids/armStresses.ts';
import { type Sighting, sheetAxes } from '../../report/solids/axonometric.ts';
import { type ModeMotion, swingOf } from '../../report/solids/modeSwing.ts';
import type { CraftSolids, Solid } from '../../report/solids/solidsOf.ts';
import { type AirDrawn, drawAir } from './airDraw.ts';
import { type Inks, inksOf } from './inks.ts';
import { type Drawn, drawSolid, type Shared } from './solidDraw.ts';

/** What is told to the view; each call draws once, on the next frame. */
export interface RoundScene {
  readonly show: (craft: CraftSolids) => void;
  readonly see: (sighting: Sighting) => void;
  readonly overlay: (shown: {
    readonly discs: boolean;
    readonly wakes: boolean;
    readonly guards: boolean;
  }) => void;
  /** Marks every solid of a part. */
  readonly pick: (part: string | undefined) => void;
  readonly load: (loads: readonly ArmLoad[], bounds: readonly number[]) => void;
  /** Takes a mode's shape on; how far along it is follows by `swing` [m of a unit]. */
  readonly mode: (motion: ModeMotion | undefined) => void;
  readonly swing: (now: number) => void;
  readonly repaint: () => void;
  /** The solid under a place of the window [px]. */
  readonly at: (x: number, y: number) => Solid | undefined;
  /** The colours of the stress bands as the style sheet writes them. */
  readonly bandColours: () => readonly string[];
  /** The view as it stands, on nothing. */
  readonly canvas: () => HTMLCanvasElement;
  /** Gives the drawing context back too: a browser has few, and takes the oldest away from whoever holds it. */
  readonly dispose: () => void;
}

/** From the eye to the middle of the craft [m]: lines are parallel, so it only has to clear the craft. */
const AWAY = 4;
/** Width of outlines [px]. */
const OUTLINE = 1.5;

/**
 * Opens a view in the round on a canvas; undefined where the browser has no WebGL. `onHeld` is told when the browser
 * takes the drawing context away (false) and when it is back and drawn again (true).
 */
export function openRound(
  canvas: HTMLCanvasElement,
  onHeld: (held: boolean) => void,
): RoundScene | undefined {
  const renderer = rendererOn(canvas);
  if (renderer === undefined) return undefined;
  renderer.outputColorSpace = SRGBColorSpace;
  const scene = new Scene();
  const camera = new OrthographicCamera();
  camera.matrixAutoUpdate = false;
  const key = new DirectionalLight(0xffffff, 1.1);
  scene.add(new HemisphereLight(0xffffff, 0xffffff, 2.25), key, key.target);
  const shared: Shared = { swing: { value: 0 }, outline: { value: [0, 0] } };

  let inks: Inks = inksOf(canvas);
  let drawn: readonly Drawn[] = [];
  let air: AirDrawn | undefined;
  let arms: CraftSolids['arms'] = [];
  let picked: string | undefined;
  let shown = { discs: true, wakes: false, guards: true };
  let loaded: { readonly loads: readonly ArmLoad[]; readonly bounds: readonly number[] } = {
    loads: [],
    bounds: [],
  };
  let motion: ModeMotion | undefined;
  let frame = 0;

  const render = (): void => {
    frame = 0;
    renderer.render(scene, camera);
  };
  const soon = (): void => {
    if (frame === 0) frame = requestAnimationFrame(render);
  };

  // The library asks for the context back and fills it anew; drawing again is ours.
  const onLost = (): void => onHeld(false);
  const onRestored = (): void => {
    onHeld(true);
    soon();
  };
  canvas.addEventListener('webglcontextlost', onLost);
  canvas.addEventListener('webglcontextrestored', onRestored);

  function paint(): void {
    for (const each of drawn) each.paint(inks, each.solid.part === picked);
    air?.paint(inks);
    soon();
  }

  function applyOverlay(): void {
    if (air) [air.discs.visible, air.wakes.visible] = [shown.discs, shown.wakes];
    for (const { solid, group } of drawn) if (solid.look === 'guard') group.visible = shown.guards;
    soon();
  }

  function applyLoad(): void {
    const { loads, bounds } = loaded;
    for (const each of drawn) {
      const load = loads.find(({ arm }) => arm.name === each.solid.name);
      if (load === undefined) each.colour(undefined);
      else {
        const bands = bandsOfArm(each.solid, load, bounds);
        const held = inks.looks.carbon;
        each.colour((triangle) => inks.bands[bands[triangle] ?? -1] ?? held);
      }
    }
    paint();
  }

  function applyMode(): void {
    for (const each of drawn) each.swing(motion && swingOf(each.solid, arms, motion));
    soon();
  }

  function clear(): void {
    for (const each of drawn) {
      scene.remove(each.group);
      each.dispose();
    }
    if (air) {
      scene.remove(air.discs, air.wakes);
      air.dispose();
    }
  }

  return {
    show: (craft) => {
      clear();
      arms = craft.arms;
      drawn = craft.solids.map((solid) => drawSolid(solid, shared));
      air = drawAir(craft.discs);
      scene.add(...drawn.map(({ group }) => group), air.wakes, air.discs);
      applyMode();
      applyLoad();
      applyOverlay();
    },
    see: ({ look, pen, centre, width, height }) => {
      const { right, up, out } = sheetAxes(look);
      const [x, y, z] = [right, up, out].map((axis) => new Vector3(...axis)) as [Vector3, Vector3, Vector3];
      camera.matrix.copy(
        new Matrix4().makeBasis(x, y, z).setPosition(new Vector3(...centre).addScaledVector(z, AWAY)),
      );
      camera.matrixWorldNeedsUpdate = true;
      camera.left = (-width / 2) * pen;
      camera.right = (width / 2) * pen;
      camera.top = (height / 2) * pen;
      camera.bottom = (-height / 2) * pen;
      camera.near = 0.5;
      camera.far = 2 * AWAY;
      camera.updateProjectionMatrix();
      // From over the reader's left shoulder, as on a drawing with shadows.
      key.position.copy(z).addScaledVector(x, -0.7).addScaledVector(y, 1.1);
      const heavy = OUTLINE * Math.min(1, 0.45 + width / 1400);
      shared.outline.value = [(2 * heavy) / width, (2 * heavy) / height];
      const ratio = Math.min(window.devicePixelRatio, 2);
      if (renderer.getPixelRatio() !== ratio) renderer.setPixelRatio(ratio);
      const size = renderer.getSize(new Vector2());
      if (size.x !== width || size.y !== height) {
        renderer.setSize(width, height, false);
        // A new size wipes the canvas: drawn at once, or it stands empty for a frame.
        render();
      } else soon();
    },
    overlay: (next) => {
      shown = next;
      applyOverlay();
    },
    pick: (part) => {
      picked = part;
      paint();
    },
    load: (loads, bounds) => {
      loaded = { loads, bounds };
      applyLoad();
    },
    mode: (next) => {
      motion = next;
      if (next === undefined) shared.swing.value = 0;
      applyMode();
    },
    swing: (now) => {
      shared.swing.value = now;
      soon();
    },
    repaint: () => {
      inks = inksOf(canvas);
      applyLoad();
    },
    at: (x, y) => {
      const { width, height } = renderer.getSize(new Vector2());
      const ray = new Raycaster();
      ray.setFromCamera(new Vector2((2 * x) / width - 1, 1 - (2 * y) / height), camera);
      const fills = drawn.filter(({ group }) => group.visible).map(({ fill }) => fill);
      const hit = ray.intersectObjects(fills, false)[0]?.object;
      return drawn.find(({ fill }) => fill === hit)?.solid;
    },
    bandColours: () => inks.bands.map((colour) => colour.getStyle()),
    canvas: () => {
      render();
      return canvas;
    },
    dispose: () => {
      cancelAnimationFrame(frame);
      canvas.removeEventListener('webglcontextlost', onLost);
      canvas.removeEventListener('webglcontextrestored', onRestored);
      clear();
      renderer.dispose();
      renderer.forceContextLoss();
    },
  };
}

function rendererOn(canvas: HTMLCanvasElement): WebGLRenderer | undefined {
  // Asked beforehand, since the library writes an error on the console when there is none.
  const context = canvas.getContext('webgl2', {
    alpha: true,
    antialias: true,
    premultipliedAlpha: true,
    // Paper gets what was drawn last, and a saved picture too.
    preserveDrawingBuffer: true,
  });
  if (context === null) return undefined;
  try {
    return new WebGLRenderer({ canvas, context, alpha: true, antialias: true });
  } catch {
    return undefined;
  }
}

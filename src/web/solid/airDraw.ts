import {
  BufferGeometry,
  CircleGeometry,
  DoubleSide,
  Group,
  LatheGeometry,
  Line,
  LineDashedMaterial,
  LineLoop,
  Mesh,
  MeshBasicMaterial,
  Vector2,
  Vector3,
} from 'three';
import type { Disc } from '../../report/solids/solidsOf.ts';
import { slipstreamRadius } from '../../report/solids/wakeTube.ts';
import type { Inks } from './inks.ts';

export interface AirDrawn {
  readonly discs: Group;
  readonly wakes: Group;
  readonly paint: (inks: Inks) => void;
  readonly dispose: () => void;
}

/** How far a slipstream is drawn, in radii of its disc. */
const REACH = 1.7;
const STEPS = 24;

/** Swept discs, and the slipstream under each. */
export function drawAir(places: readonly Disc[]): AirDrawn {
  const wash = clear(0.1);
  const tube = clear(0.07);
  const dashed = new LineDashedMaterial({ dashSize: 0.008, gapSize: 0.004 });
  const fine = new LineDashedMaterial({ dashSize: 0.003, gapSize: 0.003, transparent: true, opacity: 0.7 });
  const [discs, wakes] = [new Group(), new Group()];
  const made: BufferGeometry[] = [];
  const keep = <G extends BufferGeometry>(geometry: G): G => {
    made.push(geometry);
    return geometry;
  };
  for (const { centre, radius } of places) {
    const disc = new Mesh(keep(new CircleGeometry(radius, 72)), wash);
    disc.position.set(...centre);
    const edge = new LineLoop(keep(ring(radius)), dashed).computeLineDistances();
    edge.position.set(...centre);
    discs.add(disc, edge);

    const profile = Array.from({ length: STEPS + 1 }, (_, i) => {
      const behind = (i / STEPS) * REACH * radius;
      return { behind, r: slipstreamRadius(radius, behind) };
    });
    const lathe = keep(
      new LatheGeometry(
        profile.map(({ r, behind }) => new Vector2(r, behind)),
        48,
      ),
    );
    // A lathe turns about y: laid so that it runs down, along z.
    lathe.rotateX(Math.PI / 2);
    const flow = new Mesh(lathe, tube);
    flow.position.set(...centre);
    wakes.add(flow);
    for (let k = 0; k < 8; k++) {
      const angle = (k * Math.PI) / 4;
      const points = profile.map(
        ({ r, behind }) => new Vector3(r * Math.cos(angle), r * Math.sin(angle), behind),
      );
      const line = new Line(keep(new BufferGeometry().setFromPoints(points)), fine).computeLineDistances();
      line.position.set(...centre);
      wakes.add(line);
    }
    for (const share of [0.5, 1]) {
      const behind = share * REACH * radius;
      const hoop = new LineLoop(keep(ring(slipstreamRadius(radius, behind))), fine).computeLineDistances();
      hoop.position.set(centre[0], centre[1], centre[2] + behind);
      wakes.add(hoop);
    }
  }
  return {
    discs,
    wakes,
    paint: ({ accent }) => {
      for (const material of [wash, tube, dashed, fine]) material.color.copy(accent);
    },
    dispose: () => {
      for (const geometry of made) geometry.dispose();
      for (const material of [wash, tube, dashed, fine]) material.dispose();
    },
  };
}

const clear = (opacity: number): MeshBasicMaterial =>
  new MeshBasicMaterial({ transparent: true, opacity, side: DoubleSide, depthWrite: false });

const ring = (radius: number): BufferGeometry =>
  new BufferGeometry().setFromPoints(
    Array.from({ length: 96 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 96;
      return new Vector3(radius * Math.cos(angle), radius * Math.sin(angle), 0);
    }),
  );

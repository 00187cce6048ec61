import { subtract3 } from '../numerics/vector3.ts';
import { discVeil } from './discVeil.ts';
import { barSolid, boxSolid, plateSolids } from './flatSolids.ts';
import { type Bore, ballSolid, cylinder, hoop, type Roundness } from './roundSolids.ts';
import { length3, offset3, type Solid } from './solid.ts';
import type { Occluder } from './types.ts';

/** Solids that hide light alike: a disc has a veil and an opaque hub, all else one layer. */
export interface Layer {
  /** 0 to 1. */
  readonly opacity: number;
  readonly solids: readonly Solid[];
  readonly bore?: Bore;
}

/** @param exposure [s], > 0; it does not change a disc's mean opacity but is checked with it */
export function layersOf(occluder: Occluder, exposure: number, roundness: Roundness): readonly Layer[] {
  switch (occluder.kind) {
    case 'sweptDisc': {
      const { centre, axis, radius, hubRadius, thickness } = occluder;
      const veil: Layer = {
        opacity: discVeil(occluder, exposure).meanOpacity,
        solids: [cylinder(centre, axis, radius, thickness, roundness)],
      };
      if (hubRadius === 0) return [veil];
      return [veil, opaque([cylinder(centre, axis, hubRadius, thickness, roundness)])];
    }
    case 'bar':
      return [opaque([barSolid(occluder)])];
    case 'box':
      return [opaque([boxSolid(occluder)])];
    case 'plate':
      return [opaque(plateSolids(occluder))];
    case 'ring':
      return [ringLayer(hoop(occluder, roundness))];
    case 'rod': {
      const axis = subtract3(occluder.to, occluder.from);
      const centre = offset3(occluder.from, [0.5, axis]);
      return [opaque([cylinder(centre, axis, occluder.radius, length3(axis), roundness)])];
    }
    case 'ball':
      return [opaque([ballSolid(occluder, roundness)])];
  }
}

const opaque = (solids: readonly Solid[]): Layer => ({ opacity: 1, solids });

const ringLayer = ({ outside, bore }: ReturnType<typeof hoop>): Layer => ({ ...opaque([outside]), bore });

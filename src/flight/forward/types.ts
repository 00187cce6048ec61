import type { DragAreas } from '../../airframe/types.ts';
import type { NoSolution } from '../../numerics/outcome.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import type { Circuit } from '../circuit.ts';
import type { HoverTrim } from '../hoverTrim.ts';
import type { Load } from '../load.ts';
import type { FlightModel } from '../types.ts';
import type { WakeTable } from '../wakes/wakeTable.ts';
import type { BarDrag } from './bodyDrag.ts';
import type { ObliqueRotor, ObliqueState } from './edgewise.ts';

/** Slower than this it hovers [m/s]. */
export const CRAWL = 1e-6;

/** An aircraft in still air, ready to be asked at many speeds. */
export interface ForwardCraft {
  readonly model: FlightModel;
  readonly circuit: Circuit;
  readonly trim: HoverTrim;
  /** Of everything bluff: plates, pack, cameras, motors. */
  readonly drag: DragAreas;
  /** Arms and other slender bars. */
  readonly bars: readonly BarDrag[];
  /** Where that drag acts [m]. */
  readonly dragCentre: Vector3;
  readonly dragScale: number;
  readonly oblique: ObliqueRotor;
  /** Of the rotors on one another; none when absent. */
  readonly wakes?: WakeTable;
}

/** Level or climbing flight at a speed, motors turning as needed, whatever feeds them. */
export interface ForwardTrim {
  /** Through the air, level [m/s]. */
  readonly speed: number;
  /** [m/s] */
  readonly climb: number;
  /** Nose down, the thrust leaning forward [rad], 0 to pi/2. */
  readonly tilt: number;
  /** Net of download, all motors [N]. */
  readonly thrust: number;
  /** Net of download, one a station [N]. */
  readonly thrusts: Float64Array;
  /** Drag of body and bars along the aircraft's own x axis [N]. */
  readonly bodyDrag: number;
  /** In-plane drag of all propellers [N]. */
  readonly rotorDrag: number;
  /** Push of the air on the top of the tilted body, against the thrust [N]. */
  readonly download: number;
  readonly load: Load;
  /** One a station. */
  readonly rotors: readonly ObliqueState[];
  /** Axial speed that the other rotors' wakes add at each disc [m/s]; upwash is negative. */
  readonly wash: Float64Array;
}

/** Why there is no level flight at a speed. */
export interface NoTrim extends NoSolution {
  /**
   * `too slow`: a rotor would turn more slowly than is known of it, `too little thrust`: it cannot pull so hard, `moments`: no
   * thrusts balance them, `unfound`: the search did not end, which says nothing about the craft.
   */
  readonly because: 'too slow' | 'too little thrust' | 'moments' | 'unfound';
}

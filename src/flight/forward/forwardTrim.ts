import type { DragAreas } from '../../airframe/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { secantRoot } from '../../numerics/secantRoot.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { balanceOf, effectivenessOf, leastThrusts } from '../allocation.ts';
import type { Circuit } from '../circuit.ts';
import type { HoverTrim } from '../hoverTrim.ts';
import { emptyLoad, type Load } from '../load.ts';
import type { FlightModel } from '../types.ts';
import { inducedSpeed } from '../wake.ts';
import { type WakeSource, type WakeTable, writeWash } from '../wakes/wakeTable.ts';
import { type BarDrag, bluffAreas, writeBodyForce } from './bodyDrag.ts';
import type { ObliqueRotor, ObliqueState } from './edgewise.ts';
import { type RotorSet, turnRotors } from './turnRotors.ts';

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

/** Level flight at a speed, motors turning as needed, whatever feeds them. */
export interface ForwardTrim {
  /** Through the air [m/s]. */
  readonly speed: number;
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

/** Slower than this it hovers [m/s]. */
const CRAWL = 1e-6;
/** Shares of the thrust, the moments they must balance and the washes take turns; they hardly move each other. */
const ROUNDS = 12;
const SETTLED = 1e-9;
/** A wash is settled when a thousand times further off than a share would be: a millionth of the hover's induced speed. */
const WASH_MATTERS = 1e-3;

/**
 * Steady level flight. In the tilted aircraft's axes, with D the force of the air on body and arms:
 *
 *   forward   W sin(tilt) = D_x + rotor in-plane drag
 *   upward    T = W cos(tilt) + D_z
 *   moments   thrusts, reaction torques, body drag at its centre, in-plane drag at the discs: none about the
 *             centre of gravity
 *
 * D by `writeBodyForce`: bluff parts by the whole wind, bars by what crosses them. Rotors stand in each other's wakes
 * (`wakes/`). Hub moments of the propellers are left out at this depth; canted rotors are taken as upright, and a tail servo as holding whatever yaw is left. The left side rises and the right falls with tilt, so
 * there is one tilt for given shares.
 *
 * @param speed through the air [m/s], >= 0
 */
export function forwardTrim(craft: ForwardCraft, speed: number): Outcome<ForwardTrim> {
  const { circuit, bars } = craft;
  const bluff = bluffAreas(craft.drag);
  const density = circuit.airDensity * craft.dragScale;
  const force = new Float64Array(3);
  const forceAt = (sine: number, cosine: number): void =>
    writeBodyForce(bluff, bars, speed * cosine, 0, -speed * sine, density, force);
  const count = circuit.branches.length;
  const load = emptyLoad(count);
  const thrusts = new Float64Array(count);
  // What rounds settle: shares of the thrust, then wash over a hover's induced speed.
  const hoverSpeed = hoverSpeedOf(craft);
  let settling = new Float64Array(2 * count);
  settling.set(craft.trim.thrusts.map((thrust) => thrust / circuit.weight));
  const wash = new Float64Array(count);
  let latest: Outcome<RotorSet> | undefined;
  let known = 0;
  const lacking = (tilt: number): number => {
    const sine = Math.sin(tilt);
    const cosine = Math.cos(tilt);
    forceAt(sine, cosine);
    const total = circuit.weight * cosine + (force[2] as number);
    for (let i = 0; i < count; i++) thrusts[i] = (settling[i] as number) * total;
    latest = turnRotors(craft, thrusts, speed * sine, speed * cosine, wash, load);
    // Where a rotor has no solution the last drag known still leaves a steady way towards the tilt.
    if (latest.ok) known = latest.value.inPlaneForce;
    return circuit.weight * sine + (force[0] as number) - known;
  };
  forceAt(0, 1);
  let tilt = Math.atan2(-(force[0] as number), circuit.weight);
  let before: Step | undefined;
  const made = new Float64Array(count);
  for (let round = 0; round < ROUNDS; round++) {
    for (let i = 0; i < count; i++) wash[i] = (settling[count + i] as number) * hoverSpeed;
    if (speed > CRAWL) tilt = secantRoot(lacking, 0, Math.PI / 2, tilt);
    lacking(tilt);
    if (latest === undefined || !latest.ok) return latest ?? noSolution('there are no rotors');
    const bodyDrag = -(force[0] as number);
    const download = force[2] as number;
    const state: ForwardTrim = {
      speed,
      tilt,
      thrust: circuit.weight * Math.cos(tilt) + download,
      thrusts,
      bodyDrag,
      rotorDrag: latest.value.inPlaneForce,
      download,
      load,
      rotors: latest.value.rotors,
      wash,
    };
    const shares = sharesFor(craft, state);
    if (!shares.ok) return shares;
    const next = new Float64Array(2 * count);
    next.set(shares.value);
    if (craft.wakes !== undefined) {
      writeWash(craft.wakes, wakeSources(state), made);
      for (let i = 0; i < count; i++) next[count + i] = (made[i] as number) / hoverSpeed;
    }
    const moved = next.map((value, i) => value - (settling[i] as number));
    const change = moved.reduce((most, step, i) => {
      return Math.max(most, Math.abs(step) * (i < count ? 1 : WASH_MATTERS));
    }, 0);
    if (speed <= CRAWL || change <= SETTLED) return solved(state);
    const now = { next, moved };
    settling = before === undefined ? next : mixed(now, before, count);
    before = now;
  }
  return noSolution(`at ${speed.toFixed(1)} m/s thrusts and drag moments do not settle on one another`);
}

/** One induced speed to measure washes by [m/s]. */
function hoverSpeedOf({ circuit }: ForwardCraft): number {
  const area = circuit.branches.reduce((sum, branch) => sum + branch.discArea, 0);
  return inducedSpeed(circuit.weight, 0, circuit.airDensity, area);
}

function wakeSources({ speed, tilt, load, rotors }: ForwardTrim): readonly WakeSource[] {
  return rotors.map((rotor, i) => ({
    inducedSpeed: rotor.inducedSpeed,
    throughSpeed: (load.axialSpeed[i] as number) + rotor.inducedSpeed,
    edgewiseSpeed: speed * Math.cos(tilt),
  }));
}

/** What a round asks for, and how far that is from what it was given. */
interface Step {
  readonly next: Float64Array<ArrayBuffer>;
  readonly moved: Float64Array;
}

/**
 * Anderson's mixing (1965) over two rounds: reaction torque answers a share with a quarter or a third of it, so plain
 * turns would crawl. Shares below nothing are not mixed.
 *
 * @param count of shares, which come first
 */
function mixed(now: Step, before: Step, count: number): Float64Array<ArrayBuffer> {
  let along = 0;
  let square = 0;
  now.moved.forEach((step, i) => {
    const turn = step - (before.moved[i] as number);
    along += step * turn;
    square += turn * turn;
  });
  if (!(square > 0)) return now.next;
  const ahead = now.next.map((value, i) => value - (along / square) * (value - (before.next[i] as number)));
  return ahead.every((value, i) => i >= count || value >= 0) ? ahead : now.next;
}

/** Shares of the total thrust that balance every moment of a state about the centre of gravity. */
function sharesFor(craft: ForwardCraft, state: ForwardTrim): Outcome<Float64Array> {
  const { model, circuit, dragCentre } = craft;
  const { stations, centreOfGravity } = model;
  const total = state.thrust;
  const servo = stations.some((station) => station.servoTilt !== undefined);
  const ratios = stations.map((_, i) => {
    const net = state.thrusts[i] as number;
    return net > 0 ? (state.load.torque[i] as number) / net : 0;
  });
  const balance = balanceOf(
    effectivenessOf(stations, centreOfGravity, ratios),
    stations,
    centreOfGravity,
    !servo,
  );
  // Forces backward (-x) and down (+z) at a lever r: roll = y F_z, pitch = z F_x - x F_z, yaw = -y F_x.
  const back = dragCentre[2] - centreOfGravity[2];
  let roll = (dragCentre[1] - centreOfGravity[1]) * state.download;
  let pitch = -back * state.bodyDrag - (dragCentre[0] - centreOfGravity[0]) * state.download;
  let yaw = (dragCentre[1] - centreOfGravity[1]) * state.bodyDrag;
  stations.forEach(({ position }, i) => {
    const force = state.rotors[i]?.inPlaneForce ?? 0;
    pitch -= (position[2] - centreOfGravity[2]) * force;
    yaw += (position[1] - centreOfGravity[1]) * force;
  });
  // At rest exactly the hover trim, to the last digit.
  if (state.speed <= CRAWL) roll = pitch = yaw = 0;
  const [rollScale, pitchScale, yawScale] = balance.scales;
  const right = [1, -roll / (total * rollScale), -pitch / (total * pitchScale)];
  if (!servo) right.push(-yaw / (total * yawScale));
  const found = leastThrusts(balance.rows, right);
  if (found.ok) return found;
  const weightShare = (100 * Math.abs(pitch)) / (circuit.weight * pitchScale);
  return noSolution(
    `at ${state.speed.toFixed(1)} m/s the motors cannot balance the moments of the drag (${weightShare.toFixed(0)} % of weight times arm)`,
  );
}

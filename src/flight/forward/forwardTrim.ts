import type { DragAreas } from '../../airframe/types.ts';
import { andersonMixer } from '../../numerics/anderson.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { secantRoot } from '../../numerics/secantRoot.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { withUnit } from '../../units/formatQuantity.ts';
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

/** Slower than this it hovers [m/s]. */
const CRAWL = 1e-6;
/** Tilt, shares of the thrust, and washes take turns until none moves by more than this (rad, shares). */
const SETTLED = 1e-9;
/** A wash is settled when a thousand times further off than a share would be: a millionth of the hover's induced speed. */
const WASH_MATTERS = 1e-3;
/** Rounds before the tilt is searched for anew in each, which always finds it but takes ten times as long. */
const QUICK_ROUNDS = 40;
const ROUNDS = 60;
/** Rounds that the mixing looks back on. */
const MEMORY = 5;

/**
 * Steady flight, level or climbing. In the tilted aircraft's axes, with D the force of the air on body and arms:
 *
 *   forward   W sin(tilt) = D_x + rotor in-plane drag
 *   upward    T = W cos(tilt) + D_z
 *   moments   thrusts, reaction torques, hub moments, body drag at its centre, in-plane forces at the discs: none
 *             about the centre of gravity
 *
 * D by `writeBodyForce`: bluff parts by the whole wind, bars by what crosses them. Rotors stand in each other's wakes
 * (`wakes/`). Side forces of the discs turn it but do not push it aside: in pairs they cancel, and what an odd rotor leaves would
 * take a hair of bank. Canted rotors are taken as upright, and a tail servo as holding whatever yaw is left. The left
 * side rises and the right falls with tilt, so there is one tilt for given shares.
 *
 * @param speed through the air, level [m/s], >= 0
 * @param climb [m/s], >= 0: sinking rotors meet their own wakes (`solveRotor` knows how far that can be answered)
 * @throws RangeError for a climb below 0
 */
export function forwardTrim(craft: ForwardCraft, speed: number, climb = 0): Outcome<ForwardTrim> {
  if (!(climb >= 0)) throw new RangeError(`climb must be at least 0 m/s; found ${climb} m/s`);
  const quick = settle(craft, speed, climb, true);
  return quick.ok || speed <= CRAWL ? quick : settle(craft, speed, climb, false);
}

function settle(craft: ForwardCraft, speed: number, climb: number, quick: boolean): Outcome<ForwardTrim> {
  const { circuit, bars } = craft;
  const bluff = bluffAreas(craft.drag);
  const density = circuit.airDensity * craft.dragScale;
  const force = new Float64Array(3);
  const count = circuit.branches.length;
  const load = emptyLoad(count);
  const thrusts = new Float64Array(count);
  const wash = new Float64Array(count);
  const made = new Float64Array(count);
  const hoverSpeed = hoverSpeedOf(craft);
  let latest: Outcome<RotorSet> | undefined;
  let known = 0;
  // What rounds settle: shares of the thrust, washes over a hover's induced speed, tilt.
  let settling = startOf(craft, speed, load);
  const still = speed <= CRAWL && climb <= CRAWL;
  const lacking = (tilt: number): number => {
    const sine = Math.sin(tilt);
    const cosine = Math.cos(tilt);
    const along = speed * cosine - climb * sine;
    const through = speed * sine + climb * cosine;
    writeBodyForce(bluff, bars, along, 0, -through, density, force);
    const total = circuit.weight * cosine + (force[2] as number);
    for (let i = 0; i < count; i++) thrusts[i] = (settling[i] as number) * total;
    // Only on the way to the answer does a steep climb blow along the discs from behind.
    latest = turnRotors(craft, thrusts, through, Math.max(along, 0), wash, load);
    // Where a rotor has no solution the last drag known still leaves a steady way towards the tilt.
    if (latest.ok) known = latest.value.inPlaneForce;
    return circuit.weight * sine + (force[0] as number) - known;
  };
  const mixed = andersonMixer(MEMORY);
  for (let round = 0; round < (quick ? QUICK_ROUNDS : ROUNDS); round++) {
    for (let i = 0; i < count; i++) wash[i] = (settling[count + i] as number) * hoverSpeed;
    let tilt = settling[2 * count] as number;
    if (!quick && speed > CRAWL) tilt = secantRoot(lacking, 0, Math.PI / 2, tilt);
    const lack = lacking(tilt);
    if (latest === undefined || !latest.ok) return latest ?? noSolution('there are no rotors');
    const bodyDrag = -(force[0] as number);
    const download = force[2] as number;
    const state: ForwardTrim = {
      speed,
      climb,
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
    const moved = new Float64Array(2 * count + 1);
    for (let i = 0; i < count; i++) moved[i] = (shares.value[i] as number) - (settling[i] as number);
    if (craft.wakes !== undefined) {
      writeWash(craft.wakes, wakeSources(state), made);
      for (let i = 0; i < count; i++) {
        moved[count + i] = (made[i] as number) / hoverSpeed - (settling[count + i] as number);
      }
    }
    // Drag along the aircraft falls about as the cosine of the tilt.
    const pushed = bodyDrag + latest.value.inPlaneForce;
    const slope = circuit.weight * Math.cos(tilt) + pushed * Math.tan(Math.min(tilt, STEEPEST));
    if (quick && speed > CRAWL) moved[2 * count] = -lack / slope;
    else settling[2 * count] = tilt;
    const change = moved.reduce((most, step, i) => {
      return Math.max(most, Math.abs(step) * (i >= count && i < 2 * count ? WASH_MATTERS : 1));
    }, 0);
    if (still || change <= SETTLED) return solved(state);
    const next = mixed(settling, moved);
    const sound =
      next.every((value, i) => Number.isFinite(value) && (i >= count || value >= 0)) &&
      (next[2 * count] as number) >= 0 &&
      (next[2 * count] as number) < Math.PI / 2;
    if (sound) settling = next;
    else {
      for (let i = 0; i < settling.length; i++) settling[i] = (settling[i] as number) + (moved[i] as number);
      settling[2 * count] = Math.min(Math.max(settling[2 * count] as number, 0), STEEPEST);
    }
  }
  return noSolution(
    `at ${withUnit(speed.toFixed(1), 'm/s')} thrusts and drag moments do not settle on one another`,
  );
}

/** Steepest tilt that a slope is taken at [rad]. */
const STEEPEST = 1.5;

/** What the first round is given: the hover's shares leaning against the body's drag. */
function startOf(craft: ForwardCraft, speed: number, load: Load): Float64Array {
  const count = craft.circuit.branches.length;
  const start = new Float64Array(2 * count + 1);
  load.angularSpeed.set(craft.trim.load.angularSpeed);
  start.set(craft.trim.thrusts.map((thrust) => thrust / craft.circuit.weight));
  if (speed > CRAWL) {
    const force = new Float64Array(3);
    const density = craft.circuit.airDensity * craft.dragScale;
    writeBodyForce(bluffAreas(craft.drag), craft.bars, speed, 0, 0, density, force);
    start[2 * count] = Math.atan2(-(force[0] as number), craft.circuit.weight);
  }
  return start;
}

/** One induced speed to measure washes by [m/s]. */
function hoverSpeedOf({ circuit }: ForwardCraft): number {
  const area = circuit.branches.reduce((sum, branch) => sum + branch.discArea, 0);
  return inducedSpeed(circuit.weight, 0, circuit.airDensity, area);
}

function wakeSources({ speed, climb, tilt, load, rotors }: ForwardTrim): readonly WakeSource[] {
  return rotors.map((rotor, i) => ({
    inducedSpeed: rotor.inducedSpeed,
    throughSpeed: (load.axialSpeed[i] as number) + rotor.inducedSpeed,
    edgewiseSpeed: Math.max(speed * Math.cos(tilt) - climb * Math.sin(tilt), 0),
  }));
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
  stations.forEach(({ position, spin }, i) => {
    const rotor = state.rotors[i];
    if (rotor === undefined) return;
    const { inPlaneForce: force, sideForce, momentAdvancingUp, momentAftUp } = rotor;
    // The advancing side of a rotor that turns clockwise seen from above is its left.
    const right = -spin * sideForce;
    roll += spin * momentAdvancingUp - (position[2] - centreOfGravity[2]) * right;
    pitch -= momentAftUp + (position[2] - centreOfGravity[2]) * force;
    yaw += (position[1] - centreOfGravity[1]) * force + (position[0] - centreOfGravity[0]) * right;
  });
  // At rest exactly the hover trim, to the last digit.
  if (state.speed <= CRAWL && state.climb <= CRAWL) roll = pitch = yaw = 0;
  const [rollScale, pitchScale, yawScale] = balance.scales;
  const right = [1, -roll / (total * rollScale), -pitch / (total * pitchScale)];
  if (!servo) right.push(-yaw / (total * yawScale));
  const found = leastThrusts(balance.rows, right);
  if (found.ok) return found;
  const weightShare = (100 * Math.abs(pitch)) / (circuit.weight * pitchScale);
  return noSolution(
    `at ${withUnit(state.speed.toFixed(1), 'm/s')} the motors cannot balance the moments of the drag (${weightShare.toFixed(0)} % of weight times arm)`,
  );
}

import type { Craft } from '../../build/craft.ts';
import { armDownload } from '../../build/infer/armDownload.ts';
import { motorLeadOf, supplyLeadOf } from '../../build/resolve/electrics.ts';
import type { ControllerModel, WireModel } from '../../drive/types.ts';
import { wireResistance } from '../../drive/wire.ts';
import type { Ends } from './drivePoint.ts';
import type { Finish } from './finishes.ts';
import type { PreparedSearch } from './prepare.ts';
import { partOf } from './probe.ts';
import type { SearchContext } from './types.ts';

/** What electronics, cameras and wires leave open, at both ends. */
export interface FinishEnds {
  readonly light: Omit<Ends, 'mass' | 'motorLead' | 'downloadShare'>;
  readonly heavy: Omit<Ends, 'mass' | 'motorLead' | 'downloadShare'>;
}

/** Arms and motor leads, the best and the worst of an aircraft's own. */
export interface ArmEnds {
  readonly light: Pick<Ends, 'motorLead' | 'downloadShare'>;
  readonly heavy: Pick<Ends, 'motorLead' | 'downloadShare'>;
}

/** Ends over some finishes on a frame with a pack; motor and propeller of the probe do not matter. */
export function finishEndsOf(
  { question, electric }: PreparedSearch,
  { shelf }: SearchContext,
  pack: number,
  probe: Craft,
  finishes: readonly Pick<Finish, 'electronics' | 'camera'>[],
): FinishEnds {
  const { space } = question;
  const reaches = reachesOf(probe);
  const boards = [...new Set(finishes.map(({ electronics }) => electronics))];
  const controllers = boards.flatMap((board) => electric.controllers[board] ?? []);
  const wirings = boards.map((board) => pack * space.electronics.length + board);
  const mains = wirings.flatMap((at) => electric.mainWires[at] ?? []);
  const plugs = wirings.map((at) => electric.connectorResistances[at] ?? 0);
  const cameras = Math.max(1, space.cameras.length);
  const powers = finishes.map(
    (each) => electric.avionicsPower[each.electronics * cameras + each.camera] ?? 0,
  );
  const { controllers: _, ...bare } = probe.parts;
  const supplies = boards.flatMap((board) => {
    const controller = space.electronics[board]?.controllers;
    const single = electric.single[board] === true && controller !== undefined;
    const own = single ? { ...bare, controllers: partOf(shelf, controller, 'controller') } : bare;
    return reaches.map((reach) => supplyLeadOf(probe.build, own, reach));
  });
  const end = (pick: PickEnd) => ({
    controller: mergeControllers(controllers, pick),
    mainWire: wireBy(mains, pick),
    connectorResistance: pick(...plugs),
    supplyLead: wireBy(supplies, pick),
    avionicsPower: powers.reduce((a, b) => pick(a, b)),
  });
  return { light: end(Math.min), heavy: end(Math.max) };
}

/** @param leadArea copper section of the motor's leads [m2] */
export function armEndsOf(probe: Craft, leadArea: number): ArmEnds {
  const diameter = probe.rotors[0]?.blade.diameter ?? 0;
  const leads = reachesOf(probe).map((reach) => motorLeadOf(probe.build, leadArea, reach));
  const downloads = probe.motors.map(({ place }) => {
    const arm = probe.frame.arms[place.armIndex];
    return arm === undefined ? 0 : armDownload(arm, diameter);
  });
  const end = (pick: PickEnd) => ({ motorLead: wireBy(leads, pick), downloadShare: pick(...downloads) });
  return { light: end(Math.min), heavy: end(Math.max) };
}

const reachesOf = (craft: Craft): readonly number[] =>
  craft.motors.map(({ place }) => Math.hypot(place.position[0], place.position[1]));

type PickEnd = (...values: readonly number[]) => number;

/** Each property at the least or the most of all. */
function mergeControllers(all: readonly ControllerModel[], pick: PickEnd): ControllerModel {
  const [first] = all;
  if (first === undefined) throw new RangeError('controllers: none');
  const of = (property: (each: ControllerModel) => number) => pick(...all.map(property));
  return {
    ...first,
    resistance: of((each) => each.resistance),
    // Only their product counts.
    switchingTime: of((each) => each.switchingTime * each.pulseFrequency),
    pulseFrequency: 1,
    idleCurrent: of((each) => each.idleCurrent),
  };
}

function wireBy(wires: readonly WireModel[], pick: PickEnd): WireModel {
  const target = pick(...wires.map(wireResistance));
  const found = wires.find((wire) => wireResistance(wire) === target);
  if (found === undefined) throw new RangeError('wires: none');
  return found;
}

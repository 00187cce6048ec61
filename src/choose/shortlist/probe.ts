import type { Craft, CraftRotor } from '../../build/craft.ts';
import { type MotorFacts, motorFacts } from '../../build/infer/motorFacts.ts';
import { sizeOf } from '../../build/infer/sizes.ts';
import { controllerModelOf, packModelOf, wiringOf } from '../../build/resolve/electrics.ts';
import { stackLayers } from '../../build/resolve/placing.ts';
import type { Build } from '../../build/schema/build.ts';
import type { PartOf } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import { candidateOf } from './candidate.ts';
import type { Choice } from './types.ts';

/**
 * A craft on which a rule that looks at two seats only can be asked about two parts, without placing
 * everything anew: the frame's own craft with single fields exchanged. Only the fields that the rules of
 * `pairRules.ts` read are true; nothing else may be asked of it.
 *
 * @param facts of the choice's motor, where they are known already
 */
export function probeOf(
  base: Craft,
  template: Build,
  choice: Choice,
  shelf: Shelf,
  rotor: CraftRotor | undefined,
  facts?: MotorFacts,
): Craft {
  const build = candidateOf(template, choice, shelf);
  const motor = partOf(shelf, choice.motor, 'motor');
  const propeller = partOf(shelf, choice.propeller, 'propeller');
  const pack = partOf(shelf, choice.pack, 'pack');
  const board = partOf(shelf, choice.electronics.flightController, 'flightController');
  const controllers =
    choice.electronics.controllers === undefined
      ? undefined
      : partOf(shelf, choice.electronics.controllers, 'controller');
  const { controllers: _, ...others } = base.parts;
  const cameras = build.cameras.flatMap(({ part }) => {
    const found = shelf.parts.get(part);
    return found?.kind === 'camera' ? [found] : [];
  });
  const plug = build.wiring.connector === undefined ? undefined : shelf.parts.get(build.wiring.connector);
  const parts = {
    ...others,
    motors: base.parts.motors.map(() => motor),
    propellers: base.parts.propellers.map(() => propeller),
    ...(controllers === undefined ? {} : { controllers }),
    flightController: board,
    pack,
    cameras,
    ...(plug?.kind === 'connector' ? { connector: plug } : {}),
    extras: build.extras.flatMap(({ part, count }) => {
      const found = shelf.parts.get(part);
      return found === undefined ? [] : [{ part: found, count }];
    }),
  };
  const { fit, model } = facts ?? motorFacts(motor);
  return {
    ...base,
    build,
    parts,
    motors: base.motors.map((each) => ({
      ...each,
      partId: motor.id,
      fit,
      model,
      rotor: 0,
    })),
    rotors: rotor === undefined ? base.rotors : [rotor],
    controllerModel: controllerModelOf(parts),
    packModel: packModelOf(build, parts),
    stack: stackLayers(parts, base.frame),
    pack: { ...base.pack, size: sizeOf(pack).size },
    wiring: wiringOf(build, parts),
  };
}

export function partOf<
  K extends 'frame' | 'motor' | 'propeller' | 'pack' | 'flightController' | 'controller',
>(shelf: Shelf, id: string, kind: K): PartOf<K> {
  const part = shelf.parts.get(id);
  if (part?.kind !== kind) throw new RangeError(`${kind}: ${id} is not one on the shelf`);
  return part as PartOf<K>;
}

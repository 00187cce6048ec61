import { slideToBalance } from '../../airframe/massProperties.ts';
import type { Craft, CraftRotor } from '../../build/craft.ts';
import { motorFacts } from '../../build/infer/motorFacts.ts';
import type { Reading } from '../../build/read/fileError.ts';
import { slidesWithPack } from '../../build/resolve/placing.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Build } from '../../build/schema/build.ts';
import type { PartOf } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import { followingExtras, plugFor } from './followUps.ts';
import type { Choice } from './types.ts';

/** Beyond this no screw is trusted into a motor [m] (common practice, no source). */
const MOST_THREAD = 3e-3;

/**
 * The template with a choice put in, and what follows from it: motor screws by arm and thread, plug,
 * straps and capacitor by pack, mounts that the new frame's box brings left off; places and lead lengths told
 * for another frame dropped, so that they are taken from the new one. What was measured on the template's
 * aircraft no longer holds. The pack lies at its middle; `resolveCandidate` slides it to balance.
 */
export function candidateOf(template: Build, choice: Choice, shelf: Shelf): Build {
  const sameFrame = choice.frame === template.frame.part;
  const { controllers: _, ...rest } = template;
  const { packLead, motorLead, supplyLead } = template.wiring;
  const plug = plugFor(template, choice.pack, shelf);
  return {
    ...rest,
    frame: sameFrame ? template.frame : { part: choice.frame },
    motors: { part: choice.motor, except: [] },
    propellers: { ...template.propellers, part: choice.propeller, except: [] },
    ...(choice.electronics.controllers === undefined
      ? {}
      : { controllers: { part: choice.electronics.controllers } }),
    flightController: { ...template.flightController, part: choice.electronics.flightController },
    pack: { ...template.pack, part: choice.pack, offset: 0 },
    cameras: camerasOf(template, choice, sameFrame),
    extras: followingExtras(template, choice, shelf),
    wiring: {
      ...(packLead === undefined ? {} : { packLead }),
      ...(sameFrame && motorLead !== undefined ? { motorLead } : {}),
      ...(sameFrame && supplyLead !== undefined ? { supplyLead } : {}),
      ...(plug === undefined ? {} : { connector: plug }),
    },
    screws: screwsFor(template, choice, shelf),
    measured: {},
  };
}

/** A candidate resolved, its pack slid to balance to the millimetre as far as its straps go. */
export function resolveCandidate(
  template: Build,
  choice: Choice,
  shelf: Shelf,
  ready: ReadonlyMap<string, CraftRotor>,
): Reading<Craft> {
  const build = candidateOf(template, choice, shelf);
  const middle = resolveBuild(build, shelf, undefined, ready);
  if (!middle.ok) return middle;
  const { massItems, frame } = middle.value;
  const { slide } = slideToBalance(massItems, slidesWithPack(middle.value), 0, frame.pack.strapRange);
  const offset = Math.round(slide * 1000) / 1000;
  if (offset === 0) return middle;
  return resolveBuild({ ...build, pack: { ...build.pack, offset } }, shelf, undefined, ready);
}

function camerasOf(template: Build, choice: Choice, sameFrame: boolean): Build['cameras'] {
  const flying = template.cameras.findIndex(({ role }) => role === 'flying');
  return template.cameras.map((camera, index) => {
    const part = index === flying && choice.camera !== undefined ? choice.camera : camera.part;
    if (sameFrame) return { ...camera, part };
    const { place: _, ...rest } = camera;
    return { ...rest, part };
  });
}

/** As long as arm and thread allow, in whole millimetres as screws are sold. */
function screwsFor(template: Build, choice: Choice, shelf: Shelf): Build['screws'] {
  if (choice.frame === template.frame.part && choice.motor === template.motors.part) return template.screws;
  const frame = shelf.parts.get(choice.frame);
  const motor = shelf.parts.get(choice.motor);
  if (frame?.kind !== 'frame' || motor?.kind !== 'motor') return {};
  return { motorLength: screwLength(frame, motor, template) };
}

function screwLength(frame: PartOf<'frame'>, motor: PartOf<'motor'>, template: Build): number {
  const own = frame.id === template.frame.part ? template.frame.armThickness : undefined;
  const thickness = own ?? frame.arms.thickness.value;
  const depth = Math.min(motorFacts(motor).fit.threadDepth, MOST_THREAD);
  return Math.max(2, Math.floor((thickness + depth) * 1000 + 1e-6)) / 1000;
}

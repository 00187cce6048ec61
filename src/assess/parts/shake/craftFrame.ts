import type { FrameQuestion, PlacedArm } from '../../../airframe/askFrame.ts';
import { type FrameLoads, frameQuestion } from '../../../airframe/frameQuestion.ts';
import { itemMass } from '../../../airframe/massProperties.ts';
import type { FrameGeometry, MassItem } from '../../../airframe/types.ts';
import type { Craft } from '../../../build/craft.ts';

/** Modes asked of the beam model. */
const MODES = 12;

/**
 * The beam model's question for a whole craft: motors, propellers and guards on the arms' ends, all else
 * on the hub. Single controllers part way along the arms count with the hub: they sit where an arm's first
 * modes hardly move. Arms weigh what the frame on the scale makes of them.
 */
export function craftFrame(craft: Craft): FrameQuestion {
  const { frame, massItems } = craft;
  const arms = new Map(frame.arms.map((arm) => [arm.name, arm]));
  const ownerOf = new Map<string, string>(
    frame.arms.flatMap(({ name, motors }) =>
      motors.flatMap((motor) =>
        ['motor', 'propeller', 'guard'].map((what) => [`${motor} ${what}`, name] as const),
      ),
    ),
  );
  const tips: Record<string, MassItem[]> = {};
  const hub: MassItem[] = [];
  let armScale = 1;
  for (const item of massItems) {
    const rides = TIP_PARTS.has(item.part) || item.part.startsWith('extras[');
    const owner = rides ? ownerOf.get(item.name) : undefined;
    if (owner !== undefined) {
      tips[owner] = [...(tips[owner] ?? []), item];
    } else if (item.part === 'frame' && arms.has(item.name)) {
      const solid = itemMass({ ...item, amount: { density: frame.material.density } });
      armScale = itemMass(item) / solid;
    } else {
      hub.push(item);
    }
  }
  const weighed: FrameGeometry = {
    ...frame,
    material: { ...frame.material, density: frame.material.density * armScale },
  };
  const loads: FrameLoads = { tips, hub };
  return frameQuestion(weighed, loads, MODES);
}

const TIP_PARTS = new Set(['motors', 'propellers', 'frame']);

/** A frame's arms made otherwise than drawn; what is absent stays. */
export interface ArmChange {
  readonly modulusScale?: number;
  readonly shearScale?: number;
  readonly thicknessScale?: number;
  /** Added to the width everywhere [m]. */
  readonly wider?: number;
  /** Taken off the length [m]; the root stays. */
  readonly shorter?: number;
  readonly tipMassScale?: number;
  /** Added to every tip body, at its own centre [kg]; negative for a lighter propeller. */
  readonly tipMass?: number;
  /** Added to the root's give out of plane, in the plane and in torsion, as length [m]. */
  readonly looser?: number;
  /** Added to the root's give out of plane, as a share of the arm's length. */
  readonly plateGive?: number;
}

/** The question with every arm changed alike. The hub's mass stays as it is. */
export function withArms(question: FrameQuestion, change: ArmChange): FrameQuestion {
  return { ...question, arms: question.arms.map((placed) => changedArm(placed, change)) };
}

function changedArm(placed: PlacedArm, change: ArmChange): PlacedArm {
  const { arm } = placed;
  const { modulusScale = 1, shearScale = 1, thicknessScale = 1, wider = 0, shorter = 0 } = change;
  const { tipMassScale = 1, tipMass = 0, looser = 0, plateGive = 0 } = change;
  const { moduli, grip, tipBody } = arm;
  const tipScale = tipBody === undefined ? 1 : tipMassScale * Math.max(0.05, 1 + tipMass / tipBody.mass);
  const [x = 0, y = 0, z = 0] = tipBody?.inertia ?? [];
  return {
    ...placed,
    arm: {
      ...arm,
      length: Math.max(0.3 * arm.length, arm.length - shorter),
      outline: arm.outline.map(({ at, width }) => ({ at, width: width + wider })),
      thickness: arm.thickness * thicknessScale,
      moduli: {
        ...moduli,
        E1: moduli.E1 * modulusScale,
        E2: moduli.E2 * modulusScale,
        G12: moduli.G12 * shearScale,
        G13: moduli.G13 * shearScale,
        G23: moduli.G23 * shearScale,
      },
      grip: {
        ...grip,
        extraOutOfPlane: (grip.extraOutOfPlane ?? 0) + looser + plateGive * arm.length,
        extraInPlane: (grip.extraInPlane ?? 0) + looser,
        extraTorsion: (grip.extraTorsion ?? 0) + looser,
      },
      ...(tipBody === undefined
        ? {}
        : {
            tipBody: {
              ...tipBody,
              mass: tipBody.mass * tipScale,
              inertia: [x * tipScale, y * tipScale, z * tipScale] as const,
            },
          }),
    },
  };
}

/** Mass of all arms from root to motor axis [kg]. */
export function armsMass(question: FrameQuestion): number {
  return question.arms.reduce((sum, { arm }) => {
    let area = 0;
    for (const [i, station] of arm.outline.entries()) {
      const before = arm.outline[i - 1];
      if (before) area += ((station.at - before.at) * (station.width + before.width)) / 2;
    }
    return sum + area * arm.length * arm.thickness * arm.density;
  }, 0);
}

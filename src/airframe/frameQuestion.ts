import { multiply3, rotation3, transpose3 } from '../numerics/vector3.ts';
import type { TipBody } from './armBeam.ts';
import { armDirection, armHalfWidth, armLength } from './armOutline.ts';
import type { ArmQuestion, Grip } from './askArm.ts';
import type { FrameQuestion } from './askFrame.ts';
import { massProperties } from './massProperties.ts';
import type { ArmGeometry, FrameGeometry, MassItem } from './types.ts';

/** What sits on a frame, by where it moves with the structure. */
export interface FrameLoads {
  /** Motors, props and guards by the arm's name; an arm without any has a free tip. */
  readonly tips: Readonly<Record<string, readonly MassItem[]>>;
  /** All else that rides on the middle: plates, standoffs, stack, pack, cameras. */
  readonly hub: readonly MassItem[];
}

/**
 * The beam model's question for a frame as drawn and weighed. Its middle is taken as rigid (two plates
 * with standoffs, or one stiffened by the stack and the top plate): separate arms and pairs are gripped
 * between plates, one-piece arms run out of theirs. A bare single plate: ask with `one plate` by hand.
 *
 * @param modes how many frequencies
 */
export function frameQuestion(frame: FrameGeometry, loads: FrameLoads, modes = 10): FrameQuestion {
  const grip: Grip = { kind: frame.construction === 'one-piece plate' ? 'one piece' : 'between plates' };
  const hub = massProperties(loads.hub);
  return {
    arms: frame.arms.map((arm) => ({
      name: arm.name,
      root: arm.root,
      yaw: armDirection(arm),
      arm: armQuestion(arm, frame, grip, loads.tips[arm.name] ?? []),
    })),
    hub: { kind: 'rigid', body: hub },
    modes,
  };
}

/** One arm of a frame as a question of its own, with what stands on its tip. */
export function armQuestion(
  arm: ArmGeometry,
  frame: FrameGeometry,
  grip: Grip,
  tipItems: readonly MassItem[],
): ArmQuestion {
  const { elastic, density } = frame.material;
  const body = tipBody(arm, tipItems);
  return {
    length: armLength(arm),
    outline: beamOutline(arm),
    thickness: arm.thickness,
    moduli: elastic,
    density,
    grip,
    ...(body === undefined ? {} : { tipBody: body }),
  };
}

/** Stations of the outline with its pad's bulge before the motor's axis. */
function beamOutline(arm: ArmGeometry): ArmQuestion['outline'] {
  const length = armLength(arm);
  const places = new Set([0, 1, ...arm.outline.map(({ at }) => at)]);
  const pad = Math.min(1, arm.padDiameter / 2 / length);
  for (const share of [1, 0.9, 0.6, 0.3]) if (pad > 0) places.add(1 - share * pad);
  return [...places].sort((a, b) => a - b).map((at) => ({ at, width: 2 * armHalfWidth(arm, at * length) }));
}

/** The items on a tip as one rigid body in the arm's axes; its reach off the axis is not kept. */
function tipBody(arm: ArmGeometry, items: readonly MassItem[]): TipBody | undefined {
  if (items.length === 0) return undefined;
  const { mass, centreOfGravity, inertia } = massProperties(items);
  const turn = rotation3(-armDirection(arm), 0, 0);
  const own = multiply3(multiply3(turn, inertia), transpose3(turn));
  return { mass, height: arm.tip[2] - centreOfGravity[2], inertia: [own[0][0], own[1][1], own[2][2]] };
}

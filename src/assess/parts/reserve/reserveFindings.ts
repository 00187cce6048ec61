import type { Impaired } from '../../../flight/reserve/motorOut.ts';
import type { FlightModel } from '../../../flight/types.ts';
import { wholePercent } from '../../../units/wholePercent.ts';
import type { Finding } from '../../types.ts';
import type { Numbers } from '../banded.ts';
import { controlLeft, usefullyHeld } from './reserveFigures.ts';

const SOURCE = 'attainable moments, docs/method/reserve.md';
/** Under this share of the moments in hover the last minute feels like another craft (common practice, no source). */
const LAST_MINUTE = 0.7;
/** Above this share pilots feel the coupling (common practice, no source). */
const COUPLING = 0.5;

/** What the reserve says beyond its numbers. */
export function reserveFindings(
  figures: Numbers,
  out: readonly Impaired[],
  model: FlightModel,
): readonly Finding[] {
  return [...afterMotorOut(out), ...lastMinute(figures), ...coupling(figures, model)];
}

function afterMotorOut(out: readonly Impaired[]): readonly Finding[] {
  const count = (held: Impaired['held']) => out.filter((one) => usefullyHeld(one) === held).length;
  const [full, turning, nothing] = [
    count('full hover control'),
    count('hover without yaw'),
    count('nothing'),
  ];
  const worst = out.reduce((least, one) => Math.min(least, controlLeft(one)), 1);
  const many = out.length;
  const base = {
    id: 'motor-out',
    sheet: 'flight',
    severity: 'note',
    number: { value: worst, limit: 1, quantity: 'share' },
    source: SOURCE,
    parts: ['motors', 'frame'],
  } as const;
  const controller = many > 4 ? ' Common flight controllers do not share the load anew, so expect less.' : '';
  if (nothing === many) {
    return [
      {
        ...base,
        says: `With any one of its ${many} motors out nothing can be held: it falls.`,
        remedy: 'Fly where it may fall. More motors help only where the attainable moments say so.',
      },
    ];
  }
  if (full === many) {
    return [
      {
        ...base,
        says: `With any one of its ${many} motors out it can still hover and be steered, with ${wholePercent(worst)} of its weakest moment left.${controller}`,
        remedy: 'Try it low over grass before trusting it.',
      },
    ];
  }
  const parts = [
    full > 0 ? `${full} leave full control` : '',
    turning > 0 ? `${turning} leave a hover that turns as it will` : '',
    nothing > 0 ? `${nothing} leave nothing` : '',
  ].filter((text) => text !== '');
  return [
    {
      ...base,
      says: `Of its ${many} motors, when one is out: ${parts.join(', ')}.${controller}`,
      remedy: 'Count no safety on the number of motors.',
    },
  ];
}

function lastMinute(figures: Numbers): readonly Finding[] {
  const axes = ['roll', 'pitch', 'yaw'] as const;
  const shares = axes.map((axis) => {
    const [now, last] = [figures[`${axis}-moment`], figures[`last-${axis}-moment`]];
    return now !== undefined && last !== undefined && now > 0 ? last / now : 1;
  });
  const least = Math.min(...shares);
  if (!(least < LAST_MINUTE)) return [];
  const axis = axes[shares.indexOf(least)] ?? 'roll';
  return [
    {
      id: 'last-minute-control',
      sheet: 'flight',
      severity: least < 0.3 ? 'risk' : 'note',
      says: `At the landing reserve ${wholePercent(least)} of the ${axis} moment is left that it has at half charge.`,
      number: { value: least, limit: LAST_MINUTE, quantity: 'share' },
      remedy: 'Land earlier, or take a pack of lower resistance or more cells.',
      source: SOURCE,
      parts: ['pack', 'motors'],
    },
  ];
}

function coupling(figures: Numbers, model: FlightModel): readonly Finding[] {
  const share = figures['gyroscopic-share'];
  if (share === undefined || share < COUPLING) return [];
  return [
    {
      id: 'gyroscopic-coupling',
      sheet: 'flight',
      severity: 'note',
      says: `A quick roll under full yaw pitches it with ${wholePercent(share)} of the pitch moment in reserve: ${model.stations.length} heavy propellers turn fast for its size.`,
      number: { value: share, limit: COUPLING, quantity: 'share' },
      remedy: 'Lighter propellers, or expect rolls to wander when yaw is held.',
      source: SOURCE,
      parts: ['propellers', 'motors'],
    },
  ];
}

/** When the reserve itself has no answer. */
export function noReserve(reason: string): Finding {
  return {
    id: 'no-control-reserve',
    sheet: 'flight',
    severity: 'risk',
    says: `In hover there is no control left over: ${reason}.`,
    remedy: 'Less mass, a centred pack, or thrust to spare.',
    source: SOURCE,
    parts: ['motors', 'propellers', 'pack'],
  };
}

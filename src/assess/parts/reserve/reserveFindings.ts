import type { HotMotor } from '../../../flight/reserve/motorHot.ts';
import type { Impaired } from '../../../flight/reserve/motorOut.ts';
import { degreesHeld, type Held } from '../../../flight/reserve/types.ts';
import type { FlightModel } from '../../../flight/types.ts';
import { wholePercent } from '../../../units/wholePercent.ts';
import type { Finding } from '../../types.ts';
import type { Numbers } from '../banded.ts';
import { controlLeft } from './reserveFigures.ts';

const SOURCE = 'attainable moments, docs/method/reserve.md';
/** Under this share of the moments in hover the last minute feels like another craft (common practice, no source). */
const LAST_MINUTE = 0.7;
/** Under this share of its moments one hot motor is felt (common practice, no source). */
const HOT_LEAVES = 0.5;
/** Above this share pilots feel the coupling (common practice, no source). */
const COUPLING = 0.5;

/** What the reserve says beyond its numbers. */
export function reserveFindings(
  figures: Numbers,
  out: readonly Impaired[],
  hot: readonly HotMotor[],
  model: FlightModel,
): readonly Finding[] {
  return [...afterMotorOut(out), ...withMotorHot(hot), ...lastMinute(figures), ...coupling(figures, model)];
}

/** How each degree is told of some motors: `4 leave ...`. */
const LEAVE: Readonly<Record<Held, string>> = {
  'full hover control': 'full control',
  'hover without yaw': 'a hover with yaw let go',
  'on the edge': 'a balance without margin',
  'only spinning fast': 'nothing but a fast spin',
  nothing: 'nothing',
};

const UNSHARED = 'Common flight controllers do not share the load anew, so expect less.';

function afterMotorOut(out: readonly Impaired[]): readonly Finding[] {
  const worst = out.reduce((least, one) => Math.min(least, controlLeft(one)), 1);
  const many = out.length;
  const all = (held: Held): boolean => out.every((one) => one.held === held);
  const told = (says: string, remedy: string): readonly Finding[] => [
    {
      id: 'motor-out',
      sheet: 'flight',
      severity: 'note',
      says,
      number: { value: worst, limit: 1, quantity: 'share' },
      remedy,
      source: SOURCE,
      parts: ['motors', 'frame'],
    },
  ];
  const any = `With any one of its ${many} motors out`;
  if (all('nothing')) {
    return told(
      `${any} nothing can be held: it falls.`,
      'Fly where it may fall. More motors help only where the attainable moments say so.',
    );
  }
  if (all('only spinning fast')) {
    return told(
      `${any} nothing can be held standing: it spins up and falls. Only a flight controller made for it could keep it up, ${turns(out)}.`,
      'Fly where it may fall. More motors help only where the attainable moments say so.',
    );
  }
  if (all('full hover control')) {
    return told(
      `${any} it can still hover and be steered, with ${wholePercent(worst)} of its weakest moment left. ${UNSHARED}`,
      'Count no safety on the number of motors.',
    );
  }
  const parts = degreesHeld.flatMap((held) => {
    const those = out.filter((one) => one.held === held);
    const rate = held === 'only spinning fast' ? ` (${turns(those)})` : '';
    return those.length > 0 ? [`${those.length} leave ${LEAVE[held]}${rate}`] : [];
  });
  return told(
    `Of its ${many} motors, when one is out: ${parts.join(', ')}. ${UNSHARED}`,
    'Count no safety on the number of motors.',
  );
}

function turns(out: readonly Impaired[]): string {
  const rates = out.flatMap(({ turning }) => turning ?? []);
  if (rates.length === 0) return 'at a rate that is not known';
  return `turning about ${Number((Math.max(...rates) / (2 * Math.PI)).toPrecision(2))} times a second`;
}

function withMotorHot(hot: readonly HotMotor[]): readonly Finding[] {
  const [first] = hot;
  if (first === undefined) return [];
  const worst = hot.reduce((least, one) => (controlLeft(one) < controlLeft(least) ? one : least), first);
  const left = controlLeft(worst);
  if (!(left < HOT_LEAVES)) return [];
  return [
    {
      id: 'motor-hot',
      sheet: 'flight',
      severity: left > 0 ? 'note' : 'risk',
      says: `Held to what it bears for good, ${wholePercent(worst.bearsShare)} of its full thrust, the ${worst.motor} motor leaves ${left > 0 ? `${wholePercent(left)} of the weakest moment` : 'no hover that can be steered'}.`,
      number: { value: left, limit: HOT_LEAVES, quantity: 'share' },
      remedy:
        'Land when one motor is hotter than the rest. A larger motor, less pitch or less mass bears more.',
      source: SOURCE,
      parts: ['motors', 'propellers'],
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

import type { Brief } from '../../../build/schema/brief.ts';
import type { Leg } from '../../../flight/mission/types.ts';
import type { Style } from '../../../flight/types.ts';
import { withUnit } from '../../../units/formatQuantity.ts';
import { usualDistance } from '../../windows.ts';

/** A leg with the words a person knows it by. */
export interface NamedLeg {
  readonly what: string;
  readonly leg: Leg;
}

/** Airspeeds of the way out and home, and the wind they meet [m/s]. */
export interface MissionSpeeds {
  readonly out: number;
  readonly home: number;
  readonly wind: number;
}

/**
 * The flight that a purpose usually is: up, out against the wind, two minutes of what it is for, home, a slow landing.
 * Common practice, no source.
 *
 * @param styleScale stretches what the style pulls above the weight
 * @param lengthScale stretches how far and how long it is flown; climbing and landing are what they are
 */
export function usualLegs(
  brief: Brief,
  style: Style,
  speeds: MissionSpeeds,
  styleScale: number,
  lengthScale = 1,
): readonly NamedLeg[] {
  const distance = (brief.farthest ?? usualDistance(brief.purpose)) * lengthScale;
  const low = brief.purpose === 'micro' || brief.purpose === 'guarded filming';
  const climb: Leg = low ? { kind: 'climb', height: 10, speed: 2 } : { kind: 'climb', height: 30, speed: 4 };
  return [
    { what: 'armed on the ground', leg: { kind: 'idle', duration: 10 } },
    { what: `climb to ${withUnit(climb.height, 'm')}`, leg: climb },
    {
      what: 'out against the wind',
      leg: { kind: 'cruise', airspeed: speeds.out, distance, headwind: speeds.wind },
    },
    ...purposeLegs(brief, style, styleScale, lengthScale),
    {
      what: 'home with the wind',
      leg: { kind: 'cruise', airspeed: speeds.home, distance, headwind: -speeds.wind },
    },
    { what: 'landing', leg: { kind: 'hover', duration: 20 } },
  ];
}

function purposeLegs(
  brief: Brief,
  style: Style,
  styleScale: number,
  lengthScale: number,
): readonly NamedLeg[] {
  if (brief.purpose === 'cruising') {
    return [{ what: 'a look round', leg: { kind: 'hover', duration: 30 * lengthScale } }];
  }
  return styleLegs(style, 120 * lengthScale, 2, styleScale);
}

/**
 * A style as legs: its histogram gone through several times, hardest pulls in the middle of each round.
 *
 * @param duration of all rounds together [s]
 */
export function styleLegs(
  style: Style,
  duration: number,
  rounds: number,
  styleScale: number,
): readonly NamedLeg[] {
  const round = style.bins.map(({ share, ...bin }): NamedLeg => {
    const time = (share * duration) / rounds;
    if ('throttle' in bin && bin.throttle >= 1) {
      return { what: `${style.name}, full throttle`, leg: { kind: 'full throttle', duration: time } };
    }
    const pull = 'thrustToWeight' in bin ? bin.thrustToWeight : 1;
    const stretched = pull > 1 ? 1 + (pull - 1) * styleScale : pull;
    return {
      what: `${style.name}, ${pull === 1 ? 'carrying its weight' : `${pull} times its weight`}`,
      leg: { kind: 'pull', thrustToWeight: stretched, duration: time },
    };
  });
  return Array.from({ length: rounds }, () => round).flat();
}

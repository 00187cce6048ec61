import type { HitAnswer } from '../../airframe/hits.ts';
import type { ModeShape } from '../../airframe/types.ts';
import type { ChangeKind } from '../../view/clearing.ts';
import type { Picture } from '../../view/types.ts';
import type { CoverGroup } from '../occluders.ts';

/** What one camera sees of its own aircraft. */
export interface PictureReport {
  /** Index into `Craft.cameras`. */
  readonly camera: number;
  readonly role: 'flying' | 'recording';
  /** Light lost to the aircraft over that of the whole picture, 0 to 1. */
  readonly covered: number;
  /** Share of the picture that the propellers' discs touch at all, 0 to 1. */
  readonly discsTouch: number;
  /** Light lost to each kind of thing by itself, 0 to 1. */
  readonly byGroup: Readonly<Record<CoverGroup, number>>;
  /** To draw, hovering level. */
  readonly picture: Picture;
  /** Smallest single changes that clear the propellers; absent while they are clear. */
  readonly clearing?: readonly PictureChange[];
  /** What propellers a size smaller leave, as a share of the picture. */
  readonly oneSizeDown?: { readonly touched: number; readonly clears: boolean };
}

export interface PictureChange {
  readonly change: ChangeKind;
  /** [m] or [rad]; absent when no change of this kind within reach clears it. */
  readonly amount?: number;
  /** Why there is none. */
  readonly reason?: string;
  /** What would clear it, beyond the reach of what holds the camera [m] or [rad]. */
  readonly beyondReach?: number;
  /** False where going further brings something back. */
  readonly staysClear?: boolean;
}

/** A mode of the whole frame. */
export interface ModeReport {
  /** [Hz], with 10th and 90th percentile. */
  readonly frequency: number;
  readonly band: readonly [low: number, high: number];
  readonly shape: ModeShape;
  /** How much more the flight controller shakes at it than it would without the mode; near 1 it is not felt. */
  readonly felt: number;
  /** How it moves, mass-normalised: six motions of the hub at the origin, six of each arm's tip in the arm's axes. */
  readonly motion: {
    readonly hub: readonly number[];
    readonly tips: readonly { readonly arm: string; readonly motion: readonly number[] }[];
  };
  /** Largest swing of a motor when fresh propellers turn as fast as it rings [m]; absent where they never do. */
  readonly swing?: number;
}

/** Where a multiple of the rotor speed meets a mode. */
export interface CrossingReport {
  /** Index into `modes`. */
  readonly mode: number;
  readonly order: number;
  readonly what: OrderKind;
  /** [rad/s] */
  readonly angularSpeed: number;
  /** Throttle there, 0 to 1. */
  readonly throttle: number;
  /** Throttle to keep out of, 0 to 1. */
  readonly avoid: readonly [low: number, high: number];
}

export type OrderKind = 'imbalance' | 'blade passing' | 'motor ripple';

/** Shake at one throttle. */
export interface ShakePoint {
  readonly throttle: number;
  /** [rad/s] */
  readonly angularSpeed: number;
  /** Amplitude at the flight controller's place [m/s2] and [rad/s]. */
  readonly acceleration: number;
  readonly turnRate: number;
  /** At the gyro, through its mount. */
  readonly gyroAcceleration: number;
  readonly gyroTurnRate: number;
  /** With one blade nicked, at the gyro [rad/s]. */
  readonly nickedTurnRate: number;
}

export interface CameraShake {
  readonly camera: number;
  readonly role: 'flying' | 'recording';
  /** In hover, at the picture's centre [pixels] of a picture 720 high. */
  readonly blur: number;
  /** Rows of one picture apart, peak to peak [pixels]. */
  readonly wobble: number;
  /** The same with one blade nicked. */
  readonly nickedBlur: number;
  readonly nickedWobble: number;
  /** Waves from top to bottom of one picture; below about one half a lean, not jello. */
  readonly waves: number;
}

/** A change of the frame or the propeller and what it moves. */
export interface StiffeningChange {
  readonly what: string;
  /** Lowest mode that bends arms up and down, and sideways, after it [Hz]. */
  readonly upright: number;
  readonly sideways: number;
  /** Added to the craft [kg]. */
  readonly mass: number;
  /** Added to the price in the brief's currency; absent where no price is to be had. */
  readonly price?: number;
}

export interface ShakeReport {
  readonly modes: readonly ModeReport[];
  /** Multiples of the rotor's speed that shake, for the Campbell figure. */
  readonly orders: readonly { readonly order: number; readonly what: OrderKind }[];
  /** Rotor speed over throttle from idle to full, half charge; empty when it has no hover. */
  readonly throttles: readonly { readonly throttle: number; readonly angularSpeed: number }[];
  readonly crossings: readonly CrossingReport[];
  readonly response: readonly ShakePoint[];
  readonly cameras: readonly CameraShake[];
  readonly changes: readonly StiffeningChange[];
  /** The first modes as they are, to hold the changes against [Hz]. */
  readonly now: { readonly upright: number; readonly sideways: number };
}

export type HitWay = 'flat' | 'end-on' | 'side-on' | 'from ahead' | 'prop strike';

/** One arm struck one way. */
export interface HitReport {
  readonly arm: string;
  readonly way: HitWay;
  /** Name of the surface. */
  readonly surface: string;
  /** [m/s] */
  readonly speed: number;
  /** On the arm [N]. */
  readonly peakForce: number;
  /** Median strength over stress; below 1 it breaks. */
  readonly reserve: number;
  readonly weakest: HitAnswer['weakest'];
  /** From the root [m]. */
  readonly place: number;
  /** 0 to 1. */
  readonly chance: number;
  /** Half break at this speed [m/s]; absent for a propeller strike, whose load no speed raises. */
  readonly breakingSpeed?: number;
  /** Standard deviation of the logarithm of that speed. */
  readonly logDeviation: number;
  /** Along the arm from its root, where it is worked out: place [m] and stresses [Pa]. */
  readonly stress: HitAnswer['stress'];
}

export interface HitsReport {
  readonly hits: readonly HitReport[];
  /** A propeller stopped by its own blade; absent without motors. */
  readonly stopping?:
    | {
        /** Before it [rad/s]. */
        readonly angularSpeed: number;
        /** What a blade bears where it is struck [N], and the torque of that [N m]. */
        readonly bladeForce: number;
        readonly torque: number;
        /** Sideways on the arm until it stands [N s], and how long that takes at the blade's force [s]. */
        readonly impulse: number;
        readonly time: number;
        /** On the worst screw of the motor's base [N]. */
        readonly screwPull: number;
        readonly screwShear: number;
      }
    | undefined;
  /** What meets the ground first in a level drop, and how far the next is behind it [m]. */
  readonly landsFirst: {
    readonly what: 'pack' | 'arms' | 'plate' | 'guards' | 'camera';
    readonly lead: number;
  };
  /** What reaches furthest forward, propellers left out. */
  readonly leadsNose: {
    readonly what: 'motors' | 'flying camera' | 'recording camera' | 'pack' | 'plate' | 'guards';
    readonly lead: number;
  };
}

/** Money and breakage over the brief's flights. */
export interface KnocksReport {
  readonly flights: number;
  readonly histories: number;
  readonly seed: number;
  /** Spent by the end of each flight, in the brief's currency. */
  readonly curve: {
    readonly mean: readonly number[];
    readonly p10: readonly number[];
    readonly p90: readonly number[];
  };
  readonly parts: readonly {
    readonly id: string;
    /** Price of one. */
    readonly price: number;
    readonly broken: number;
    readonly p90: number;
    /** Mean money it takes. */
    readonly money: number;
  }[];
  /** The same crashes with the arms cut the other way, at a like strength. */
  readonly otherCut: {
    readonly construction: 'separate arms' | 'one-piece plate';
    readonly price: number;
    readonly priceInferred: boolean;
    /** Mean cost of repairs as it is, and cut that way: their difference over the same histories laid on it. */
    readonly money: number;
    readonly moneyAsIs: number;
    readonly benchTime: number;
  };
  readonly benchTime: number;
  /** Parts that had no price and count as free, in words. */
  readonly unpriced: readonly string[];
}

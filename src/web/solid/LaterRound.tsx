import { type ComponentProps, lazy } from 'react';
import { Later } from '../parts/Later.tsx';
import type * as Rounds from './rounds.ts';

/** Everything in the round comes in a file of its own, when a sheet first shows it. */
const rounds = () => import('./rounds.ts');
const Airframe = lazy(async () => ({ default: (await rounds()).AirframeRound }));
const Hit = lazy(async () => ({ default: (await rounds()).HitRound }));
const Mode = lazy(async () => ({ default: (await rounds()).ModeRound }));

const WAITING = <p className="waiting">Being put together.</p>;

export const AirframeRound = (props: ComponentProps<typeof Rounds.AirframeRound>) => (
  <Later waiting={WAITING}>
    <Airframe {...props} />
  </Later>
);

export const HitRound = (props: ComponentProps<typeof Rounds.HitRound>) => (
  <Later waiting={WAITING}>
    <Hit {...props} />
  </Later>
);

export const ModeRound = (props: ComponentProps<typeof Rounds.ModeRound>) => (
  <Later waiting={WAITING}>
    <Mode {...props} />
  </Later>
);

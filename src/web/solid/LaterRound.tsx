import { type ComponentProps, lazy, Suspense } from 'react';
import type * as Rounds from './rounds.ts';

/** Everything in the round comes in a file of its own, when a sheet first shows it. */
const rounds = () => import('./rounds.ts');
const Airframe = lazy(async () => ({ default: (await rounds()).AirframeRound }));
const Hit = lazy(async () => ({ default: (await rounds()).HitRound }));
const Mode = lazy(async () => ({ default: (await rounds()).ModeRound }));

const WAITING = <p className="waiting">Being put together.</p>;

export const AirframeRound = (props: ComponentProps<typeof Rounds.AirframeRound>) => (
  <Suspense fallback={WAITING}>
    <Airframe {...props} />
  </Suspense>
);

export const HitRound = (props: ComponentProps<typeof Rounds.HitRound>) => (
  <Suspense fallback={WAITING}>
    <Hit {...props} />
  </Suspense>
);

export const ModeRound = (props: ComponentProps<typeof Rounds.ModeRound>) => (
  <Suspense fallback={WAITING}>
    <Mode {...props} />
  </Suspense>
);

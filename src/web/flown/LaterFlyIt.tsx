import { lazy } from 'react';
import { Later } from '../parts/Later.tsx';
import type { FlyItProps } from './FlyIt.tsx';

const Flight = lazy(() => import('./FlyIt.tsx'));

/** Comes in a file of its own when a sheet first shows it. */
export const FlyIt = (props: FlyItProps) => (
  <Later waiting={null}>
    <Flight {...props} />
  </Later>
);

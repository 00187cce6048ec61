import { lazy } from 'react';
import { Later } from '../parts/Later.tsx';
import type { CrashLogProps } from './CrashLog.tsx';

const Log = lazy(() => import('./CrashLog.tsx'));

/** Comes in a file of its own when a sheet first shows it. */
export const CrashLog = (props: CrashLogProps) => (
  <Later waiting={null}>
    <Log {...props} />
  </Later>
);

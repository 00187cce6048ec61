import type { Unknown } from '../build/craft.ts';

/** No listing tells what a controller's logic and switching take; of little weight beside all else but at small throttle. */
export const CONTROLLER_IDLE: Unknown = {
  lever: 'controllerIdleScale',
  label: 'logic and switching of the controllers',
  deviation: 0.5,
  trust: 'inferred',
  source: 'common practice, no source',
};

/** The duty at no throttle is set on every craft anew, some 3 to 6 %. */
export const IDLE_DUTY: Unknown = {
  lever: 'idleDutyScale',
  label: 'idle duty that is set',
  deviation: 0.25,
  trust: 'inferred',
  source: 'common practice, no source',
};

import type { StyleFlight } from '../flight/styleFlight.ts';
import { wholePercent } from '../units/wholePercent.ts';

const EASED =
  'A burst that would pull the cells below their cut-off voltage is eased to what keeps them there; the pack stays at the temperature of the air, which errs to the short side: the legs of a mission warm it.';

/** What `how` says of minutes flown about bursts, and from which charge on this style's are eased, if any. */
export const easingOf = (flown: Pick<StyleFlight, 'easedFrom'> | undefined): string =>
  flown?.easedFrom === undefined
    ? EASED
    : `${EASED} Here bursts are eased from ${wholePercent(flown.easedFrom)} of the charge on.`;

import { type Air, airOfDay } from '../air/standardAtmosphere.ts';
import type { Brief } from '../build/schema/brief.ts';

/** The air of the brief's site on its day. */
export function airOf(brief: Brief): Air {
  return airOfDay(brief.site.height, brief.site.temperature, brief.site.humidity);
}

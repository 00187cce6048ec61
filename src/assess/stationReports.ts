import type { Craft } from '../build/craft.ts';
import { borne } from '../flight/heat.ts';
import type { HoverStory } from '../flight/hoverStory.ts';
import type { StationReport } from './assessment.ts';

/** Every motor as the drawing shows it. Without a story only its place. */
export function stationReports(craft: Craft, story: HoverStory | undefined): readonly StationReport[] {
  return craft.motors.map((motor, index): StationReport => {
    const base = { name: motor.place.name, place: motor.discPlace, spin: motor.place.spin };
    const hover = story?.hover.stations[index];
    const full = story?.punch.stations[index];
    if (story === undefined || hover === undefined || full === undefined) return base;
    const settled = borne(story.hoverHeat[index]);
    const limit = story.punchHeat[index]?.timeToLimit;
    return {
      ...base,
      hover: {
        thrust: hover.netThrust,
        angularSpeed: hover.angularSpeed,
        motorCurrent: hover.motorCurrent,
        throttle: hover.throttle,
        ...(settled === undefined
          ? {}
          : { windingTemperature: settled.winding, caseTemperature: settled.case }),
      },
      fullThrottle: {
        thrust: full.netThrust,
        angularSpeed: full.angularSpeed,
        motorCurrent: full.motorCurrent,
        ...(limit === undefined || !Number.isFinite(limit) ? {} : { timeToLimit: limit }),
      },
    };
  });
}

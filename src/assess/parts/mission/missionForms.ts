import { WINDING_BEARS } from '../../../drive/insulation.ts';
import type { MissionFlown } from '../../../flight/mission/types.ts';
import type { MeasureForm } from '../banded.ts';

export const MISSION_SOURCE = 'legs: common practice, no source; docs/method/flight.md';

const EASED =
  'A burst that would pull the cells below their cut-off voltage is eased to the throttle that keeps them there.';

/**
 * How the figures of `missionAnswers` are told.
 *
 * @param name of the flight, as a sentence begins: `a usual flight`
 * @param legs how it is made up, in a sentence
 */
export function missionForms(
  name: string,
  legs: string,
  { legs: flown }: MissionFlown,
): readonly MeasureForm[] {
  const base = { sheet: 'flight', source: MISSION_SOURCE } as const;
  const eased = flown.some((leg) => leg.eased !== undefined) ? ' Here bursts are.' : '';
  return [
    {
      ...base,
      id: 'mission-time',
      label: `${name} takes`,
      quantity: 'time',
      better: 'neither',
      how: `${legs} Each leg by its distance or its clock.`,
    },
    {
      ...base,
      id: 'mission-charge-left',
      label: 'and lands with',
      quantity: 'share',
      better: 'more',
      how: `Current of every leg integrated on a pack that keeps its charge, its polarisation and its warmth. ${EASED}${eased}`,
    },
    {
      ...base,
      id: 'mission-ends-after',
      label: `${name} ends in the air after`,
      quantity: 'time',
      better: 'more',
      how: `${legs} Flown until a steady leg, or a hover in place of a burst, pulls the cells below their cut-off voltage, or the pack is empty. ${EASED}${eased}`,
    },
    {
      ...base,
      id: 'mission-charge-stranded',
      label: 'with charge it cannot use',
      quantity: 'share',
      better: 'less',
      how: 'Charge left where it ends in the air: no reserve, since the cells are at their cut-off voltage. No turn-back point, energy or lowest voltage is told of such a flight.',
    },
    {
      ...base,
      id: 'mission-energy',
      label: 'energy it takes',
      quantity: 'energy',
      better: 'less',
      how: 'Open-circuit voltage over the charge drawn, resistance losses included.',
    },
    {
      ...base,
      id: 'mission-cell-voltage',
      label: 'lowest cell voltage on the way',
      quantity: 'voltage',
      better: eased === '' ? 'more' : 'neither',
      how:
        eased === ''
          ? 'Loaded, at the hardest moment of the flight.'
          : 'Loaded: the cut-off voltage, which the pilot keeps by easing the bursts; flown as asked it would be lower.',
    },
    {
      ...base,
      id: 'mission-winding-temperature',
      label: 'hottest winding on the way',
      quantity: 'temperature',
      bears: WINDING_BEARS,
      better: 'less',
      how: 'Copper and iron loss of every leg in turn on winding and case as two lumps, from the temperature of the air; cooled by the wash, in cruise by the flight too.',
    },
    {
      ...base,
      id: 'turn-back-distance',
      label: 'turn back after',
      quantity: 'length',
      better: 'more',
      how: 'Way made against the wind when 40 % of the charge is used.',
    },
  ];
}

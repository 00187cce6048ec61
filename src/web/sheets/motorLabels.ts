import type { StationReport } from '../../assess/assessment.ts';
import type { AircraftPicture, RotorPicture } from '../../report/aircraftPicture.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import type { SheetName } from '../state/place.ts';

/** The aircraft with what the sheet has to say written by each motor. */
export function labelled(
  aircraft: AircraftPicture,
  stations: readonly StationReport[],
  sheet: SheetName,
  manner: Manner,
): AircraftPicture {
  const lift = stations.reduce((sum, station) => sum + (station.hover?.thrust ?? 0), 0);
  return {
    ...aircraft,
    rotors: aircraft.rotors.map((rotor, i) => {
      const label = stations[i] && labelOf(stations[i], sheet, lift, manner);
      return label === undefined ? rotor : { ...rotor, label };
    }),
  };
}

function labelOf(
  { hover, fullThrottle }: StationReport,
  sheet: SheetName,
  lift: number,
  manner: Manner,
): RotorPicture['label'] {
  if (hover === undefined || fullThrottle === undefined) return undefined;
  const say = (value: number, quantity: 'force' | 'share' | 'current' | 'temperature') =>
    sayInWords(value, quantity, manner);
  switch (sheet) {
    case 'airframe':
      return { figure: say(hover.thrust / lift, 'share'), under: 'of the lift' };
    case 'lift':
      return {
        figure: say(fullThrottle.thrust, 'force'),
        under: `hover ${say(hover.thrust, 'force')}`,
      };
    case 'heat':
      return hover.windingTemperature === undefined
        ? { figure: 'overheats', under: 'in hover', tone: 'stop' }
        : {
            figure: say(hover.windingTemperature, 'temperature'),
            under: `${say(fullThrottle.motorCurrent, 'current')} flat out`,
          };
    case 'flight':
      return { figure: say(hover.motorCurrent, 'current'), under: 'in hover' };
    case 'choice':
    case 'money':
    case 'fit':
      return undefined;
  }
}

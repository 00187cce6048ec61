import type { StationReport } from '../../assess/assessment.ts';
import type { Measure, Quantity } from '../../assess/types.ts';
import type { AircraftPicture, RotorPicture } from '../../report/aircraftPicture.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { SheetName } from '../state/place.ts';

/** The aircraft with what the sheet has to say written by each motor, no finer than the sheet's own figure of it. */
export function labelled(
  aircraft: AircraftPicture,
  stations: readonly StationReport[],
  measures: readonly Measure[],
  sheet: SheetName,
  manner: Manner,
): AircraftPicture {
  const lift = stations.reduce((sum, station) => sum + (station.hover?.thrust ?? 0), 0);
  return {
    ...aircraft,
    rotors: aircraft.rotors.map((rotor, i) => {
      const label = stations[i] && labelOf(stations[i], sheet, lift, sayer(measures, manner));
      return label === undefined ? rotor : { ...rotor, label };
    }),
  };
}

/** Says a motor's value as unsurely as a measure of the craft is known; three digits where there is none. */
type Sayer = (value: number, quantity: Quantity, like: string) => string;

function sayer(measures: readonly Measure[], manner: Manner): Sayer {
  return (value, quantity, like) => {
    const known = measures.find(({ id }) => id === like);
    if (known === undefined || known.words !== undefined || known.value === 0)
      return formatQuantity(value, quantity, manner);
    // A temperature is off by so many degrees, all else by a share of itself.
    const end = (at: number) =>
      quantity === 'temperature' ? value + at - known.value : (value * at) / known.value;
    const [low, high] = known.band;
    return formatQuantity(value, quantity, high > low ? { ...manner, band: [end(low), end(high)] } : manner);
  };
}

function labelOf(
  { hover, fullThrottle }: StationReport,
  sheet: SheetName,
  lift: number,
  say: Sayer,
): RotorPicture['label'] {
  if (hover === undefined || fullThrottle === undefined) return undefined;
  switch (sheet) {
    case 'airframe':
      return { figure: say(hover.thrust / lift, 'share', 'all-up-mass'), under: 'of the lift' };
    case 'lift':
      return {
        figure: say(fullThrottle.thrust, 'force', 'full-throttle-thrust'),
        under: `hover ${say(hover.thrust, 'force', 'all-up-mass')}`,
      };
    case 'heat':
      return hover.windingTemperature === undefined
        ? { figure: 'overheats', under: 'in hover', tone: 'stop' }
        : {
            figure: say(hover.windingTemperature, 'temperature', 'hover-winding-temperature'),
            under: `${say(fullThrottle.motorCurrent, 'current', 'full-throttle-motor-current')} flat out`,
          };
    case 'flight':
      return { figure: say(hover.motorCurrent, 'current', 'hover-current'), under: 'in hover' };
    case 'choice':
    case 'money':
    case 'fit':
      return undefined;
  }
}

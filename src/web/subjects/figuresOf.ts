import type { BuildSheetName } from '../state/place.ts';
import type { Figure, Subject } from './figure.ts';
import { flightFigures } from './flightFigures.ts';
import { knocksFigures } from './knocksFigures.ts';
import { pictureFigures } from './pictureFigures.ts';
import { shakeFigures } from './shakeFigures.ts';
import { windFigures } from './windFigures.ts';

/** The figures of a sheet that has figures of its own; the others show the plan. */
export function figuresOf(sheet: BuildSheetName, subject: Subject): readonly Figure[] | undefined {
  switch (sheet) {
    case 'flight':
      return flightFigures(subject);
    case 'wind':
      return windFigures(subject);
    case 'picture':
      return pictureFigures(subject);
    case 'shake':
      return shakeFigures(subject);
    case 'knocks':
      return knocksFigures(subject);
    case 'airframe':
    case 'lift':
    case 'heat':
    case 'money':
    case 'fit':
      return undefined;
  }
}

import { airframeFigures } from './airframeFigures.ts';
import { demoFigures } from './demoFigures.ts';
import { flightFigures } from './flightFigures.ts';
import type { Figures } from './retell.ts';
import { tradeFigures } from './tradeFigures.ts';

/** Every figure and table that pages show between marks. */
export const figures: Figures = { ...tradeFigures, ...airframeFigures, ...flightFigures, ...demoFigures };

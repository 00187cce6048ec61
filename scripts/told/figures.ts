import type { Figures } from './retell.ts';

/** Every figure that pages show between marks. */
export const figures: Figures = {};

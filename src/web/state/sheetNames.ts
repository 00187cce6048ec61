import { SHEETS as SUBJECTS } from '../../assess/types.ts';

/** Every sheet of the page, in the order of its tabs; plain, so that tests and scripts read it without a browser. */
export const SHEETS = ['choice', 'brief', 'shortlist', ...SUBJECTS] as const;

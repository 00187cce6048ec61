import { create } from 'zustand';

/**
 * The part picked on any sheet, by its place in the schedule (`motors`, `cameras[0]`): shown in the schedule, in the
 * drawings and in the round alike.
 */
export const usePicked = create<{ readonly part: string | undefined }>()(() => ({ part: undefined }));

export const pick = (part: string | undefined): void => usePicked.setState({ part });

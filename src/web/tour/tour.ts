import { create } from 'zustand';
import { type SheetName, turnTo } from '../state/place.ts';

interface Step {
  readonly sheet: SheetName;
  /** What is shown, by a selector within the sheet on top. */
  readonly at: string;
  readonly says: string;
}

/** One round of the demo: what a newcomer has to know to use the rest. */
export const STEPS: readonly Step[] = [
  {
    sheet: 'choice',
    at: '.five',
    says: 'The club at Gannet Point advises a newcomer. Which one and why stands above; four more questions are answered here in words, for the build that leads.',
  },
  {
    sheet: 'choice',
    at: '.choice-table, .choice-list',
    says: 'Six candidates at one scale. Small figures below a number are its band: four times in five it lies between. Press any number to see where it comes from.',
  },
  {
    sheet: 'choice',
    at: '.weights',
    says: 'The order hangs on what counts to you. Slide a mark and see who leads.',
  },
  {
    sheet: 'brief',
    at: '.questions',
    says: 'Put your own pilot, place, wind and money here: every number on every sheet follows.',
  },
  {
    sheet: 'airframe',
    at: '.stage',
    says: 'One build. Drag its pack, cameras and motors in the drawing; notes in the margin say what to mend, and the buttons under them show what a remedy would change before you keep it.',
  },
  {
    sheet: 'airframe',
    at: '.schedule',
    says: 'Every part, searched and sorted on the shelf, each told with what it would do to this build. Undo goes back over everything.',
  },
];

export const useTour = create<{ readonly step: number | undefined }>()(() => ({ step: undefined }));

export function goTo(step: number | undefined): void {
  const next = step === undefined ? undefined : STEPS[step];
  useTour.setState({ step: next ? step : undefined });
  if (next) turnTo(next.sheet);
}

export const startTour = (): void => goTo(0);

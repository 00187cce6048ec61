import { create } from 'zustand';

/** Whether the airframe is shown in the round; kept from sheet to sheet. */
export const useManner3d = create<{ readonly round: boolean }>()(() => ({ round: false }));

export const showRound = (round: boolean): void => useManner3d.setState({ round });

/** Between the flat drawings and the view in the round. */
export function RoundSwitch() {
  const round = useManner3d((manner) => manner.round);
  return (
    <fieldset className="sorts round-switch" aria-label="drawn as">
      <button type="button" className="sort" aria-pressed={!round} onClick={() => showRound(false)}>
        plan and side
      </button>
      <button type="button" className="sort" aria-pressed={round} onClick={() => showRound(true)}>
        in the round
      </button>
    </fieldset>
  );
}

/** Head, tools, schedule and title block of a sheet that is as high as the window [px]. */
const AROUND = 440;

/** Height of the view in the round on a board of that width [px]. */
export const roundHeight = (width: number, windowHeight: number): number =>
  Math.round(Math.min(width * 0.72, Math.max(windowHeight - AROUND, width < 480 ? 300 : 400), 640));

import { memo } from 'react';
import { PLAN_OVERLAYS, type PlanOverlay } from '../../report/planDrawing.ts';
import type { Drawing } from '../../report/shapes.ts';
import { exportPicture, exportSvg } from '../desk/pictures.ts';
import { change } from '../state/desk.ts';
import { eachByItself, type Movable } from './moves.ts';

interface Props {
  readonly overlays: readonly PlanOverlay[];
  readonly onOverlays: (overlays: readonly PlanOverlay[]) => void;
  readonly leaders: boolean;
  readonly onLeaders: (shown: boolean) => void;
  readonly plan: Drawing;
  readonly name: string;
  readonly movable?: Movable;
}

/** Below the drawing: what lies over it, what can be done with it. */
export const StageTools = memo(function StageTools({
  overlays,
  onOverlays,
  leaders,
  onLeaders,
  plan,
  name,
  movable,
}: Props) {
  const toggle = (overlay: PlanOverlay) =>
    onOverlays(
      overlays.includes(overlay) ? overlays.filter((each) => each !== overlay) : [...overlays, overlay],
    );
  const free = movable && eachByItself(movable);
  return (
    <div className="stage-tools">
      <fieldset className="sorts" aria-label="shown over the drawing">
        {PLAN_OVERLAYS.map((overlay) => (
          <button
            key={overlay}
            type="button"
            className="sort"
            aria-pressed={overlays.includes(overlay)}
            onClick={() => toggle(overlay)}
          >
            {overlay}
          </button>
        ))}
        <button type="button" className="sort" aria-pressed={leaders} onClick={() => onLeaders(!leaders)}>
          leaders
        </button>
      </fieldset>
      <span className="stage-acts">
        {free && (
          <button
            type="button"
            className="plain-button small"
            onClick={() => change((now) => ({ ...now, frame: { ...now.frame, layout: free } }))}
          >
            free the motors
          </button>
        )}
        <button type="button" className="plain-button small" onClick={() => exportSvg(plan, name)}>
          save SVG<span className="unseen"> of the plan</span>
        </button>
        <button type="button" className="plain-button small" onClick={() => void exportPicture(plan, name)}>
          save PNG<span className="unseen"> of the plan</span>
        </button>
      </span>
    </div>
  );
});

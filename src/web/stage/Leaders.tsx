import { memo } from 'react';
import type { Severity } from '../../assess/types.ts';
import type { Point } from '../../report/shapes.ts';
import type { Balloon } from './balloons.ts';

/** A note and the spot it speaks of, both on the stage [px]. */
export interface Tie {
  readonly key: string;
  readonly severity: Severity;
  readonly from: Point;
  /** Where the line bends towards its note; absent when notes lie under the drawing. */
  readonly bend?: Point;
  readonly to: Point;
  readonly number: number;
}

export interface Ring extends Balloon {
  /** On the stage [px]: what it points at, and its own middle. */
  readonly spot: Point;
  readonly middle: Point;
}

interface Props {
  readonly ties: readonly Tie[];
  readonly rings: readonly Ring[];
}

/** Lines and rings over the whole stage. Hidden from readers of words: notes and schedule say it all. */
export const Leaders = memo(function Leaders({ ties, rings }: Props) {
  return (
    <svg className="leaders" aria-hidden="true">
      {rings.map((ring) => (
        <RingMark key={ring.number} ring={ring} />
      ))}
      {ties.map((tie) => (
        <TieMark key={tie.key} tie={tie} />
      ))}
    </svg>
  );
});

function TieMark({ tie: { severity, from, bend, to, number } }: { readonly tie: Tie }) {
  if (bend !== undefined) {
    return (
      <g className={severity}>
        <path d={`M${from.x} ${from.y}L${bend.x} ${bend.y}H${to.x}`} />
        <circle cx={from.x} cy={from.y} r={3} />
      </g>
    );
  }
  return (
    <g className={`${severity} flag`}>
      <circle cx={from.x} cy={from.y} r={8.5} />
      <text x={from.x} y={from.y + 3.8} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

/** A click on a ring goes to the part's line in the schedule; the keyboard is there without it. */
function RingMark({ ring: { number, entry, spot, middle } }: { readonly ring: Ring }) {
  const out = { x: middle.x - spot.x, y: middle.y - spot.y };
  const short = 1 - 10 / Math.max(Math.hypot(out.x, out.y), 10);
  return (
    <g
      className="ring"
      onPointerDown={(event) => {
        event.preventDefault();
        document.querySelector<HTMLElement>(`[data-entry="${entry}"] .picker`)?.focus();
      }}
    >
      <path d={`M${spot.x} ${spot.y}L${spot.x + out.x * short} ${spot.y + out.y * short}`} />
      <circle className="ring-spot" cx={spot.x} cy={spot.y} r={1.8} />
      <circle className="ring-edge" cx={middle.x} cy={middle.y} r={10} />
      <text x={middle.x} y={middle.y + 4} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

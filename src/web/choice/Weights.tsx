import { memo } from 'react';
import type { SoftWant } from '../../choose/shortlist/softWants.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { sayScale } from '../../report/sayScale.ts';
import { Adjust } from '../schedule/Adjust.tsx';
import { settle, weigh } from '../state/desk.ts';

interface Props {
  readonly wants: readonly SoftWant[];
  readonly label: (measure: string) => string;
  readonly manner: Manner;
}

/** What counts, how much and on which scale: the order above hangs on it, so it is shown and the user's to change. */
export const Weights = memo(function Weights({ wants, label, manner }: Props) {
  return (
    <section className="schedule weights" aria-label="What counts, and how much">
      {wants.map(({ measure, weight, scale }) => (
        <div className="entry" key={measure}>
          <Adjust
            label={label(measure)}
            unit=""
            min={0}
            max={10}
            step={0.5}
            value={weight}
            onMove={(to) => weigh(measure, to)}
            onSettle={settle}
          />
          <small className="scale-words">{sayScale({ measure, scale }, manner)}</small>
        </div>
      ))}
    </section>
  );
});

import type { Want } from '../../choose/wants.ts';
import { Adjust } from '../schedule/Adjust.tsx';
import { settle, weigh } from '../state/desk.ts';

interface Props {
  readonly wants: readonly Want[];
  readonly label: (measure: string) => string;
}

/** What counts and how much: the order above hangs on it, so it is shown and the user's to change. */
export function Weights({ wants, label }: Props) {
  return (
    <section className="schedule weights" aria-label="What counts, and how much">
      {wants.map(({ measure, weight }) => (
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
        </div>
      ))}
    </section>
  );
}

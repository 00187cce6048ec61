import { memo, type ReactNode } from 'react';
import type { Measure } from '../../assess/types.ts';
import { type Manner, sayBand, sayFigure, sayWindow } from '../../report/sayFigure.ts';
import { useWords } from '../state/manner.ts';
import { How } from './How.tsx';
import { spanOf, WindowRule } from './WindowRule.tsx';

/** The measures of a sheet as ruled lines; each opens its `how`. */
export function FigureRows({
  measures,
  manner,
}: {
  readonly measures: readonly Measure[];
  readonly manner: Manner;
}) {
  return (
    <ul className="figures">
      {measures.map((measure) => (
        <FigureRow key={measure.id} measure={measure} manner={manner} />
      ))}
    </ul>
  );
}

const FigureRow = memo(function FigureRow({ measure, manner }: FigureCellProps) {
  const words = useWords();
  return (
    <li>
      <How measure={measure} manner={manner} className="figure-row">
        <span className="figure-label">
          {words(measure.label)}
          <small>{windowWords(measure, manner)}</small>
        </span>
        <FigureCell measure={measure} manner={manner} />
        {measure.words !== undefined ? null : measure.window ? (
          <WindowRule measure={measure} span={spanOf([measure])} width={96} />
        ) : (
          <span />
        )}
      </How>
    </li>
  );
});

interface FigureCellProps {
  readonly measure: Measure;
  readonly manner: Manner;
  /** Set beside the figure. */
  readonly mark?: ReactNode;
}

/** A figure with its unit, and its band small below; words in the place of a figure take more lines. */
export function FigureCell({ measure, manner, mark }: FigureCellProps) {
  const { text, unit } = sayFigure(measure, manner);
  return (
    <span className={measure.words === undefined ? 'figure-cell' : 'figure-cell words'}>
      <span className="figure">{text}</span> <span className="unit">{unit}</span>
      {mark}
      <small className="band">{sayBand(measure, manner) || ' '}</small>
    </span>
  );
}

/** Where the value stands in its window, in words. */
export function windowWords(measure: Measure, manner: Manner): string {
  const { window, value } = measure;
  if (window === undefined) return '';
  const stands = value < window.low ? 'under' : value > window.high ? 'over' : 'inside';
  return `${stands} ${sayWindow(measure, manner)}`;
}

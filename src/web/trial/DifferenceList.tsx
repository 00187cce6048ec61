import type { Measure } from '../../assess/types.ts';
import { type Manner, sayFigure } from '../../report/sayFigure.ts';
import { SeverityMark } from '../parts/SeverityMark.tsx';
import { useWords } from '../state/manner.ts';
import type { Differences } from './differences.ts';

interface Props {
  readonly differences: Differences;
  readonly manner: Manner;
}

const MOST = 7;

/** What a change does: findings mended and new, figures before and after. */
export function DifferenceList({ differences: { gone, come, moved }, manner }: Props) {
  const words = useWords();
  const figure = (measure: Measure): string => {
    const { text, unit } = sayFigure(measure, manner);
    return unit === '' ? text : `${text} ${unit}`;
  };
  const seen = moved
    .map(({ before, after }) => ({ after, was: figure(before), is: figure(after) }))
    .filter(({ was, is }) => was !== is)
    .slice(0, MOST);
  return (
    <ul>
      {gone.map((finding) => (
        <li key={`gone ${finding.id} ${finding.says}`}>
          <b>mended</b> <SeverityMark severity={finding.severity} /> <s>{words(finding.says)}</s>
        </li>
      ))}
      {come.map((finding) => (
        <li key={`come ${finding.id} ${finding.says}`}>
          <b>new</b> <SeverityMark severity={finding.severity} /> {words(finding.says)}
        </li>
      ))}
      {seen.map(({ after, was, is }) => (
        <li key={after.id} className="moved">
          <span>{words(after.label)}</span>
          <span>
            {was} <span aria-hidden="true">{'→'}</span>
            <span className="unseen">becomes</span> <b>{is}</b>
          </span>
        </li>
      ))}
      {gone.length + come.length + seen.length === 0 && <li>Nothing that could be seen.</li>}
    </ul>
  );
}

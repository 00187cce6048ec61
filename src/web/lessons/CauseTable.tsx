import { type Manner, sayFigure } from '../../report/sayFigure.ts';
import { ScrollTable } from '../parts/ScrollTable.tsx';
import { useWords } from '../state/manner.ts';
import type { SeenStep } from './lessonState.ts';
import { CAUSE_WORDS } from './why.ts';

interface Props {
  readonly steps: readonly SeenStep[];
  readonly manner: Manner;
}

/** What a buyer looks at first; others follow by how much they move. */
const FIRST = ['all-up-mass', 'thrust-to-weight', 'flown-time', 'top-speed', 'first-flight-cost'];
const MOST = 9;

/** Every cause beside every figure it moves: along a row they add up from the first build to the last. */
export function CauseTable({ steps, manner }: Props) {
  const words = useWords();
  const [first, last] = [steps[0]?.before, steps.at(-1)?.after];
  if (first?.ok !== true || last?.ok !== true || steps.some(({ after }) => !after.ok)) return null;
  const rows = last.assessment.measures
    .flatMap((end) => {
      const start = first.assessment.measures.find(({ id }) => id === end.id);
      const size = start
        ? Math.abs(end.value - start.value) / Math.max(Math.abs(start.value), Math.abs(end.value), 1e-12)
        : 0;
      return start && size > 0.004 ? [{ start, end, size: FIRST.includes(end.id) ? 1e6 + size : size }] : [];
    })
    .toSorted((a, b) => b.size - a.size)
    .slice(0, MOST);
  if (rows.length === 0) return null;
  const valueAfter = (step: SeenStep, id: string): number | undefined =>
    step.after.ok ? step.after.assessment.measures.find((each) => each.id === id)?.value : undefined;
  return (
    <div className="lesson-table">
      <h3>All causes together</h3>
      <ScrollTable label="all causes together">
        <table>
          <thead>
            <tr>
              <th scope="col">figure</th>
              <th scope="col">from</th>
              {steps.map(({ cause }) => (
                <th key={cause} scope="col">
                  {CAUSE_WORDS[cause]}
                </th>
              ))}
              <th scope="col">to</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ start, end }) => {
              let value: number | undefined = start.value;
              return (
                <tr key={end.id}>
                  <th scope="row">{words(end.label)}</th>
                  <td>{inWords(sayFigure(start, manner))}</td>
                  {steps.map((step) => {
                    const next = valueAfter(step, end.id);
                    const by = value === undefined || next === undefined ? undefined : next - value;
                    value = next;
                    return (
                      <td key={step.cause}>
                        {by === undefined
                          ? 'not told'
                          : share(by, start.value, Math.max(Math.abs(start.value), Math.abs(end.value)))}
                      </td>
                    );
                  })}
                  <td>{inWords(sayFigure(end, manner))}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollTable>
      <p className="own-note">
        Each column is the share of the first figure that its cause adds or takes, in this order: where two
        causes share an effect, another order would split it otherwise.
      </p>
    </div>
  );
}

const inWords = ({ text, unit }: { readonly text: string; readonly unit: string }): string =>
  unit === '' ? text : `${text} ${unit}`;

/** Where it began at less than this of where it ends, its hundredths would say nothing. */
const FROM_NOTHING = 0.05;

/** Signed, in hundredths of where it began, or in words where that was next to nothing; a dash for what nobody would notice. */
function share(by: number, of: number, largest: number): string {
  if (Math.abs(of) < FROM_NOTHING * largest)
    return Math.abs(by) < FROM_NOTHING * largest ? '–' : by > 0 ? 'adds it' : 'takes it';
  const percent = Math.round((100 * by) / Math.abs(of));
  return percent === 0 ? '–' : `${percent > 0 ? '+' : '−'}${Math.abs(percent)} %`;
}

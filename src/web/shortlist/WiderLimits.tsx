import { localNumber } from '../state/decimalMark.ts';
import type { WiderLimit } from '../worker/searchProtocol.ts';

interface Props {
  readonly wider: readonly WiderLimit[];
  readonly label: (measure: string) => string;
}

/** Less of the standing is not worth a word. */
const TELLING = 5e-4;

/** What each limit a tenth wider would bring: whether it is the limit, or the shelf, that holds the list back. */
export function WiderLimits({ wider, label }: Props) {
  if (wider.length === 0) return null;
  return (
    <section className="found-out">
      <h3>Each limit a tenth wider, by itself</h3>
      <table>
        <tbody>
          {wider.map((each) => (
            <tr key={each.limit}>
              <th scope="row">{label(each.limit)}</th>
              <td>{widerWords(each)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function widerWords({ best, gain, entersList }: WiderLimit): string {
  if (best === undefined) return 'still nothing passes';
  if (entersList === 0) return 'buys nothing: the same list';
  const list = `${entersList} new among the best`;
  return gain < TELLING
    ? `${list}, the first stays`
    : `${list}; first then, ${localNumber(100 * gain, 1)} points higher: ${best.join(', ')}`;
}

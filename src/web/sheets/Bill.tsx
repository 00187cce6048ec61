import type { MoneyReport } from '../../assess/assessment.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import { localNumber } from '../state/decimalMark.ts';

/** What is bought before the first flight, line by line, in the order of its groups. */
export function Bill({ money, manner }: { readonly money: MoneyReport; readonly manner: Manner }) {
  const groups = [...new Set(money.lines.map((line) => line.group))];
  return (
    <table className="bill">
      <caption className="unseen">Everything needed before the first flight</caption>
      <thead>
        <tr>
          <th scope="col">item</th>
          <th scope="col" className="number">
            pieces
          </th>
          <th scope="col" className="number">
            each
          </th>
          <th scope="col" className="number">
            {money.currency}
          </th>
        </tr>
      </thead>
      {groups.map((group) => {
        const lines = money.lines.filter((line) => line.group === group);
        const sum = lines.reduce((total, line) => total + (line.owned ? 0 : line.count * line.unitPrice), 0);
        return (
          <tbody key={group}>
            <tr className="bill-group">
              <th scope="rowgroup" colSpan={3}>
                {group}
              </th>
              <td className="number">{amount(sum)}</td>
            </tr>
            {lines.map((line) => (
              <tr key={line.id} className={line.owned ? 'owned' : ''}>
                <th scope="row">
                  {line.what} <small>{line.why}</small>
                </th>
                <td className="number">{line.count}</td>
                <td className="number">{amount(line.unitPrice)}</td>
                <td className="number">{line.owned ? 'at hand' : amount(line.count * line.unitPrice)}</td>
              </tr>
            ))}
          </tbody>
        );
      })}
      <tfoot>
        <tr className="bill-sum">
          <th scope="row" colSpan={3}>
            to the first flight
          </th>
          <td className="number">
            {sayInWords(
              money.lines.reduce((sum, line) => sum + (line.owned ? 0 : line.count * line.unitPrice), 0),
              'money',
              manner,
            )}
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

const amount = (value: number): string => localNumber(value, 2);

import { Fault } from '../parts/Fault.tsx';
import { useDraft } from '../parts/useDraft.ts';
import { flightList } from './flightList.ts';

interface Props {
  readonly label: string;
  readonly value: readonly number[];
  readonly most: number;
  readonly onEnter: (value: readonly number[]) => void;
}

/** A row of flight numbers, taken when the field is left; one that does not read changes nothing and says so. */
export function FlightsEntry({ label, value, most, onEnter }: Props) {
  const { id, fault, field } = useDraft(value.join(', '), (text) => {
    const list = flightList(text, most);
    if (list === undefined) return `numbers of flights from 1 to ${most}, like 2, 5, 11`;
    if (list.join() !== value.join()) onEnter(list);
    return undefined;
  });
  return (
    <div className="number-entry">
      <label htmlFor={id}>{label}</label>
      <input className="text-field" inputMode="text" autoComplete="off" placeholder="none" {...field} />
      <Fault id={id} fault={fault} />
    </div>
  );
}

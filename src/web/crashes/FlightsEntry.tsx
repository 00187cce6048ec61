import { useId, useState } from 'react';
import { flightList } from './flightList.ts';

interface Props {
  readonly label: string;
  readonly value: readonly number[];
  readonly most: number;
  readonly onEnter: (value: readonly number[]) => void;
}

/** A row of flight numbers, taken when the field is left; one that does not read changes nothing and says so. */
export function FlightsEntry({ label, value, most, onEnter }: Props) {
  const id = useId();
  const [text, setText] = useState<string>();
  const [fault, setFault] = useState('');
  const take = () => {
    if (text === undefined) return;
    const list = flightList(text, most);
    if (list === undefined) return setFault(`numbers of flights from 1 to ${most}, like 2, 5, 11`);
    if (list.join() !== value.join()) onEnter(list);
    setText(undefined);
    setFault('');
  };
  return (
    <div className="number-entry">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="text-field"
        inputMode="text"
        autoComplete="off"
        placeholder="none"
        value={text ?? value.join(', ')}
        aria-invalid={fault !== ''}
        aria-describedby={fault ? `${id}-fault` : undefined}
        onChange={(event) => setText(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') {
            setText(undefined);
            setFault('');
          }
        }}
      />
      {fault && (
        <small id={`${id}-fault`} className="fault" role="alert">
          {fault}
        </small>
      )}
    </div>
  );
}

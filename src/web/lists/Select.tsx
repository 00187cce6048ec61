interface Props {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly id: string; readonly name: string }[];
  readonly onChoose: (id: string) => void;
}

/** The browser's own list of choices: a dialog full of them needs nothing grander. */
export function Select({ label, value, choices, onChoose }: Props) {
  return (
    <select
      className="text-field"
      aria-label={label}
      value={value}
      onChange={(event) => onChoose(event.target.value)}
    >
      {choices.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}

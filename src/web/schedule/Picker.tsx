import { Combobox } from '@base-ui/react/combobox';
import { memo } from 'react';
import { layer } from '../layer.ts';
import { glued } from '../parts/glued.ts';
import { useSteady } from '../parts/useSteady.ts';

interface Choice {
  readonly id: string;
  readonly name: string;
  readonly says?: string;
}

interface Props {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly onChoose: (id: string) => void;
}

/** One entry of a schedule, chosen from a short list. For parts of the shelf there is `PartPicker`. */
export function Picker({ onChoose, ...props }: Props) {
  return <SteadyPicker {...props} onChoose={useSteady(onChoose)} />;
}

/** The same list is not worked out anew at every step of a slider. */
const SteadyPicker = memo(
  OpenPicker,
  (past, now) =>
    past.label === now.label &&
    past.value === now.value &&
    past.choices.length === now.choices.length &&
    past.choices.every(({ id, name }, i) => id === now.choices[i]?.id && name === now.choices[i]?.name),
);

function OpenPicker({ label, value, choices, onChoose }: Props) {
  const chosen = choices.find(({ id }) => id === value);
  return (
    <Combobox.Root
      items={choices}
      value={chosen ?? null}
      onValueChange={(choice: Choice | null) => {
        if (choice !== null && choice.id !== value) onChoose(choice.id);
      }}
      isItemEqualToValue={(a, b) => a?.id === b?.id}
      itemToStringLabel={(choice) => choice?.name ?? ''}
      autoHighlight
    >
      <Combobox.Trigger className="picker" aria-label={label}>
        <span className="picker-value">{glued(chosen?.name ?? value)}</span>
        <PickerIcon />
      </Combobox.Trigger>
      <Combobox.Portal container={layer}>
        <Combobox.Positioner className="layer" align="start" sideOffset={4} collisionPadding={12}>
          <Combobox.Popup className="picker-list short-list" aria-label={`choose ${label}`}>
            <Combobox.Input className="search" aria-label={`search ${label}`} placeholder="search" />
            <Combobox.Empty className="shelf-empty">Nothing has these letters.</Combobox.Empty>
            <Combobox.List className="shelf-rows">
              {(choice: Choice) => (
                <Combobox.Item key={choice.id} value={choice} className="picker-item">
                  <span className="picker-name">{choice.name}</span>
                  {choice.says && <small>{choice.says}</small>}
                </Combobox.Item>
              )}
            </Combobox.List>
          </Combobox.Popup>
        </Combobox.Positioner>
      </Combobox.Portal>
    </Combobox.Root>
  );
}

/** The mark of something that opens a list. */
export function PickerIcon() {
  return (
    <span className="picker-icon">
      <svg viewBox="0 0 10 6" width="10" height="6" aria-hidden="true">
        <path d="M1 1 5 5 9 1" />
      </svg>
    </span>
  );
}

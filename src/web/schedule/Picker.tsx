import { Select } from '@base-ui/react/select';
import { layer } from '../layer.ts';

export interface Choice {
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

/** One entry of a schedule, chosen from a list. */
export function Picker({ label, value, choices, onChoose }: Props) {
  return (
    <Select.Root
      value={value}
      onValueChange={(id) => {
        if (id !== null && id !== value) onChoose(id);
      }}
      items={choices.map(({ id, name }) => ({ value: id, label: name }))}
    >
      <Select.Trigger className="picker" aria-label={label}>
        <Select.Value className="picker-value" />
        <Select.Icon className="picker-icon">
          <svg viewBox="0 0 10 6" width="10" height="6" aria-hidden="true">
            <path d="M1 1 5 5 9 1" />
          </svg>
        </Select.Icon>
      </Select.Trigger>
      <Select.Portal container={layer}>
        <Select.Positioner
          className="layer"
          alignItemWithTrigger={false}
          sideOffset={4}
          collisionPadding={12}
        >
          <Select.Popup className="picker-list">
            {choices.map(({ id, name, says }) => (
              <Select.Item key={id} value={id} className="picker-item">
                <Select.ItemText className="picker-name">{name}</Select.ItemText>
                {says && <small>{says}</small>}
                <Select.ItemIndicator className="picker-tick">
                  <svg viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
                    <path d="M1 5.5 4 8.5 9 1.5" />
                  </svg>
                </Select.ItemIndicator>
              </Select.Item>
            ))}
          </Select.Popup>
        </Select.Positioner>
      </Select.Portal>
    </Select.Root>
  );
}

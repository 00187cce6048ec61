import { type ChangeEvent, type KeyboardEvent, useId, useState } from 'react';

/**
 * What is typed into a field until it is taken: when the field is left or Enter is pressed; Escape leaves all as it was.
 * `take` keeps what was typed, or gives the fault to say instead.
 */
export function useDraft(shown: string, take: (text: string) => string | undefined) {
  const id = useId();
  const [text, setText] = useState<string>();
  const [fault, setFault] = useState('');
  const drop = () => {
    setText(undefined);
    setFault('');
  };
  const leave = () => {
    if (text === undefined) return;
    const wrong = take(text);
    if (wrong === undefined) drop();
    else setFault(wrong);
  };
  return {
    id,
    fault,
    field: {
      id,
      value: text ?? shown,
      'aria-invalid': fault !== '',
      'aria-describedby': fault ? `${id}-fault` : undefined,
      onChange: (event: ChangeEvent<HTMLInputElement>) => setText(event.target.value),
      onBlur: leave,
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'Enter') leave();
        if (event.key === 'Escape') drop();
      },
    },
  };
}

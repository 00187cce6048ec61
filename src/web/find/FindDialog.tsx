import { Combobox } from '@base-ui/react/combobox';
import { Dialog } from '@base-ui/react/dialog';
import { memo, useEffect, useMemo, useState } from 'react';
import { layer } from '../layer.ts';
import { type Command, useCommands } from './commands.ts';

/** Everything on the page by a few letters: sheets, builds, figures, parts, tools. */
export const FindDialog = memo(function FindDialog() {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'k') return;
      event.preventDefault();
      setOpen((now) => !now);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  return (
    <Dialog.Root open={open} onOpenChange={setOpen}>
      <Dialog.Trigger className="plain-button" aria-keyshortcuts="Control+K">
        find
      </Dialog.Trigger>
      <Dialog.Portal container={layer}>
        <Dialog.Backdrop className="backdrop" />
        <Dialog.Popup className="dialog find-dialog">
          <Dialog.Title className="unseen">Find a sheet, a build, a figure, a part or a tool</Dialog.Title>
          <Commands onDone={() => setOpen(false)} />
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
});

const MOST = 60;

function Commands({ onDone }: { readonly onDone: () => void }) {
  const commands = useCommands();
  const [words, setWords] = useState('');
  const found = useMemo(() => matching(commands, words).slice(0, MOST), [commands, words]);
  return (
    <Combobox.Root
      items={found}
      filter={null}
      inline
      open
      value={null}
      inputValue={words}
      onInputValueChange={setWords}
      itemToStringLabel={(command: Command) => command.says}
      onValueChange={(command: Command | null) => {
        if (command === null) return;
        onDone();
        // After the dialog has given the focus back, so that the command may move it.
        setTimeout(command.run, 0);
      }}
      autoHighlight
    >
      <Combobox.Input
        className="search find-field"
        aria-label="find"
        placeholder="find a sheet, a figure, a part"
      />
      <Combobox.Empty className="shelf-empty">Nothing on the page has these words.</Combobox.Empty>
      <Combobox.List className="find-list" aria-label="found">
        {(command: Command) => (
          <Combobox.Item key={command.id} value={command} className="picker-item">
            <span className="picker-name">{command.says}</span>
            <small>{command.what}</small>
          </Combobox.Item>
        )}
      </Combobox.List>
    </Combobox.Root>
  );
}

/** Every word must occur; those that begin with the words come first. */
function matching(commands: readonly Command[], words: string): readonly Command[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  const first = wanted[0] ?? '';
  return commands
    .filter(({ says, what }) => wanted.every((word) => `${says} ${what}`.toLowerCase().includes(word)))
    .toSorted(
      (a, b) =>
        Number(b.says.toLowerCase().startsWith(first)) - Number(a.says.toLowerCase().startsWith(first)),
    );
}

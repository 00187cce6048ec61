import { Dialog } from '@base-ui/react/dialog';
import { layer } from '../layer.ts';
import { ListSheet } from './ListSheet.tsx';
import { closeList, useList } from './list.ts';

/** A list of parts from elsewhere, shown before anything of it is kept. */
export function ListDialog() {
  const list = useList((state) => state.list);
  return (
    <Dialog.Root open={list !== undefined} onOpenChange={(open) => !open && closeList()}>
      <Dialog.Portal container={layer}>
        <Dialog.Backdrop className="backdrop" />
        <Dialog.Popup className="dialog list-dialog">
          <div className="how-head">
            <Dialog.Title className="dialog-title">Parts from {list?.file ?? 'a list'}</Dialog.Title>
            <Dialog.Close className="plain-button">close</Dialog.Close>
          </div>
          {list?.view === undefined ? (
            <p className="waiting">Reading it.</p>
          ) : (
            <ListSheet list={list} view={list.view} />
          )}
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

import { Dialog } from '@base-ui/react/dialog';
import { memo } from 'react';
import { layer } from '../layer.ts';
import { OwnPartRows } from '../own/OwnPartRows.tsx';
import { BuildRows } from './BuildRows.tsx';
import { useDeskOpen } from './deskOpen.ts';
import { FileRows } from './FileRows.tsx';
import { Snapshots } from './Snapshots.tsx';

/** What lies on the desk: builds, snapshots, files. */
export const DeskDialog = memo(function DeskDialog() {
  const open = useDeskOpen((state) => state.open);
  return (
    <Dialog.Root open={open} onOpenChange={(next) => useDeskOpen.setState({ open: next })}>
      <Dialog.Trigger className="plain-button">desk</Dialog.Trigger>
      <Dialog.Portal container={layer}>
        <Dialog.Backdrop className="backdrop" />
        <Dialog.Popup className="dialog desk-dialog">
          <div className="how-head">
            <Dialog.Title className="dialog-title">On the desk</Dialog.Title>
            <Dialog.Close className="plain-button">close</Dialog.Close>
          </div>
          <BuildRows />
          <Snapshots />
          <OwnPartRows />
          <FileRows />
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
});

import { Dialog } from '@base-ui/react/dialog';
import { layer } from '../layer.ts';
import { OwnPartForm } from './OwnPartForm.tsx';
import { leavePart, useOwnPart } from './ownPart.ts';

/** A part that the shelf does not have, entered by hand. */
export function OwnPartDialog() {
  const entering = useOwnPart((state) => state.entering);
  return (
    <Dialog.Root open={entering !== undefined} onOpenChange={(open) => !open && leavePart()}>
      <Dialog.Portal container={layer}>
        <Dialog.Backdrop className="backdrop" />
        <Dialog.Popup className="dialog own-dialog">
          <div className="how-head">
            <Dialog.Title className="dialog-title">
              {entering?.draft.id === undefined ? 'A part of your own' : 'Your part, to change'}
            </Dialog.Title>
            <Dialog.Close className="plain-button">close</Dialog.Close>
          </div>
          {entering && <OwnPartForm first={entering.draft} />}
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

import { Dialog } from '@base-ui/react/dialog';
import { lazy, Suspense } from 'react';
import { layer } from '../layer.ts';
import { leavePart, useOwnPart } from './ownPart.ts';

const OwnPartForm = lazy(async () => ({ default: (await import('./OwnPartForm.tsx')).OwnPartForm }));

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
          <Suspense fallback={<p className="own-note">Laying the form out.</p>}>
            {entering && <OwnPartForm first={entering.draft} />}
          </Suspense>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

import { Dialog } from '@base-ui/react/dialog';
import { layer } from '../layer.ts';
import { LessonView } from './LessonView.tsx';
import { closeLesson, useLesson } from './lessonState.ts';

/** Two builds and what makes the difference between them, one cause at a time. */
export function LessonDialog() {
  const open = useLesson((lesson) => lesson.open);
  return (
    <Dialog.Root open={open} onOpenChange={(next) => !next && closeLesson()}>
      <Dialog.Portal container={layer}>
        <Dialog.Backdrop className="backdrop" />
        <Dialog.Popup className="dialog own-dialog">
          <div className="how-head">
            <Dialog.Title className="dialog-title">One cause at a time</Dialog.Title>
            <Dialog.Close className="plain-button">close</Dialog.Close>
          </div>
          {open && <LessonView />}
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

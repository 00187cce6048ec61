import { Dialog } from '@base-ui/react/dialog';
import { lazy, Suspense } from 'react';
import { layer } from '../layer.ts';
import { closeLesson, useLesson } from './lessonState.ts';

const LessonView = lazy(async () => ({ default: (await import('./LessonView.tsx')).LessonView }));

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
          <Suspense fallback={<p className="own-note">Laying the two side by side.</p>}>
            {open && <LessonView />}
          </Suspense>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

import { useEffect, useRef } from 'react';
import { whenThere } from '../parts/whenThere.ts';
import { goTo, STEPS, useTour } from './tour.ts';

/** Shows a newcomer round: a note at the foot of the window, and a frame round what it speaks of. */
export function Tour() {
  const step = useTour((tour) => tour.step);
  const note = useRef<HTMLDivElement>(null);
  const now = step === undefined ? undefined : STEPS[step];
  useEffect(() => {
    if (now === undefined) return;
    note.current?.focus();
    const leaveOff = whenThere(`[role=tabpanel]:not([hidden]) :is(${now.at})`, (shown) => {
      shown.setAttribute('data-toured', '');
      shown.scrollIntoView({ block: 'nearest' });
    });
    return () => {
      leaveOff();
      for (const shown of document.querySelectorAll('[data-toured]')) shown.removeAttribute('data-toured');
    };
  }, [now]);
  useEffect(() => {
    if (now === undefined) return;
    const leave = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.defaultPrevented) goTo(undefined);
    };
    document.addEventListener('keydown', leave);
    return () => document.removeEventListener('keydown', leave);
  }, [now]);
  if (now === undefined || step === undefined) return null;
  const last = step === STEPS.length - 1;
  return (
    <section className="tour" ref={note} tabIndex={-1} aria-label={`Round ${step + 1} of ${STEPS.length}`}>
      <p>
        <span className="balloon" aria-hidden="true">
          {step + 1}
        </span>{' '}
        {now.says}
      </p>
      <div className="tour-tools">
        {step > 0 && (
          <button type="button" className="plain-button" onClick={() => goTo(step - 1)}>
            back
          </button>
        )}
        <button type="button" className="plain-button" onClick={() => goTo(last ? undefined : step + 1)}>
          {last ? 'done' : 'next'}
        </button>
        {!last && (
          <button type="button" className="plain-button" onClick={() => goTo(undefined)}>
            leave
          </button>
        )}
      </div>
    </section>
  );
}

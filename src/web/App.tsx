import { CSPProvider } from '@base-ui/react/csp-provider';
import { Tabs } from '@base-ui/react/tabs';
import { lazy, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { ChoiceSheet } from './choice/ChoiceSheet.tsx';
import { FileDrop } from './desk/FileDrop.tsx';
import { Header } from './Header.tsx';
import { keepFocus } from './keepFocus.ts';
import { layer } from './layer.ts';
import { LessonDialog } from './lessons/LessonDialog.tsx';
import { ListDialog } from './lists/ListDialog.tsx';
import { Notices } from './Notices.tsx';
import { OwnPartDialog } from './own/OwnPartDialog.tsx';
import { Later } from './parts/Later.tsx';
import { fitToPaper } from './printing.ts';
import { useAnswers } from './state/answers.ts';
import { redo, undo, useDesk } from './state/desk.ts';
import { useManner } from './state/manner.ts';
import { turnTo, usePlace } from './state/place.ts';
import { SHEETS } from './state/sheetNames.ts';
import { TitleBlock } from './TitleBlock.tsx';
import { Tour } from './tour/Tour.tsx';

/** Sheets in pieces of script of their own: the first one does not wait for them. */
const BriefSheet = lazy(async () => ({ default: (await import('./brief/BriefSheet.tsx')).BriefSheet }));
const BuildSheet = lazy(async () => ({ default: (await import('./sheets/BuildSheet.tsx')).BuildSheet }));
const ShortlistSheet = lazy(async () => await import('./shortlist/ShortlistSheet.tsx'));

/** The whole page: one drawing sheet, ruled, with its tabs above and its title block below. */
export function App() {
  const sheet = usePlace((place) => place.sheet);
  const trouble = useAnswers((answers) => answers.trouble);
  const [pen, setPen] = useState<number>();
  const manner = useManner();
  const progress = useProgressMarks();
  useUndoKeys();
  useEffect(() => keepFocus(document), []);
  useEffect(() => fitToPaper(document), []);
  return (
    <CSPProvider disableStyleElements>
      <Tabs.Root
        className="sheet"
        ref={progress}
        value={sheet}
        onValueChange={(value) => {
          const next = SHEETS.find((each) => each === value);
          if (next) turnTo(next);
        }}
      >
        <Header />
        <main className="body">
          <Notices />
          {trouble !== undefined && (
            <p className="trouble" role="alert">
              The shelf or the demo could not be read: {trouble}
            </p>
          )}
          {SHEETS.map((each) => (
            <Tabs.Panel key={each} value={each} className="panel">
              <Later waiting={<p className="waiting">Laying out the sheet.</p>}>
                {each === 'choice' ? (
                  <ChoiceSheet manner={manner} onScale={setPen} />
                ) : each === 'brief' ? (
                  <BriefSheet manner={manner} />
                ) : each === 'shortlist' ? (
                  <ShortlistSheet manner={manner} />
                ) : (
                  <BuildSheet sheet={each} manner={manner} onScale={setPen} />
                )}
              </Later>
            </Tabs.Panel>
          ))}
          <div ref={layer} />
        </main>
        <TitleBlock pen={pen} />
        <ListDialog />
        <FileDrop />
        <OwnPartDialog />
        <LessonDialog />
        <Tour />
      </Tabs.Root>
    </CSPProvider>
  );
}

/**
 * Says on the sheet itself how far the workers are, for styles and tests: `data-waiting` builds, and of the open one
 * `data-behind` parts. Written past React, or every answer would render the whole page twice.
 */
function useProgressMarks() {
  const sheet = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const mark = () => {
      const { views, waiting, behind } = useAnswers.getState();
      const started = Object.keys(views).length > 0;
      if (sheet.current === null) return;
      setMark(sheet.current, 'waiting', started ? String(waiting.length) : 'start');
      setMark(sheet.current, 'behind', String(behind[useDesk.getState().open]?.length ?? -1));
    };
    mark();
    const stops = [useAnswers.subscribe(mark), useDesk.subscribe(mark)];
    return () => {
      for (const stop of stops) stop();
    };
  }, []);
  return sheet;
}

/** Written anew, even the same one would have the browser look at every style again. */
function setMark({ dataset }: HTMLElement, name: string, value: string): void {
  if (dataset[name] !== value) dataset[name] = value;
}

/** The usual keys for undo and redo, but never inside a field that has its own. */
function useUndoKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      const typing =
        (target instanceof HTMLInputElement && target.type !== 'range' && target.type !== 'checkbox') ||
        target instanceof HTMLTextAreaElement;
      if (!(event.ctrlKey || event.metaKey) || typing) return;
      const key = event.key.toLowerCase();
      if (key === 'z' && !event.shiftKey) undo();
      else if (key === 'y' || (key === 'z' && event.shiftKey)) redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

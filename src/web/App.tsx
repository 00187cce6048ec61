import { CSPProvider } from '@base-ui/react/csp-provider';
import { Tabs } from '@base-ui/react/tabs';
import { useEffect, useMemo, useState } from 'react';
import { ChoiceSheet } from './choice/ChoiceSheet.tsx';
import { Header } from './Header.tsx';
import { layer } from './layer.ts';
import { BuildSheet } from './sheets/BuildSheet.tsx';
import { useAnswers } from './state/answers.ts';
import { redo, undo, useDesk } from './state/desk.ts';
import { SHEETS, turnTo, usePlace } from './state/place.ts';
import { TitleBlock } from './TitleBlock.tsx';

/** The whole page: one drawing sheet, ruled, with its tabs above and its title block below. */
export function App() {
  const sheet = usePlace((place) => place.sheet);
  const open = useDesk((desk) => desk.open);
  const view = useAnswers((answers) => answers.views[open]);
  const brief = useAnswers((answers) => answers.brief);
  const trouble = useAnswers((answers) => answers.trouble);
  const waiting = useAnswers((answers) => answers.waiting.length);
  const [pen, setPen] = useState(0);
  useUndoKeys();
  const manner = useMemo(() => ({ currency: brief?.currency ?? '' }), [brief]);
  return (
    <CSPProvider disableStyleElements>
      <Tabs.Root
        className="sheet"
        data-waiting={waiting}
        value={sheet}
        onValueChange={(value) => {
          const next = SHEETS.find((each) => each === value);
          if (next) turnTo(next);
        }}
      >
        <Header findings={view?.ok === true ? view.assessment.findings : []} />
        <main className="body">
          {trouble !== undefined && (
            <p className="trouble" role="alert">
              The shelf or the demo could not be read: {trouble}
            </p>
          )}
          {SHEETS.map((each) => (
            <Tabs.Panel key={each} value={each} className="panel">
              {each === 'choice' ? (
                <ChoiceSheet manner={manner} onScale={setPen} />
              ) : (
                <BuildSheet sheet={each} manner={manner} onScale={setPen} />
              )}
            </Tabs.Panel>
          ))}
          <div ref={layer} />
        </main>
        <TitleBlock pen={pen} manner={manner} />
      </Tabs.Root>
    </CSPProvider>
  );
}

/** The usual keys for undo and redo, but never inside a field that has its own. */
function useUndoKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const typing = event.target instanceof HTMLInputElement && event.target.type !== 'range';
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

import { Tabs } from '@base-ui/react/tabs';
import { useStore } from 'zustand';
import type { Finding, Severity } from '../assess/types.ts';
import { SeverityMark } from './parts/SeverityMark.tsx';
import { redo, undo, useDesk } from './state/desk.ts';
import { SHEETS, type SheetName } from './state/place.ts';
import { setTheme, useTheme } from './state/theme.ts';

/** The sheets to turn to, and the few tools that every sheet has. */
export function Header({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <header className="head">
      <h1 className="unseen">Quadwright</h1>
      <Tabs.List className="tabs" aria-label="Sheets" activateOnFocus={false}>
        {SHEETS.map((sheet, i) => (
          <Tabs.Tab key={sheet} value={sheet} className="tab">
            <span className="tab-number" aria-hidden="true">
              {String(i).padStart(2, '0')}
            </span>
            {sheet}
            <Worst sheet={sheet} findings={findings} />
          </Tabs.Tab>
        ))}
      </Tabs.List>
      <Tools />
    </header>
  );
}

/** The gravest mark among a sheet's findings. */
function Worst({ sheet, findings }: { readonly sheet: SheetName; readonly findings: readonly Finding[] }) {
  const here = findings.filter((finding) => finding.sheet === sheet);
  const worst = (['stop', 'risk'] satisfies Severity[]).find((severity) =>
    here.some((finding) => finding.severity === severity),
  );
  if (worst === undefined) return null;
  const count = here.filter((finding) => finding.severity === worst).length;
  return (
    <span className="tab-mark">
      <SeverityMark severity={worst} word={false} />
      <span className="unseen">{`${count} ${worst}`}</span>
    </span>
  );
}

function Tools() {
  const back = useStore(useDesk.temporal, (history) => history.pastStates.length);
  const forth = useStore(useDesk.temporal, (history) => history.futureStates.length);
  const theme = useTheme((state) => state.theme);
  const other = theme === 'light' ? 'dark' : 'light';
  return (
    <div className="tools" role="toolbar" aria-label="Tools">
      <button type="button" className="plain-button" disabled={back === 0} onClick={undo}>
        undo
      </button>
      <button type="button" className="plain-button" disabled={forth === 0} onClick={redo}>
        redo
      </button>
      <button type="button" className="plain-button" onClick={() => setTheme(other)}>
        <span className="unseen">turn to </span>
        {other === 'dark' ? 'blueprint' : 'paper'}
      </button>
    </div>
  );
}

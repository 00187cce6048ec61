import { Tabs } from '@base-ui/react/tabs';
import { memo } from 'react';
import { useStore } from 'zustand';
import type { Finding, Severity } from '../assess/types.ts';
import { DeskDialog } from './desk/DeskDialog.tsx';
import { FindDialog } from './find/FindDialog.tsx';
import { SeverityMark } from './parts/SeverityMark.tsx';
import { useAnswers } from './state/answers.ts';
import { redo, undo, useDesk } from './state/desk.ts';
import { type SheetName, sheetNumber, usePlace } from './state/place.ts';
import { SHEETS } from './state/sheetNames.ts';
import { setTheme, useTheme } from './state/theme.ts';

/** The sheets to turn to, and the few tools that every sheet has. */
export function Header() {
  const open = useDesk((desk) => desk.open);
  const view = useAnswers((answers) => answers.views[open]);
  const assessment = view?.ok === true ? view.assessment : undefined;
  const findings = assessment?.findings ?? [];
  // A subject's sheet is there once there is anything to show on it.
  const known = new Set<SheetName>(assessment?.measures.map(({ sheet }) => sheet));
  const sheet = usePlace((place) => place.sheet);
  const shown = SHEETS.filter((each) => !LATER.includes(each) || known.has(each) || each === sheet);
  return (
    <header className="head">
      <h1 className="unseen">Quadwright</h1>
      <Tabs.List className="tabs" aria-label="Sheets" activateOnFocus={false}>
        {shown.map((each) => (
          <Tabs.Tab key={each} value={each} className="tab">
            <span className="tab-number" aria-hidden="true">
              {sheetNumber(each)}
            </span>
            {each}
            <Worst sheet={each} findings={findings} />
          </Tabs.Tab>
        ))}
      </Tabs.List>
      <Tools />
    </header>
  );
}

const LATER: readonly SheetName[] = ['wind', 'picture', 'shake', 'knocks'];

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

const Tools = memo(function Tools() {
  const back = useStore(useDesk.temporal, (history) => history.pastStates.length);
  const forth = useStore(useDesk.temporal, (history) => history.futureStates.length);
  const theme = useTheme((state) => state.theme);
  const other = theme === 'light' ? 'dark' : 'light';
  return (
    <div className="tools" role="toolbar" aria-label="Tools">
      <DeskDialog />
      <FindDialog />
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
});

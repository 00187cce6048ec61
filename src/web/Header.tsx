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
import type { BuildView } from './worker/protocol.ts';

/** The sheets to turn to, and the few tools that every sheet has. */
export function Header() {
  const open = useDesk((desk) => desk.open);
  // A text, so that a slid build whose tabs stay as they are has none of them drawn again.
  const marks = useAnswers((answers) => marksOf(answers.views[open]));
  return <Head marks={marks} />;
}

/** The sheets that there is anything to show on, each with the gravest of its findings: `airframe:stop:2 wind::0`. */
function marksOf(view: BuildView | undefined): string {
  if (view?.ok !== true) return '';
  const { measures, findings } = view.assessment;
  const known = new Set<SheetName>(measures.map(({ sheet }) => sheet));
  for (const { sheet } of findings) known.add(sheet);
  return [...known].map((sheet) => `${sheet}:${worstOf(findings, sheet)}`).join(' ');
}

function worstOf(findings: readonly Finding[], sheet: SheetName): string {
  const here = findings.filter((finding) => finding.sheet === sheet);
  const worst = WORST.find((severity) => here.some((finding) => finding.severity === severity)) ?? '';
  return `${worst}:${here.filter(({ severity }) => severity === worst).length}`;
}

const WORST = ['stop', 'risk'] as const satisfies readonly Severity[];

const Head = memo(function Head({ marks }: { readonly marks: string }) {
  const bySheet = new Map(
    marks.split(' ').map((mark) => {
      const [sheet = '', worst = '', count = ''] = mark.split(':');
      return [sheet, { worst: WORST.find((severity) => severity === worst), count }] as const;
    }),
  );
  // A subject's sheet is there once there is anything to show on it.
  const sheet = usePlace((place) => place.sheet);
  const shown = SHEETS.filter((each) => !LATER.includes(each) || bySheet.has(each) || each === sheet);
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
            <Worst {...bySheet.get(each)} />
          </Tabs.Tab>
        ))}
      </Tabs.List>
      <Tools />
    </header>
  );
});

const LATER: readonly SheetName[] = ['wind', 'picture', 'shake', 'knocks'];

/** The gravest mark among a sheet's findings. */
function Worst({ worst, count = '' }: { readonly worst?: Severity | undefined; readonly count?: string }) {
  if (worst === undefined) return null;
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

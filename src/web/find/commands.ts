import { useMemo } from 'react';
import { sayFigure } from '../../report/sayFigure.ts';
import { useDeskOpen } from '../desk/deskOpen.ts';
import { exportBuild } from '../desk/files.ts';
import { openLesson } from '../lessons/lessonState.ts';
import { enterPart } from '../own/ownPart.ts';
import { whenThere } from '../parts/whenThere.ts';
import { slotsOf } from '../schedule/slots.ts';
import { useAnswers } from '../state/answers.ts';
import { addBuild, asItCame, change, openBuild, redo, undo, useDesk } from '../state/desk.ts';
import { setUnits, useManner, useWords } from '../state/manner.ts';
import { turnTo } from '../state/place.ts';
import { SHEETS } from '../state/sheetNames.ts';
import { setTheme, useTheme } from '../state/theme.ts';
import { startTour } from '../tour/tour.ts';

export interface Command {
  readonly id: string;
  readonly says: string;
  /** What kind of thing it is, and a little more. */
  readonly what: string;
  readonly run: () => void;
}

/** All that can be found, as the desk lies now. */
export function useCommands(): readonly Command[] {
  const { builds, open } = useDesk();
  const view = useAnswers((answers) => answers.views[open]);
  const shelf = useAnswers((answers) => answers.shelf);
  const theme = useTheme((state) => state.theme);
  const manner = useManner();
  const words = useWords();
  return useMemo(() => {
    const build = builds[open];
    const measures = view?.ok ? view.assessment.measures : [];
    const tools: readonly (readonly [string, () => void])[] = [
      ['undo', undo],
      ['redo', redo],
      [theme === 'light' ? 'blueprint' : 'paper', () => setTheme(theme === 'light' ? 'dark' : 'light')],
      ['metric units', () => setUnits('metric')],
      ['imperial units', () => setUnits('imperial')],
      ['what lies on the desk: builds, snapshots, files', () => useDeskOpen.setState({ open: true })],
      ['save the open build as a file', () => exportBuild(open)],
      ['copy the open build', () => build && addBuild({ ...build, name: `${build.name}, copy` })],
      ['take changes to the open build back', asItCame],
      ['one cause at a time: what makes two builds differ', () => openLesson()],
      ['enter a part of your own', () => enterPart('motor')],
      ['show me round', startTour],
    ];
    return [
      ...SHEETS.map((sheet) => ({
        id: `sheet ${sheet}`,
        says: sheet,
        what: 'sheet',
        run: () => turnTo(sheet),
      })),
      ...tools.map(([says, run]) => ({ id: `tool ${says}`, says, what: 'tool', run })),
      ...Object.entries(builds).map(([id, { name }]) => ({
        id: `build ${id}`,
        says: name,
        what: 'build, to open',
        run: () => {
          openBuild(id);
          turnTo('airframe');
        },
      })),
      ...measures.map((measure) => {
        const { text, unit } = sayFigure(measure, manner);
        return {
          id: `measure ${measure.id}`,
          says: words(measure.label),
          what: `figure, ${unit === '' ? text : `${text} ${unit}`}, on sheet ${measure.sheet}`,
          run: () => {
            turnTo(measure.sheet);
            showMeasure(measure.id);
          },
        };
      }),
      ...(build === undefined
        ? []
        : shelf.flatMap((row) => {
            const slot = slotsOf(build).find(({ takes }) => takes(row));
            if (slot === undefined || slot.part === row.id) return [];
            return [
              {
                id: `part ${row.id}`,
                says: row.name,
                what: `put in as ${slot.label}: ${row.says}`,
                run: () => change((now) => slot.put(now, row.id)),
              },
            ];
          })),
    ];
  }, [builds, open, view, shelf, theme, manner, words]);
}

/** Opens the how of a figure, once its sheet lies on top and the list is gone. */
function showMeasure(id: string): void {
  requestAnimationFrame(() =>
    whenThere(`[role=tabpanel]:not([hidden]) [data-measure="${id}"]`, (row) => {
      row.scrollIntoView({ block: 'center' });
      row.focus();
      row.click();
    }),
  );
}

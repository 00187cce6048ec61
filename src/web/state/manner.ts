import { useMemo } from 'react';
import { create } from 'zustand';
import type { Manner } from '../../report/sayFigure.ts';
import { restate } from '../../units/restate.ts';
import { glued } from '../parts/glued.ts';
import type { ShelfRow } from '../worker/protocol.ts';
import { useAnswers } from './answers.ts';
import { decimalMark, localText, namesWithNumbers } from './decimalMark.ts';
import { useDesk } from './desk.ts';

type System = NonNullable<Manner['system']>;
const KEY = 'quadwright-units';

function first(): System {
  try {
    return window.localStorage.getItem(KEY) === 'imperial' ? 'imperial' : 'metric';
  } catch {
    return 'metric';
  }
}

/** The units numbers are shown in; files keep their own. */
export const useUnits = create<{ readonly system: System }>()(() => ({ system: first() }));

export function setUnits(system: System): void {
  useUnits.setState({ system });
  try {
    window.localStorage.setItem(KEY, system);
  } catch {
    // The choice then lasts as long as the page.
  }
}

/** How this page says its numbers. */
export function useManner(): Manner {
  const currency = useDesk((desk) => desk.brief?.currency ?? '');
  const system = useUnits((units) => units.system);
  return useMemo(() => ({ currency, system, mark: decimalMark }), [currency, system]);
}

/** Turns a sentence into one with the units and the decimal mark that are read here. */
export function useWords(): (sentence: string) => string {
  const system = useUnits((units) => units.system);
  const shelf = useAnswers((answers) => answers.shelf);
  return useMemo(() => wordsIn(system, shelf), [system, shelf]);
}

/** The same outside of what is drawn: for a picture that is saved. */
export const wordsNow = (): ((sentence: string) => string) =>
  wordsIn(useUnits.getState().system, useAnswers.getState().shelf);

function wordsIn(system: System, shelf: readonly ShelfRow[]): (sentence: string) => string {
  const names = namesWithNumbers(shelf);
  return (sentence) => glued(restate(localText(sentence, names), { system, mark: decimalMark }));
}

import { create } from 'zustand';
import { SHEETS } from './sheetNames.ts';

export type SheetName = (typeof SHEETS)[number];
/** Sheets that show one build. */
export type BuildSheetName = Exclude<SheetName, 'choice' | 'brief' | 'shortlist'>;

/** As on a drawing: `03`. */
export const sheetNumber = (sheet: SheetName): string => String(SHEETS.indexOf(sheet)).padStart(2, '0');

interface Place {
  readonly sheet: SheetName;
}

const fromAddress = (): SheetName => {
  const name = window.location.hash.slice(1);
  return SHEETS.find((sheet) => sheet === name) ?? 'choice';
};

/** Which sheet lies on top. The address follows, so that the browser's own back and forward work. */
export const usePlace = create<Place>()(() => ({ sheet: fromAddress() }));

export function turnTo(sheet: SheetName): void {
  if (usePlace.getState().sheet === sheet) return;
  window.history.pushState(null, '', `#${sheet}`);
  usePlace.setState({ sheet });
}

window.addEventListener('popstate', () => usePlace.setState({ sheet: fromAddress() }));

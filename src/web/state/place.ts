import { create } from 'zustand';

export const SHEETS = ['choice', 'airframe', 'lift', 'heat', 'flight', 'money', 'fit'] as const;
export type SheetName = (typeof SHEETS)[number];

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

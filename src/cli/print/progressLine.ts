import type { SearchProgress } from '../../choose/shortlist/searchAll.ts';

const WIDTH = 24;

/** `searching [======------------------]  25 %, about 12 s left`; bounding counts as the first half. */
export function progressLine({ stage, done, of }: SearchProgress, seconds: number): string {
  const own = of === 0 ? 1 : done / of;
  const share = stage === 'bounding' ? own / 2 : 0.5 + own / 2;
  const full = Math.round(WIDTH * share);
  const left = share > 0.05 ? `, about ${Math.ceil((seconds * (1 - share)) / share)} s left` : '';
  return `${stage.padEnd(9)} [${'='.repeat(full)}${'-'.repeat(WIDTH - full)}] ${String(Math.round(100 * share)).padStart(3)} %${left}   `;
}

import { useEffect, useState } from 'react';
import type { SearchProgress } from '../../choose/shortlist/searchAll.ts';
import { forget, goOn, stopSearch, useSearch } from '../state/search.ts';

interface Props {
  readonly ready: boolean;
  readonly onStart: () => void;
}

/** Starts, stops and goes on; how far it is and how long it may still take. */
export function SearchBar({ ready, onStart }: Props) {
  const { is, progress, wider, began, unfinished } = useSearch();
  const running = is === 'running' || is === 'stopping';
  const now = useSeconds(running);
  const share = progress === undefined ? 0 : shareOf(progress);
  const seconds = began === undefined ? 0 : Math.max(now - began / 1000, 0);
  return (
    <div className="search-bar">
      {running ? (
        <>
          {/* Not switched off while it stops: the focus stays with it until the search can begin again. */}
          <button
            type="button"
            className="plain-button"
            aria-disabled={is === 'stopping'}
            onClick={() => is === 'running' && stopSearch()}
          >
            {is === 'stopping' ? 'stopping' : 'stop here'}
          </button>
          <progress aria-label="search" max={1} value={share} />
          <span className="search-words" role="status">
            {progress === undefined
              ? 'making propellers ready'
              : progress.stage === 'bounding'
                ? 'bounding'
                : 'searching'}
            {wider !== undefined && `, ${wider.replaceAll('-', ' ')} a tenth wider`}
            {share > 0.05 && `, ${Math.round(100 * share)} %`}
            {share > 0.05 && wider === undefined && `, ${timeLeft(seconds, share)}`}
          </span>
        </>
      ) : (
        <>
          <button type="button" className="main-button" disabled={!ready} onClick={onStart}>
            search the shelf
          </button>
          {unfinished !== undefined && (
            <span className="search-words">
              One for {unfinished.ask.brief.name} was not finished.{' '}
              <button type="button" className="plain-button small" onClick={() => void goOn()}>
                go on with it
              </button>{' '}
              <button type="button" className="plain-button small" onClick={() => void forget()}>
                forget it
              </button>
            </span>
          )}
        </>
      )}
    </div>
  );
}

/** Bounding counts as the first half. */
function shareOf({ stage, done, of }: SearchProgress): number {
  const own = of === 0 ? 1 : done / of;
  return stage === 'bounding' ? own / 2 : 0.5 + own / 2;
}

function timeLeft(seconds: number, share: number): string {
  const left = (seconds * (1 - share)) / share;
  return left < 90 ? `about ${Math.ceil(left)} s left` : `about ${Math.ceil(left / 60)} min left`;
}

/** Since the page was opened, while it is asked for. */
function useSeconds(running: boolean): number {
  const [now, setNow] = useState(0);
  useEffect(() => {
    if (!running) return;
    const tick = () => setNow(performance.now() / 1000);
    tick();
    const timer = setInterval(tick, 1000);
    return () => clearInterval(timer);
  }, [running]);
  return now;
}

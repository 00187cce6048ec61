import { useLayoutEffect, useMemo, useRef } from 'react';
import type { Flown, Scene } from '../../assess/fly/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { traceDrawings } from '../../report/traceDrawing.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { DrawingView } from '../parts/DrawingView.tsx';
import { ScrollTable } from '../parts/ScrollTable.tsx';
import { useSize } from '../parts/useSize.ts';
import { flownOf, startFlying, stopFlying, useFlying } from '../state/flying.ts';
import { useWords } from '../state/manner.ts';
import type { FlyView } from '../worker/flyProtocol.ts';

export interface FlyItProps {
  readonly build: Build;
  readonly brief: Brief;
  readonly sheet: 'flight' | 'wind';
  readonly manner: Manner;
}

const SCENES: Record<FlyItProps['sheet'], readonly Scene[]> = {
  flight: ['hover', 'bank', 'dash'],
  wind: ['gust', 'rough air'],
};
const WORDS: Record<Scene, string> = {
  hover: 'fly a hover',
  bank: 'fly a roll to the right',
  dash: 'fly a dash to top speed',
  gust: 'fly into a gust',
  'rough air': 'fly in rough air',
};
/** The same air each time, so that two builds meet the same gusts. */
const SEED = 1;
const WIDEST = 640;
/** Shown no finer than simulation and closed forms agree on the demo builds (docs/method/simulation.md). */
const KNOWN = 0.05;

/** The six-degree-of-freedom simulation, flown when asked: histories over time, and its figures beside the closed forms'. */
export default function FlyIt({ build, brief, sheet, manner }: FlyItProps) {
  const words = useWords();
  const flying = useFlying();
  const { is, share, ask } = flying;
  const view = flownOf(flying, build, brief);
  const here = ask !== undefined && SCENES[sheet].includes(ask.scene);
  const starter = useRef<HTMLButtonElement>(null);
  return (
    <section className="fly-it" aria-label="flown by the simulation">
      <h3>Flown by the simulation</h3>
      <div className="search-bar">
        {SCENES[sheet].map((scene) => (
          <button
            type="button"
            className="try-button"
            key={scene}
            ref={ask?.scene === scene ? starter : null}
            onClick={() => void startFlying({ build, brief, scene, seed: SEED })}
          >
            {WORDS[scene]}
          </button>
        ))}
        {is === 'flying' && here && (
          <>
            <progress aria-label="flight" max={1} value={share} />
            <StopButton onGone={() => starter.current?.focus()} />
          </>
        )}
        <span className="search-words" role="status">
          {here && words(standing(is, view))}
        </span>
      </div>
      {here && is === 'done' && view?.ok === true && <FlownView flown={view.flown} manner={manner} />}
    </section>
  );
}

function standing(is: 'idle' | 'flying' | 'stopped' | 'done', view: FlyView | undefined): string {
  switch (is) {
    case 'idle':
      return '';
    case 'flying':
      return 'flying';
    case 'stopped':
      return 'Stopped before its end.';
    case 'done':
      if (view === undefined) return 'Changed since it was flown.';
      return view.ok ? 'flown' : `It can not be flown: ${view.reason}.`;
  }
}

/** Gone with the end of the flight, it hands the focus on rather than drop it. */
function StopButton({ onGone }: { readonly onGone: () => void }) {
  const button = useRef<HTMLButtonElement>(null);
  const gone = useRef(onGone);
  gone.current = onGone;
  useLayoutEffect(() => {
    const own = button.current;
    return () => {
      if (document.activeElement === own) gone.current();
    };
  }, []);
  return (
    <button type="button" className="plain-button" ref={button} onClick={stopFlying}>
      stop
    </button>
  );
}

function FlownView({ flown, manner }: { readonly flown: Flown; readonly manner: Manner }) {
  const words = useWords();
  const [ref, { width }] = useSize<HTMLDivElement>();
  const wide = Math.min(width, WIDEST);
  const drawings = useMemo(
    () => (wide > 0 ? traceDrawings(flown.trace, flown.motors, flown.says, wide, manner.system) : []),
    [flown, wide, manner.system],
  );
  const { system, mark } = manner;
  const say = (value: number, quantity: Flown['figures'][number]['quantity']) =>
    formatQuantity(value, quantity, {
      ...(system ? { system } : {}),
      ...(mark ? { mark } : {}),
      band: [value * (1 - KNOWN), value * (1 + KNOWN)],
    });
  return (
    <div ref={ref}>
      <p>{words(flown.says)}</p>
      {drawings.map((drawing, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the panels keep their order
        <DrawingView key={i} drawing={drawing} pen={1} className="chart" />
      ))}
      <ScrollTable label="simulation beside closed form">
        <table className="hit-table">
          <thead>
            <tr>
              <th scope="col">figure</th>
              <th scope="col">closed form</th>
              <th scope="col">simulated</th>
            </tr>
          </thead>
          <tbody>
            {flown.figures.map(({ id, label, quantity, closedForm, simulated }) => (
              <tr key={id}>
                <th scope="row">{words(label)}</th>
                <td>{closedForm === undefined ? 'none' : say(closedForm, quantity)}</td>
                <td>{say(simulated, quantity)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
      <ul className="fly-how">
        {flown.figures.map(({ id, label, how }) => (
          <li key={id}>
            {words(label)}: {words(how)}
          </li>
        ))}
      </ul>
      <p className="own-note">
        At the most likely value of every input, on a pack half full. The two columns check each other; the
        figures of this sheet have the bands.
      </p>
    </div>
  );
}

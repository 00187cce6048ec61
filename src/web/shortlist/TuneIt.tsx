import { useMemo, useState } from 'react';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { KnobRange } from '../../choose/tune.ts';
import type { Chart } from '../../report/chart.ts';
import { ChartView } from '../parts/ChartView.tsx';
import { localNumber } from '../state/decimalMark.ts';
import { addBuild, useDesk } from '../state/desk.ts';
import { useWords } from '../state/manner.ts';
import { turnTo } from '../state/place.ts';
import { startTuning, useTuning } from '../state/tuning.ts';
import type { TuneView } from '../worker/tuneProtocol.ts';
import { useAsk } from './ask.ts';

const DEGREE = Math.PI / 180;

/** What may be turned, and how far (ours, changeable on the command line). */
const TURNS: readonly (KnobRange & { readonly words: string })[] = [
  { knob: 'pack-position', low: -0.02, high: 0.02, words: 'pack, 20 mm either way' },
  { knob: 'camera-tilt', low: 0, high: 45 * DEGREE, words: 'camera tilt, 0 to 45 deg' },
  { knob: 'layout-size', low: 0.9, high: 1.1, words: 'arms, a tenth shorter or longer' },
  { knob: 'layout-sweep', low: 0.8, high: 1.25, words: 'sweep, length over width' },
  { knob: 'arm-thickness', low: 0.003, high: 0.008, words: 'arm thickness, 3 to 8 mm' },
];
const WIDTH = 320;

/** Continuous choices of the build to start from, set so that it stands highest, with the way there. */
export function TuneIt({ build, brief }: { readonly build: Build; readonly brief: Brief }) {
  const wants = useDesk((desk) => desk.wants);
  const limits = useAsk((ask) => ask.limits);
  const { busy, view, of } = useTuning();
  const [ticked, setTicked] = useState<readonly string[]>(['pack-position', 'camera-tilt']);
  const ranges = TURNS.filter(({ knob }) => ticked.includes(knob)).map(({ knob, low, high }) => ({
    knob,
    low,
    high,
  }));
  return (
    <section className="tune" aria-label="Tune">
      <h3>Or tune {build.name}</h3>
      <div className="shortlist-seats">
        {TURNS.map(({ knob, words }) => (
          <label className="tick" key={knob}>
            <input
              type="checkbox"
              checked={ticked.includes(knob)}
              onChange={(event) =>
                setTicked(event.target.checked ? [...ticked, knob] : ticked.filter((each) => each !== knob))
              }
            />
            {words}
          </label>
        ))}
      </div>
      <div className="search-bar">
        <button
          type="button"
          className="main-button"
          disabled={busy || ranges.length === 0}
          onClick={() => void startTuning({ build, brief, wants, limits, ranges })}
        >
          {busy ? 'tuning' : 'tune it'}
        </button>
        <span className="search-words" role="status">
          {view !== undefined && of !== undefined && outcome(of, view)}
        </span>
        {view?.after !== undefined && (
          <button
            type="button"
            className="plain-button"
            onClick={() => {
              addBuild(view.build);
              turnTo('airframe');
            }}
          >
            open the tuned build
          </button>
        )}
      </div>
      {view?.after !== undefined && <Way view={view} />}
    </section>
  );
}

const points = (standing: number) => localNumber(100 * standing, 1);

function outcome(
  name: string,
  { before, after, stoppedBy, evaluations, settled, trouble }: TuneView,
): string {
  if (trouble !== undefined) return `${name} can not be tuned: ${trouble}.`;
  if (after === undefined)
    return `${name} is stopped wherever these are turned: ${stoppedBy ?? 'a limit or a rule'}.`;
  const from = before === undefined ? 'stopped' : points(before);
  return `${name}: ${from} to ${points(after)} of 100, ${evaluations} settings tried${settled ? '' : ', not settled yet'}. The best near it, not the best of all.`;
}

function Way({ view }: { readonly view: TuneView }) {
  const words = useWords();
  const chart = useMemo(() => traceChart(view), [view]);
  return (
    <div className="found-figures">
      <dl className="found-measures">
        {view.turned.map(({ label, was, is }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <span className="figure">{words(is)}</span> <small>was {words(was)}</small>
            </dd>
          </div>
        ))}
      </dl>
      {chart !== undefined && (
        <figure>
          <figcaption>The way there: the best so far over settings tried</figcaption>
          <ChartView chart={chart} width={WIDTH} />
        </figure>
      )}
    </div>
  );
}

function traceChart({ trace, evaluations }: TuneView): Chart | undefined {
  if (trace.length < 2) return undefined;
  const line = trace.map(({ tried, standing }) => ({ x: tried, y: 100 * standing }));
  const ys = line.map(({ y }) => y);
  const last = { x: evaluations, y: ys.at(-1) ?? 0 };
  const spare = 0.1 * (Math.max(...ys) - Math.min(...ys)) + 0.05;
  return {
    description: `Standing over settings tried, from ${ys[0]?.toFixed(1)} to ${last.y.toFixed(1)}`,
    across: { label: 'settings tried', low: 0, high: evaluations },
    upright: { label: 'of 100', low: Math.min(...ys) - spare, high: Math.max(...ys) + spare },
    marks: [{ kind: 'curve', points: [...line, last] }],
  };
}

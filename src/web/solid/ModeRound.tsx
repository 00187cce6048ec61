import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { ModeReport } from '../../assess/parts/airframeData.ts';
import type { Build } from '../../build/schema/build.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { useSize } from '../parts/useSize.ts';
import { localCount } from '../state/decimalMark.ts';
import { useWords } from '../state/manner.ts';
import { inWords } from './AirframeRound.tsx';
import type { RoundScene } from './airframe3d.ts';
import { calm } from './calm.ts';
import { RoundView, type Shown } from './RoundView.tsx';
import { useSeen } from './useSeen.ts';
import { useSolids } from './useSolids.ts';

const SHOWN: Shown = { discs: false, wakes: false, guards: true, balance: false, dimensions: false };
/** How far the motor that moves most is drawn to swing, over the craft's length. */
const DRAWN = 0.045;
/** One swing to and fro on the screen [s]. */
const PERIOD = 1.6;
const TURN = 2 * Math.PI;

/** A mode of the frame, swinging slowly and far larger than life; how slowly and how large is said beside it. */
export function ModeRound({
  build,
  modes,
}: {
  readonly build: Build;
  readonly modes: readonly ModeReport[];
}) {
  const [ref, { width }] = useSize<HTMLElement>();
  const seen = useSeen(ref);
  return (
    <section className="figure wide mode-round" ref={ref}>
      <h3>How it rings</h3>
      {seen && width > 0 ? (
        <Swinging build={build} modes={modes} width={Math.min(width, 1240)} />
      ) : (
        <p className="waiting">The frame swings here when it comes into view.</p>
      )}
    </section>
  );
}

function Swinging({
  build,
  modes,
  width,
}: {
  readonly build: Build;
  readonly modes: readonly ModeReport[];
  readonly width: number;
}) {
  const craft = useSolids(build);
  const words = useWords();
  const [chosen, setChosen] = useState(() => mostFelt(modes));
  const [playing, setPlaying] = useState(!calm());
  const scene = useRef<RoundScene>(undefined);
  const [ready, setReady] = useState(false);
  const onScene = useCallback((made: RoundScene) => {
    scene.current = made;
    setReady(true);
  }, []);
  const mode = modes[chosen] ?? modes[0];
  const largest = useMemo(
    () =>
      Math.max(
        1e-9,
        ...(mode?.motion.tips ?? []).map(({ motion: [x = 0, y = 0, z = 0] }) => Math.hypot(x, y, z)),
      ),
    [mode],
  );
  const drawn = craft ? DRAWN * (craft.bounds.high[0] - craft.bounds.low[0]) : 0;
  const amplitude = drawn / largest;
  const phase = useRef(0.25);

  useEffect(() => {
    if (!ready) return;
    const show = (): void => scene.current?.swing(amplitude * Math.sin(TURN * phase.current));
    if (!playing) {
      // At rest it stands at the end of its swing, beside the pale lines of the frame at rest.
      phase.current = 0.25;
      show();
      return;
    }
    let last = performance.now();
    let frame = requestAnimationFrame(function step(now) {
      phase.current += Math.min(now - last, 100) / 1000 / PERIOD;
      last = now;
      show();
      frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [ready, playing, amplitude]);

  if (craft === undefined || mode === undefined) return <p className="waiting">Being put together.</p>;
  return (
    <RoundView
      craft={craft}
      width={width}
      height={Math.round(Math.min(460, Math.max(250, width * 0.5)))}
      shown={SHOWN}
      motion={mode.motion}
      // Blade tips swing some way further than the motors they stand on.
      swings={1.5 * drawn}
      description={`${inWords(craft)} Shown: ${mode.shape} at ${Math.round(mode.frequency)} Hz.`}
      onScene={onScene}
    >
      <div className="mode-tools">
        <label>
          mode{' '}
          <select value={chosen} onChange={(event) => setChosen(Number(event.target.value))}>
            {modes.map(({ frequency, band, shape }, i) => (
              <option key={`${shape} ${frequency}`} value={i}>
                {shape}, {Math.round(frequency)} Hz ({Math.round(band[0])} to {Math.round(band[1])})
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="plain-button"
          aria-pressed={playing}
          onClick={() => setPlaying(!playing)}
        >
          {playing ? 'hold still' : 'let it swing'}
        </button>
      </div>
      <p className="figure-says">{words(sayScale(mode, drawn))}</p>
    </RoundView>
  );
}

/** The mode that the propellers stir and the flight controller feels most. */
const mostFelt = (modes: readonly ModeReport[]): number =>
  modes.reduce((best, { swing, felt }, i) => {
    const leader = modes[best];
    return swing !== undefined && (leader?.swing === undefined || felt > leader.felt) ? i : best;
  }, 0);

/** How much larger and slower than life it is drawn. */
function sayScale({ frequency, swing }: ModeReport, drawn: number): string {
  const slower = `slowed 1 : ${round(frequency * PERIOD)}`;
  const mm = withUnit((drawn * 1000).toFixed(0), 'mm');
  const still = 'The pale lines are the frame at rest.';
  if (swing === undefined)
    return `Drawn ${mm} at the motor that moves most, ${slower}. The propellers never turn as fast as this, so there is no swing of life to hold it against. ${still}`;
  return `Drawn x ${round(drawn / swing)}, ${slower}: where fresh propellers turn as fast as this mode rings, the motor that moves most swings some ${round(swing * 1e6)} \u00b5m to each side. ${still}`;
}

/** Two figures are all that a drawing's exaggeration is worth. */
const round = (value: number): string => {
  const power = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(value, 1))) - 1);
  return localCount(Math.round(value / power) * power);
};

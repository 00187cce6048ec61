import { type ReactNode, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { ArmLoad } from '../../report/solids/armStresses.ts';
import { fitted, middleOf, VIEWS, type ViewName } from '../../report/solids/axonometric.ts';
import { boundsOf } from '../../report/solids/mesh.ts';
import type { ModeMotion } from '../../report/solids/modeSwing.ts';
import { type PlaceLabel, roundMarks } from '../../report/solids/roundMarks.ts';
import type { CraftSolids, Solid } from '../../report/solids/solidsOf.ts';
import { exportRound } from '../desk/pictures.ts';
import { ShapesView } from '../parts/DrawingView.tsx';
import { Unfetched } from '../parts/Unfetched.tsx';
import { useWords } from '../state/manner.ts';
import { pick, usePicked } from '../state/picked.ts';
import { useTheme } from '../state/theme.ts';
import type { RoundScene } from './airframe3d.ts';
import { useOrbit } from './useOrbit.ts';

export interface Shown {
  readonly discs: boolean;
  readonly wakes: boolean;
  readonly guards: boolean;
  readonly balance: boolean;
  readonly dimensions: boolean;
}

interface Props {
  readonly craft: CraftSolids;
  readonly width: number;
  readonly height: number;
  readonly shown: Shown;
  readonly labels?: readonly PlaceLabel[];
  readonly loads?: { readonly loads: readonly ArmLoad[]; readonly bounds: readonly number[] };
  readonly motion?: ModeMotion;
  /** How far the motion is drawn to carry anything [m]. */
  readonly swings?: number;
  /** All that is seen, in words. */
  readonly description: string;
  /** [mm] of the aircraft for a pixel in a view square on; nought in any other. */
  readonly onScale?: (pen: number) => void;
  /** Told when the view stands, and when its colours have changed. */
  readonly onScene?: (scene: RoundScene) => void;
  readonly children?: ReactNode;
}

const NO_LABELS: readonly PlaceLabel[] = [];
/** Left free round the craft for lines of measure [px]. */
const ROOM = 48;
const NAMES = Object.keys(VIEWS) as readonly ViewName[];

/** The aircraft in the round: turned by mouse, finger and keys, with marks in ink over it. */
export function RoundView(props: Props) {
  const words = useWords();
  const {
    craft,
    width,
    height,
    shown,
    labels = NO_LABELS,
    loads,
    motion,
    swings = 0,
    description,
    onScale,
    onScene,
  } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useRef<RoundScene>(undefined);
  const [state, setState] = useState<'waiting' | 'ready' | 'absent' | 'unfetched'>('waiting');
  const [held, setHeld] = useState(true);
  const theme = useTheme(({ theme: now }) => now);
  const picked = usePicked(({ part }) => part);
  const [named, setNamed] = useState<Solid>();
  const orbit = useOrbit((x, y) => {
    const solid = scene.current?.at(x, y);
    setNamed(solid);
    pick(solid?.part);
  });
  const { look, zoom, view } = orbit;

  // A named view fills the window; turned out of it the scale stands.
  const base = useRef(0);
  const sighting = useMemo(() => {
    const whole = fitted(craft.reach, view ? VIEWS[view] : look, {
      width,
      height,
      room: !shown.dimensions ? 22 : width < 480 ? 40 : ROOM,
      spare: swings,
    });
    if (view || base.current === 0) base.current = whole.pen;
    return { ...whole, look, pen: base.current / zoom };
  }, [craft, look, zoom, view, width, height, shown.dimensions, swings]);

  useEffect(() => {
    let gone = false;
    import('./airframe3d.ts').then(
      ({ openRound }) => {
        if (gone || canvas.current === null) return;
        scene.current = openRound(canvas.current, setHeld);
        setState(scene.current ? 'ready' : 'absent');
      },
      () => {
        if (!gone) setState('unfetched');
      },
    );
    return () => {
      gone = true;
      scene.current?.dispose();
      scene.current = undefined;
    };
  }, []);
  const ready = state === 'ready';
  useLayoutEffect(() => {
    if (ready) scene.current?.see(sighting);
  }, [ready, sighting]);
  useLayoutEffect(() => {
    if (ready) scene.current?.show(craft);
  }, [ready, craft]);
  useLayoutEffect(() => {
    if (ready) scene.current?.overlay(shown);
  }, [ready, shown]);
  useLayoutEffect(() => {
    if (ready) scene.current?.pick(picked);
  }, [ready, picked]);
  useLayoutEffect(() => {
    if (ready) scene.current?.load(loads?.loads ?? [], loads?.bounds ?? []);
  }, [ready, loads]);
  useLayoutEffect(() => {
    if (ready) scene.current?.mode(motion);
  }, [ready, motion]);
  // The style sheet has its new colours by then: they are read from the page.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme is read through the style sheet
  useEffect(() => {
    if (!ready || scene.current === undefined) return;
    scene.current.repaint();
    onScene?.(scene.current);
  }, [ready, theme]);
  useLayoutEffect(
    () => onScale?.(view && view !== 'three-quarter' ? sighting.pen * 1000 : 0),
    [onScale, view, sighting.pen],
  );

  const marks = useMemo(() => {
    const own =
      named && named.part === picked ? craft.solids.find(({ name }) => name === named.name) : undefined;
    const one = own ?? craft.solids.find(({ part }) => part === picked);
    const pickedLabel = one ? [{ at: middleOfSolid(one), text: one.name }] : [];
    return roundMarks(craft, sighting, { ...shown, labels: [...labels, ...pickedLabel] });
  }, [craft, sighting, shown, labels, picked, named]);

  const save = (): void => {
    const view = scene.current?.canvas();
    const frame = { left: 0, top: 0, width, height };
    if (view) void exportRound(view, { frame, shapes: marks, description }, `${craft.name} in the round`);
  };

  if (state === 'absent')
    return (
      <p className="round-absent" role="status">
        This browser has no WebGL, so the view in the round stays away. {words(description)} The plan and the
        side view show the same aircraft to scale.
      </p>
    );
  if (state === 'unfetched') return <Unfetched />;
  return (
    <div className="round">
      <div className="round-views">
        <fieldset className="sorts" aria-label="view">
          {NAMES.map((name) => (
            <button
              key={name}
              type="button"
              className="sort"
              aria-pressed={view === name}
              onClick={() => orbit.turnTo(name)}
            >
              {name}
            </button>
          ))}
        </fieldset>
        <span className="round-zoom">
          <button
            type="button"
            className="plain-button"
            aria-label="larger"
            onClick={() => orbit.zoomBy(1.25)}
          >
            +
          </button>
          <button
            type="button"
            className="plain-button"
            aria-label="smaller"
            onClick={() => orbit.zoomBy(0.8)}
          >
            {'\u2212'}
          </button>
          <button type="button" className="plain-button small" onClick={save}>
            save PNG<span className="unseen"> of the view in the round</span>
          </button>
        </span>
      </div>
      <div
        className="round-window"
        style={{ width, height }}
        role="application"
        aria-label={`${craft.name} in the round. Arrow keys turn it, plus and minus change its size, nought brings it back.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys turn it
        tabIndex={0}
        onKeyDown={orbit.keys}
        data-round={state}
        data-view={view ?? 'free'}
        {...orbit.pointer}
      >
        <canvas ref={canvas} className="round-canvas" />
        <svg className="drawing round-marks" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          <ShapesView shapes={marks} />
        </svg>
      </div>
      {!held && (
        <p className="round-absent" role="status">
          The browser has taken the view in the round away for now, and draws it again when it gives it back.
          The plan and the side view show the same aircraft to scale.
        </p>
      )}
      <p className="unseen">{words(description)}</p>
      {props.children}
    </div>
  );
}

const middleOfSolid = ({ mesh }: Solid) => middleOf(boundsOf([mesh]));

import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useRef, useState } from 'react';
import { type Look, VIEWS, type ViewName } from '../../report/solids/axonometric.ts';
import { calm } from './calm.ts';

const DEGREE = Math.PI / 180;
/** A key's step, and a pixel of drag. */
const STEP = 10 * DEGREE;
const PIXEL = 0.45 * DEGREE;
const NEAREST = 8;
/** A view is turned to in this time [ms]. */
const TURNING = 320;

interface Orbit {
  readonly look: Look;
  readonly zoom: number;
  /** The trade's view that is on, until it is turned out of. */
  readonly view: ViewName | undefined;
  readonly turnTo: (view: ViewName) => void;
  readonly zoomBy: (factor: number) => void;
  readonly keys: (event: KeyboardEvent) => void;
  readonly pointer: {
    readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerCancel: (event: PointerEvent<HTMLElement>) => void;
  };
}

/** Turning an aircraft about by mouse, finger and keys. `onTap` is told of a press that moved nothing. */
export function useOrbit(onTap: (x: number, y: number) => void): Orbit {
  const [look, setLook] = useState<Look>(VIEWS['three-quarter']);
  const [zoom, setZoom] = useState(1);
  const [view, setView] = useState<ViewName | undefined>('three-quarter');
  const fingers = useRef(new Map<number, { readonly x: number; readonly y: number }>());
  const moved = useRef(0);
  const turning = useRef(0);
  useEffect(() => () => cancelAnimationFrame(turning.current), []);

  const zoomBy = useCallback(
    (factor: number) => setZoom((now) => Math.min(NEAREST, Math.max(0.5, now * factor))),
    [],
  );
  const turnBy = useCallback((right: number, up: number) => {
    cancelAnimationFrame(turning.current);
    setView(undefined);
    setLook(({ azimuth, elevation }) => ({
      azimuth: azimuth - right,
      elevation: Math.min(Math.PI / 2, Math.max(-Math.PI / 2, elevation + up)),
    }));
  }, []);
  const turnTo = useCallback((name: ViewName) => {
    cancelAnimationFrame(turning.current);
    setView(name);
    setZoom(1);
    const to = VIEWS[name];
    if (calm()) return setLook(to);
    const start = performance.now();
    setLook((from) => {
      // The short way round.
      const round = 2 * Math.PI;
      const turn = ((((to.azimuth - from.azimuth + Math.PI) % round) + round) % round) - Math.PI;
      const step = (time: number): void => {
        const share = Math.min(1, (time - start) / TURNING);
        const eased = share * share * (3 - 2 * share);
        setLook({
          azimuth: share === 1 ? to.azimuth : from.azimuth + eased * turn,
          elevation: from.elevation + eased * (to.elevation - from.elevation),
        });
        if (share < 1) turning.current = requestAnimationFrame(step);
      };
      cancelAnimationFrame(turning.current);
      turning.current = requestAnimationFrame(step);
      return from;
    });
  }, []);

  const keys = (event: KeyboardEvent): void => {
    const turns: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-STEP, 0],
      ArrowRight: [STEP, 0],
      ArrowUp: [0, STEP],
      ArrowDown: [0, -STEP],
    };
    const turn = turns[event.key];
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (turn) turnBy(...turn);
    else if (event.key === '+' || event.key === '=') zoomBy(1.25);
    else if (event.key === '-') zoomBy(0.8);
    else if (event.key === '0') turnTo('three-quarter');
    else return;
    event.preventDefault();
  };

  const spread = (): number => {
    const [a, b] = [...fingers.current.values()];
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  };
  const up = (event: PointerEvent<HTMLElement>): void => {
    const last = fingers.current.delete(event.pointerId) && fingers.current.size === 0;
    if (!last || moved.current > 5 || event.type === 'pointercancel') return;
    const box = event.currentTarget.getBoundingClientRect();
    onTap(event.clientX - box.left, event.clientY - box.top);
  };
  return {
    look,
    zoom,
    view,
    turnTo,
    zoomBy,
    keys,
    pointer: {
      onPointerDown: (event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        if (fingers.current.size === 0) moved.current = 0;
        fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
      },
      onPointerMove: (event) => {
        const from = fingers.current.get(event.pointerId);
        if (from === undefined) return;
        const before = spread();
        fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
        const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
        moved.current += Math.abs(dx) + Math.abs(dy);
        if (before > 0) zoomBy(spread() / before);
        else turnBy(dx * PIXEL, dy * PIXEL);
      },
      onPointerUp: up,
      onPointerCancel: up,
    },
  };
}

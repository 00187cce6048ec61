import { type KeyboardEvent, memo, type PointerEvent, useRef } from 'react';
import type { Build } from '../../build/schema/build.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { seenFromAbove } from '../../report/path.ts';
import type { Frame, PartKey } from '../../report/shapes.ts';
import { change, drag, settle } from '../state/desk.ts';
import { type Movable, withCameraAt, withMotorAt, withPackAt } from './moves.ts';

interface Props {
  readonly aircraft: AircraftPicture;
  readonly frame: Frame;
  /** [mm] of the aircraft for a pixel. */
  readonly pen: number;
  readonly movable: Movable & { readonly build: Build };
  /** Told when a part is taken hold of and let go. */
  readonly onHold: (held: boolean) => void;
}

/** Something in the plan that can be taken hold of, at a place [m], so large [m]. */
interface Handle {
  readonly key: string;
  /** As the drawing groups its shapes. */
  readonly part: PartKey;
  readonly label: string;
  readonly at: { readonly x: number; readonly y: number };
  readonly size: { readonly x: number; readonly y: number };
  readonly round: boolean;
  /** The build when it has been moved forward and to the right by so much [m]. */
  readonly moved: (by: { readonly x: number; readonly y: number }) => (build: Build) => Build;
}

const STEP = 0.001;
const LONG_STEP = 0.005;

/** Motors, pack and cameras, to be dragged in the plan or moved with the arrow keys. */
export const Handles = memo(function Handles({ aircraft, frame, pen, movable, onHold }: Props) {
  return handlesOf(aircraft, movable).map((handle) => {
    const { x, y } = seenFromAbove(handle.at);
    const [width, height] = [(handle.size.y * 1000) / pen, (handle.size.x * 1000) / pen];
    return (
      <HandleButton
        key={handle.key}
        handle={handle}
        pen={pen}
        onHold={onHold}
        box={{
          left: (x - frame.left) / pen - width / 2,
          top: (y - frame.top) / pen - height / 2,
          width,
          height,
        }}
      />
    );
  });
});

function HandleButton({
  handle,
  pen,
  box,
  onHold,
}: {
  readonly handle: Handle;
  readonly pen: number;
  readonly box: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
  readonly onHold: (held: boolean) => void;
}) {
  // The handle as it was when it was taken hold of: moves are told from there.
  const from = useRef<{ readonly handle: Handle; readonly x: number; readonly y: number }>(undefined);
  const down = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    from.current = { handle, x: event.clientX, y: event.clientY };
    onHold(true);
  };
  const move = (event: PointerEvent<HTMLButtonElement>) => {
    const start = from.current;
    if (start === undefined) return;
    const metres = (pixels: number): number => Math.round(pixels * pen * 2) / 2000;
    const by = { x: -metres(event.clientY - start.y), y: metres(event.clientX - start.x) };
    drag(start.handle.moved(by));
  };
  const up = () => {
    if (from.current === undefined) return;
    from.current = undefined;
    settle();
    onHold(false);
  };
  const key = (event: KeyboardEvent) => {
    const step = event.shiftKey ? LONG_STEP : STEP;
    const way = { ArrowUp: [step, 0], ArrowDown: [-step, 0], ArrowRight: [0, step], ArrowLeft: [0, -step] }[
      event.key
    ];
    if (way === undefined) return;
    event.preventDefault();
    const [x = 0, y = 0] = way;
    change(handle.moved({ x, y }));
  };
  return (
    <button
      type="button"
      className={handle.round ? 'handle round' : 'handle'}
      aria-label={`${handle.label}, to move with the arrow keys`}
      title={`${handle.label}: drag, or arrow keys`}
      style={box}
      data-part={handle.part}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
      onKeyDown={key}
    />
  );
}

function handlesOf(
  aircraft: AircraftPicture,
  { build, layout, stations }: Props['movable'],
): readonly Handle[] {
  const motors = aircraft.rotors.flatMap((rotor, i): readonly Handle[] => {
    const station = stations[i];
    const doubled = aircraft.rotors
      .slice(0, i)
      .some((other) => Math.hypot(other.at.x - rotor.at.x, other.at.y - rotor.at.y) < 1e-4);
    if (station === undefined || doubled) return [];
    const size = 2.4 * rotor.motorRadius;
    return [
      {
        key: station.name,
        part: 'motors',
        label: `${station.name} motor`,
        at: rotor.at,
        size: { x: size, y: size },
        round: true,
        moved: (by) => (now) => ({
          ...now,
          frame: {
            ...now.frame,
            layout: withMotorAt(layout, i, { x: rotor.at.x + by.x, y: rotor.at.y + by.y }),
          },
        }),
      },
    ];
  });
  const boxes = (parts: readonly string[]) => aircraft.boxes.filter(({ part }) => parts.includes(part));
  const pack = boxes(['pack']).map(
    (box): Handle => ({
      key: 'pack',
      part: 'pack',
      label: 'pack',
      at: { x: box.at.x - box.size.x * 0.1, y: box.at.y },
      size: { x: box.size.x * 0.8, y: box.size.y },
      round: false,
      moved: (by) => (now) => withPackAt(now, build.pack.offset + by.x),
    }),
  );
  const cameras = boxes(['camera', 'recording']).map(
    (box, i): Handle => ({
      key: `camera ${i}`,
      part: box.part,
      label: box.part === 'camera' ? 'flying camera' : 'recording camera',
      at: box.at,
      size: box.size,
      round: false,
      moved: (by) => (now) => withCameraAt(now, i, { x: box.at.x + by.x, y: box.at.y, z: box.at.z }),
    }),
  );
  return [...pack, ...cameras, ...motors];
}

import type { ReactNode } from 'react';
import type { Build } from '../../build/schema/build.ts';
import type { PartKind } from '../../build/schema/part.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { useAnswers } from '../state/answers.ts';
import { change, drag, settle } from '../state/desk.ts';
import type { ShelfRow } from '../worker/protocol.ts';
import { Adjust } from './Adjust.tsx';
import { LAYOUT_KINDS, type LayoutChoice, layoutOfKind, spacingOf } from './layouts.ts';
import { Picker } from './Picker.tsx';

interface Props {
  readonly build: Build;
  readonly aircraft: AircraftPicture | undefined;
}

const DEGREE = Math.PI / 180;

/** The parts of the open build, numbered as in the drawing; any can be changed in its place. */
export function Schedule({ build, aircraft }: Props) {
  const shelf = useAnswers((answers) => answers.shelf);
  const of = (kind: PartKind) => shelf.filter((row) => row.kind === kind);
  return (
    <section className="schedule" aria-label="Parts, to change">
      <Entry number={1} name="frame">
        <PartPicker
          label="frame"
          rows={of('frame')}
          part={build.frame.part}
          // Another frame comes with its own layout.
          onChoose={(part) => change((now) => ({ ...now, frame: { part } }))}
        />
      </Entry>
      <Entry number={2} name="layout">
        <LayoutPicker build={build} aircraft={aircraft} />
      </Entry>
      <Entry number={3} name="motors">
        <PartPicker
          label="motors"
          rows={of('motor')}
          part={build.motors.part}
          onChoose={(part) => change((now) => ({ ...now, motors: { ...now.motors, part, except: [] } }))}
        />
      </Entry>
      <Entry number={4} name="propellers">
        <PartPicker
          label="propellers"
          rows={of('propeller')}
          part={build.propellers.part}
          onChoose={(part) =>
            change((now) => ({ ...now, propellers: { ...now.propellers, part, except: [] } }))
          }
        />
      </Entry>
      <Entry number={5} name="pack">
        <PartPicker
          label="pack"
          rows={of('pack')}
          part={build.pack.part}
          onChoose={(part) => change((now) => ({ ...now, pack: { ...now.pack, part } }))}
        />
        <Adjust
          label="forward"
          unit="mm"
          min={-40}
          max={40}
          value={build.pack.offset * 1000}
          onMove={(offset) => drag((now) => ({ ...now, pack: { ...now.pack, offset: offset / 1000 } }))}
          onSettle={settle}
        />
      </Entry>
      {build.controllers && (
        <Entry number={6} name="controllers">
          <PartPicker
            label="controllers"
            rows={of('controller')}
            part={build.controllers.part}
            onChoose={(part) => change((now) => ({ ...now, controllers: { part } }))}
          />
        </Entry>
      )}
      <FlyingCamera build={build} rows={of('camera')} />
    </section>
  );
}

function Entry({
  number,
  name,
  children,
}: {
  readonly number: number;
  readonly name: string;
  readonly children: ReactNode;
}) {
  return (
    <div className="entry" data-entry={name}>
      <span className="entry-name">
        <span className="balloon" aria-hidden="true">
          {number}
        </span>
        {name}
      </span>
      {children}
    </div>
  );
}

interface PartPickerProps {
  readonly label: string;
  readonly rows: readonly ShelfRow[];
  readonly part: string;
  readonly onChoose: (part: string) => void;
}

function PartPicker({ label, rows, part, onChoose }: PartPickerProps) {
  // A part that the shelf does not have stays visible: the finding about it must make sense.
  const choices = rows.some((row) => row.id === part) ? rows : [{ id: part, name: part }, ...rows];
  return <Picker label={label} value={part} choices={choices} onChoose={onChoose} />;
}

const AS_SOLD = 'as the frame is sold';

function LayoutPicker({ build, aircraft }: Props) {
  const layout = build.frame.layout;
  const kind = LAYOUT_KINDS.find((each) => each === layout?.kind);
  const spacing = aircraft ? spacingOf(aircraft) : undefined;
  const choices = [AS_SOLD, ...LAYOUT_KINDS].map((id) => ({ id, name: id }));
  const set = (next: LayoutChoice, apart: number) => (now: Build) => ({
    ...now,
    frame: { ...now.frame, layout: layoutOfKind(next, apart) },
  });
  return (
    <>
      <Picker
        label="layout"
        value={kind ?? AS_SOLD}
        choices={choices}
        onChoose={(id) => {
          const next = LAYOUT_KINDS.find((each) => each === id);
          if (next === undefined) change(asSold);
          else if (spacing !== undefined) change(set(next, spacing));
        }}
      />
      {kind && spacing !== undefined && (
        <Adjust
          label="nearest motors"
          unit="mm"
          min={60}
          max={360}
          value={spacing * 1000}
          onMove={(apart) => drag(set(kind, apart / 1000))}
          onSettle={settle}
        />
      )}
    </>
  );
}

function asSold(build: Build): Build {
  const { layout: _, ...frame } = build.frame;
  return { ...build, frame };
}

function FlyingCamera({ build, rows }: { readonly build: Build; readonly rows: readonly ShelfRow[] }) {
  const index = build.cameras.findIndex((camera) => camera.role === 'flying');
  const camera = build.cameras[index];
  if (camera === undefined) return null;
  const edit = (values: Partial<typeof camera>) => (now: Build) => ({
    ...now,
    cameras: now.cameras.map((each, i) => (i === index ? { ...each, ...values } : each)),
  });
  return (
    <Entry number={7} name="camera">
      <PartPicker
        label="flying camera"
        rows={rows}
        part={camera.part}
        onChoose={(part) => change(edit({ part }))}
      />
      <Adjust
        label="tilt"
        unit="deg"
        min={0}
        max={60}
        value={camera.tilt / DEGREE}
        onMove={(tilt) => drag(edit({ tilt: tilt * DEGREE }))}
        onSettle={settle}
      />
    </Entry>
  );
}

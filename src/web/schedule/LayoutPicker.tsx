import type { Build } from '../../build/schema/build.ts';
import { change, drag, settle } from '../state/desk.ts';
import { Adjust } from './Adjust.tsx';
import { LAYOUT_KINDS, type LayoutChoice, layoutOfKind } from './layouts.ts';
import { Picker } from './Picker.tsx';

interface Props {
  /** Absent when it is the one that the frame is sold with. */
  readonly layout: Build['frame']['layout'];
  /** Between the nearest motors [m]; absent while nothing is drawn. */
  readonly spacing: number | undefined;
}

const AS_SOLD = 'as the frame is sold';
const DRAGGED = 'motors each where they are';

/** The trade's layouts with the same parts, and how far the motors stand apart. */
export function LayoutPicker({ layout, spacing }: Props) {
  const kind = LAYOUT_KINDS.find((each) => each === layout?.kind);
  const choices = [AS_SOLD, ...LAYOUT_KINDS, ...(layout?.kind === 'positions' ? [DRAGGED] : [])];
  const set = (next: LayoutChoice, apart: number) => (now: Build) => ({
    ...now,
    frame: { ...now.frame, layout: layoutOfKind(next, apart) },
  });
  return (
    <>
      <Picker
        label="layout"
        value={kind ?? (layout?.kind === 'positions' ? DRAGGED : AS_SOLD)}
        choices={choices.map((id) => ({ id, name: id }))}
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

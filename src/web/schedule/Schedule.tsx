import {
  type ComponentProps,
  type FocusEvent,
  Fragment,
  memo,
  type ReactNode,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { Build } from '../../build/schema/build.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { useAnswers } from '../state/answers.ts';
import { change, drag, settle } from '../state/desk.ts';
import { pick, usePicked } from '../state/picked.ts';
import { Adjust } from './Adjust.tsx';
import { LayoutPicker } from './LayoutPicker.tsx';
import { spacingOf } from './layouts.ts';
import { PartPicker } from './PartPicker.tsx';
import { ADDITIONS, type Slot, slotsOf } from './slots.ts';

interface Props {
  readonly build: Build;
  readonly aircraft: AircraftPicture | undefined;
}

const DEGREE = Math.PI / 180;
/** The places that have a number in the drawing. */
const NUMBERED: Readonly<Record<string, number>> = {
  frame: 1,
  motors: 3,
  propellers: 4,
  pack: 5,
  controllers: 6,
};

/** The parts of the open build, numbered as in the drawing; any can be changed in its place. */
export const Schedule = memo(function Schedule({ build, aircraft }: Props) {
  const [all, setAll] = useState(false);
  const slots = useSlots(build);
  // The same elements as long as what they show is the same: entries of what is not slid are left alone.
  const { offset } = build.pack;
  const packPlace = useMemo(() => <PackPlace offset={offset} />, [offset]);
  const tilts = useMemo(() => build.cameras.map(tiltOf), [build.cameras]);
  const flying = build.cameras.findIndex(({ role }) => role === 'flying');
  const main = (slot: Slot): boolean =>
    (NUMBERED[slot.key] !== undefined && slot.part !== undefined) || slot.key === `cameras[${flying}]`;
  const rest = slots.filter((slot) => !main(slot));
  return (
    <>
      <section className="schedule" aria-label="Parts, to change" onFocus={pickFocused}>
        {slots.filter(main).map((slot) => (
          <Fragment key={slot.key}>
            <SlotEntry slot={slot} number={NUMBERED[slot.key] ?? 7}>
              {slot.key === 'pack' ? packPlace : slot.key === `cameras[${flying}]` ? tilts[flying] : null}
            </SlotEntry>
            {slot.key === 'frame' && (
              <LayoutEntry layout={build.frame.layout} spacing={aircraft && spacingOf(aircraft)} />
            )}
          </Fragment>
        ))}
      </section>
      <div className="schedule-more">
        <button type="button" className="plain-button" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'fewer parts' : `every part on board: ${rest.filter(({ part }) => part).length} more`}
        </button>
      </div>
      {all && (
        <section className="schedule" aria-label="Every other part, to change" onFocus={pickFocused}>
          {rest.map((slot) => (
            <SlotEntry key={slot.key} slot={slot}>
              {slot.key.startsWith('cameras') && tilts[Number(slot.key.slice(8, -1))]}
            </SlotEntry>
          ))}
          <Additions />
        </section>
      )}
    </>
  );
});

/** The same places as long as no part of them has changed, however the build is moved about. */
function useSlots(build: Build): readonly Slot[] {
  const last = useRef<readonly Slot[]>([]);
  const fresh = useMemo(() => slotsOf(build), [build]);
  const told = (slots: readonly Slot[]) =>
    slots.map(({ key, label, part }) => `${key} ${label} ${part}`).join('|');
  if (told(fresh) !== told(last.current)) last.current = fresh;
  return last.current;
}

/** The part whose entry is being changed is the one picked. */
function pickFocused({ target }: FocusEvent<HTMLElement>): void {
  const slot = target.closest<HTMLElement>('[data-slot]')?.dataset.slot;
  if (slot !== undefined) pick(slot);
}

const LayoutEntry = memo(function LayoutEntry(props: ComponentProps<typeof LayoutPicker>) {
  return (
    <div className="entry" data-entry="layout">
      <span className="entry-name">
        <span className="balloon" aria-hidden="true">
          2
        </span>
        layout
      </span>
      <LayoutPicker {...props} />
    </div>
  );
});

const SlotEntry = memo(function SlotEntry({
  slot,
  number,
  children,
}: {
  readonly slot: Slot;
  readonly number?: number;
  readonly children?: ReactNode;
}) {
  const shelf = useAnswers((answers) => answers.shelf);
  const rows = useMemo(() => shelf.filter(slot.takes), [shelf, slot]);
  const picked = usePicked(({ part }) => part === slot.key);
  const { empty } = slot;
  return (
    <div
      className="entry"
      data-entry={slot.key.startsWith('cameras') && number ? 'camera' : slot.key}
      data-slot={slot.key}
      data-picked={picked}
    >
      <span className="entry-name">
        {number !== undefined && (
          <span className="balloon" aria-hidden="true">
            {number}
          </span>
        )}
        {slot.key.startsWith('cameras') && number ? 'camera' : slot.label}
        {empty && slot.part !== undefined && number === undefined && (
          <button
            type="button"
            className="plain-button small entry-out"
            aria-label={`take ${slot.label} out`}
            onClick={() => change(empty)}
          >
            take out
          </button>
        )}
      </span>
      <PartPicker
        label={slot.label}
        rows={rows}
        part={slot.part}
        kind={slot.kind}
        tried={slot.put}
        onChoose={(part) => change((now) => slot.put(now, part))}
      />
      {children}
    </div>
  );
});

const Additions = memo(function Additions() {
  const shelf = useAnswers((answers) => answers.shelf);
  return ADDITIONS.map(({ label, takes, put }) => (
    <div className="entry" key={label}>
      <span className="entry-name">add</span>
      <PartPicker
        label={`add ${label}`}
        rows={shelf.filter(takes)}
        part={undefined}
        none={label}
        onChoose={(part) => change((now) => put(now, part))}
      />
    </div>
  ));
});

function PackPlace({ offset }: { readonly offset: number }) {
  return (
    <Adjust
      label="forward"
      unit="mm"
      min={-40}
      max={40}
      value={offset * 1000}
      onMove={(moved) => drag((now) => ({ ...now, pack: { ...now.pack, offset: moved / 1000 } }))}
      onSettle={settle}
    />
  );
}

const tiltOf = ({ tilt }: Build['cameras'][number], index: number) => (
  <Tilt key={index} tilt={tilt} index={index} />
);

function Tilt({ tilt, index }: { readonly tilt: number; readonly index: number }) {
  return (
    <Adjust
      label="tilt"
      unit="deg"
      min={0}
      max={60}
      value={tilt / DEGREE}
      onMove={(turned) =>
        drag((now) => ({
          ...now,
          cameras: now.cameras.map((each, i) => (i === index ? { ...each, tilt: turned * DEGREE } : each)),
        }))
      }
      onSettle={settle}
    />
  );
}

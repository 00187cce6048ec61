import { Combobox } from '@base-ui/react/combobox';
import { memo, useMemo, useState } from 'react';
import type { Build } from '../../build/schema/build.ts';
import type { PartKind } from '../../build/schema/partKinds.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import { layer } from '../layer.ts';
import { enterPart } from '../own/ownPart.ts';
import { useSteady } from '../parts/useSteady.ts';
import { localNumber } from '../state/decimalMark.ts';
import { useManner } from '../state/manner.ts';
import type { Glance, ShelfRow } from '../worker/protocol.ts';
import { PickerIcon } from './Picker.tsx';
import { useGlances } from './useGlances.ts';

interface Props {
  readonly label: string;
  readonly rows: readonly ShelfRow[];
  /** Id of the part in place. */
  readonly part: string | undefined;
  readonly onChoose: (part: string) => void;
  /** A build with another part in its place, to tell beforehand what it would do. */
  readonly tried?: (build: Build, part: string) => Build;
  /** What may go here, where a part of the user's own can be entered for it. */
  readonly kind?: PartKind;
  /** Said where nothing is chosen. */
  readonly none?: string;
}

const NO_ROWS: readonly ShelfRow[] = [];

type Sort = 'shelf' | 'price' | 'mass' | 'minutes' | 'lift';
const SORTS: readonly { readonly id: Sort; readonly word: string }[] = [
  { id: 'price', word: 'cheapest' },
  { id: 'mass', word: 'lightest' },
  { id: 'minutes', word: 'longest' },
  { id: 'lift', word: 'strongest' },
];
/** Known only of parts that are tried. */
const TRIED: readonly Sort[] = ['minutes', 'lift'];

/** A part chosen from the shelf: searched by any word, sorted, and each row told with what it would do. */
export function PartPicker({ onChoose, ...props }: Props) {
  return <SteadyPicker {...props} onChoose={useSteady(onChoose)} />;
}

/** A schedule of twenty is not worked out anew at every step of a slider; of one label `tried` does the same. */
const SteadyPicker = memo(
  OpenPicker,
  (past, now) =>
    past.label === now.label && past.rows === now.rows && past.part === now.part && past.none === now.none,
);

function OpenPicker({ label, rows, part, onChoose, tried, kind, none = 'none' }: Props) {
  const manner = useManner();
  const [open, setOpen] = useState(false);
  const [sort, setSort] = useState<Sort>('shelf');
  const [clean, setClean] = useState(false);
  const [own, setOwn] = useState(false);
  const [against, setAgainst] = useState(false);
  const glances = useGlances(open ? rows : NO_ROWS, tried);
  const chosen = rows.find((row) => row.id === part);
  const shown = useMemo(() => {
    // A part that the shelf does not have stays visible: the finding about it must make sense.
    const all = part === undefined || chosen ? rows : [missing(part), ...rows];
    const kept = all.filter(
      (row) => row.id === part || ((!clean || isClean(glances[row.id])) && (!own || row.own)),
    );
    return kept.toSorted(order(sort, glances));
  }, [rows, part, chosen, clean, own, sort, glances]);
  const value = shown.find((row) => row.id === part) ?? null;
  return (
    <Combobox.Root
      items={shown}
      value={value}
      onValueChange={(row: ShelfRow | null) => {
        if (row !== null && row.id !== part) onChoose(row.id);
      }}
      isItemEqualToValue={(a, b) => a?.id === b?.id}
      itemToStringLabel={(row) => (row === null ? '' : `${row.name} ${row.says}`)}
      open={open}
      onOpenChange={setOpen}
      autoHighlight
    >
      <Combobox.Trigger className="picker" aria-label={label}>
        <span className="picker-value">{chosen?.name ?? part ?? none}</span>
        <PickerIcon />
      </Combobox.Trigger>
      <Combobox.Portal container={layer}>
        <Combobox.Positioner className="layer" sideOffset={4} collisionPadding={12} align="start">
          <Combobox.Popup className="picker-list shelf-list" aria-label={`${label} on the shelf`}>
            <div className="shelf-head">
              <Combobox.Input
                className="search"
                aria-label={`search ${label}`}
                placeholder="search the shelf"
              />
              <fieldset className="sorts" aria-label="order">
                {SORTS.filter(({ id }) => tried !== undefined || !TRIED.includes(id)).map(({ id, word }) => (
                  <button
                    key={id}
                    type="button"
                    className="sort"
                    aria-pressed={sort === id}
                    onClick={() => setSort(sort === id ? 'shelf' : id)}
                  >
                    {word}
                  </button>
                ))}
              </fieldset>
              <span className="shelf-ticks">
                {tried && <Tick says="without a stop" on={clean} onTick={setClean} />}
                {tried && chosen && <Tick says="beside the one in place" on={against} onTick={setAgainst} />}
                {rows.some((row) => row.own) && <Tick says="only yours" on={own} onTick={setOwn} />}
              </span>
            </div>
            <Combobox.Empty className="shelf-empty">
              {shown.length === 0 ? 'Nothing on the shelf goes here.' : 'No part has these words.'}
            </Combobox.Empty>
            <Combobox.List className="shelf-rows">
              {(row: ShelfRow) => (
                <Combobox.Item key={row.id} value={row} className="picker-item shelf-row">
                  <span className="picker-name">
                    {row.name}
                    {row.own && <span className="own">yours</span>}
                  </span>
                  <span className="shelf-number">
                    {row.price > 0 && sayInWords(row.price, 'money', { ...manner, currency: row.currency })}
                  </span>
                  <span className="shelf-number">{row.mass > 0 && sayInWords(row.mass, 'mass', manner)}</span>
                  <small>{row.says}</small>
                  {tried && (
                    <small className="shelf-number wide">
                      {against && chosen && row.id !== chosen.id
                        ? besideWords(row, chosen, glances, manner)
                        : inWords(glances[row.id])}
                    </small>
                  )}
                </Combobox.Item>
              )}
            </Combobox.List>
            {kind && (
              <div className="shelf-foot">
                <button
                  type="button"
                  className="plain-button small"
                  onClick={() => {
                    setOpen(false);
                    enterPart(kind, tried);
                  }}
                >
                  not here? enter it from its listing
                </button>
              </div>
            )}
          </Combobox.Popup>
        </Combobox.Positioner>
      </Combobox.Portal>
    </Combobox.Root>
  );
}

function Tick({
  says,
  on,
  onTick,
}: {
  readonly says: string;
  readonly on: boolean;
  readonly onTick: (on: boolean) => void;
}) {
  return (
    <label className="tick">
      <input type="checkbox" checked={on} onChange={(event) => onTick(event.target.checked)} />
      {says}
    </label>
  );
}

/** What choosing a row would change, beside the part in place. */
function besideWords(
  row: ShelfRow,
  chosen: ShelfRow,
  glances: Readonly<Record<string, Glance>>,
  manner: Manner,
): string {
  const [mine, its] = [glances[chosen.id], glances[row.id]];
  if (mine === undefined || its === undefined) return 'being tried';
  if (its.trouble !== undefined) return 'does not go together';
  const signed = (by: number, words: (size: number) => string): readonly string[] =>
    by === 0 ? [] : [`${by > 0 ? '+' : '−'}${words(Math.abs(by))}`];
  const both = (value: (glance: Glance) => number | undefined): number =>
    (value(its) ?? Number.NaN) - (value(mine) ?? Number.NaN);
  const [lift, time] = [both(({ thrustToWeight }) => thrustToWeight), both(({ flownTime }) => flownTime)];
  const words = [
    ...(row.currency === chosen.currency
      ? signed(row.price - chosen.price, (size) =>
          sayInWords(size, 'money', { ...manner, currency: row.currency }),
        )
      : []),
    ...signed(row.mass - chosen.mass, (size) => sayInWords(size, 'mass', manner)),
    ...(Number.isNaN(lift) ? [] : signed(lift, (size) => `${localNumber(size, 1)} to weight`)),
    ...(Number.isNaN(time) ? [] : signed(time, (size) => `${localNumber(size / 60, 1)} min`)),
    ...signed(its.stops - mine.stops, (size) => `${size} stop`),
    ...signed(its.risks - mine.risks, (size) => `${size} risk`),
  ];
  return words.length === 0 ? 'no difference' : words.join(', ');
}

const missing = (id: string): ShelfRow => ({
  id,
  kind: 'bench',
  name: id,
  says: 'not on the shelf',
  mass: 0,
  price: 0,
  currency: '',
  own: false,
});

/** Unknown counts as clean until it is known: rows don't leave before they are tried. */
const isClean = (glance: Glance | undefined): boolean =>
  glance === undefined || (glance.trouble === undefined && glance.stops === 0);

function order(sort: Sort, glances: Readonly<Record<string, Glance>>) {
  const most = (value: (glance: Glance) => number | undefined) => (a: ShelfRow, b: ShelfRow) => {
    const of = ({ id }: ShelfRow): number => {
      const glance = glances[id];
      return (glance && value(glance)) ?? -1;
    };
    return of(b) - of(a);
  };
  switch (sort) {
    case 'shelf':
      return () => 0;
    case 'price':
      return (a: ShelfRow, b: ShelfRow) => a.price - b.price;
    case 'mass':
      return (a: ShelfRow, b: ShelfRow) => a.mass - b.mass;
    case 'minutes':
      return most(({ flownTime }) => flownTime);
    case 'lift':
      return most(({ thrustToWeight }) => thrustToWeight);
  }
}

/** What a part would do here, once it has been tried. */
function inWords(glance: Glance | undefined): string {
  if (glance === undefined) return 'being tried';
  if (glance.trouble !== undefined) return 'does not go together';
  const { stops, risks, thrustToWeight, flownTime } = glance;
  return [
    ...(thrustToWeight === undefined ? ['no flight'] : [`${localNumber(thrustToWeight, 1)} to weight`]),
    ...(flownTime === undefined ? [] : [`${localNumber(flownTime / 60, 1)} min`]),
    ...(stops > 0 ? [`${stops} stop`] : []),
    `${risks} risk`,
  ].join(', ');
}

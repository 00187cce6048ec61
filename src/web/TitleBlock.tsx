import { type ReactNode, useEffect, useState } from 'react';
import { type Manner, sayInWords } from '../report/sayFigure.ts';
import { Picker } from './schedule/Picker.tsx';
import { useAnswers } from './state/answers.ts';
import { localNumber } from './state/decimalMark.ts';
import { asItCame, openBuild, useDesk } from './state/desk.ts';
import { useWords } from './state/manner.ts';
import { type SheetName, sheetNumber, turnTo, usePlace } from './state/place.ts';
import { SHEETS } from './state/sheetNames.ts';

/** As a brief tells its site; other units get as many digits as it has, not more. */
const METRIC: Manner = { currency: '' };

/**
 * What the sheet is of, at its foot: build, brief, site, scale, state.
 *
 * @param pen [mm] of the aircraft for a pixel; 0 where nothing is to scale, absent before anything is drawn
 */
export function TitleBlock({ pen }: { readonly pen: number | undefined }) {
  const { builds, open, brief } = useDesk();
  const sheet = usePlace((place) => place.sheet);
  const build = builds[open];
  const site = brief?.site;
  const words = useWords();
  const choices = Object.entries(builds).map(([id, each]) => ({ id, name: each.name }));
  return (
    <footer className="title-block">
      <Cell name="build" wide>
        {build && sheet !== 'choice' && sheet !== 'brief' ? (
          <Picker label="build" value={open} choices={choices} onChoose={openBuild} />
        ) : (
          <strong>{`${choices.length} candidates`}</strong>
        )}
      </Cell>
      <Cell name="brief" wide>
        <button type="button" className="plain-button title-link" onClick={() => turnTo('brief')}>
          {brief?.name ?? ''}
        </button>
      </Cell>
      <Cell name="site">
        <strong>
          {site
            ? words(
                `${sayInWords(site.height, 'length', METRIC)}, ${sayInWords(site.temperature, 'temperature', METRIC)}, wind ${sayInWords(site.wind.value, 'speed', METRIC)}`,
              )
            : ''}
        </strong>
      </Cell>
      <Cell name="scale">
        <strong>
          {!DRAWN.includes(sheet) || pen === 0
            ? 'not to scale'
            : pen === undefined
              ? ''
              : `1 : ${sayScale(pen)}`}
        </strong>
      </Cell>
      <Cell name="state">
        <State />
      </Cell>
      <div className="title-cell maker">
        <span className="title-name">
          sheet {sheetNumber(sheet)} of {String(SHEETS.length - 1).padStart(2, '0')}
        </span>
        <span className="word-mark">Quadwright</span>
      </div>
      <p className="caution">
        Parts are invented for teaching. Local rules and licensed practice come first. Props off on the bench.
      </p>
    </footer>
  );
}

/** How the open build stands, and what is being done about it. */
function State() {
  const computing = useLong(useAnswers((answers) => answers.waiting.length > 0));
  const keeping = useAnswers((answers) => answers.keeping);
  const open = useDesk((desk) => desk.open);
  const behind = useAnswers((answers) => answers.behind[open]?.[0]);
  const changed = useDesk(({ builds, came, open }) => builds[open] !== came[open]);
  const sheet = usePlace((place) => place.sheet);
  return (
    <>
      <strong aria-live="polite">{computing ? 'computing' : changed ? 'changed' : 'as it came'}</strong>
      <small className="title-name">{doing(behind, keeping)}</small>
      {changed && sheet !== 'choice' && (
        <button type="button" className="plain-button small" onClick={asItCame}>
          take changes back
        </button>
      )}
    </>
  );
}

/** From here on a wait is told [ms]; a shorter one would only flicker, and be read out at every step of a slider. */
const LONG = 300;

function useLong(waiting: boolean): boolean {
  const [long, setLong] = useState(false);
  useEffect(() => {
    const timer = waiting ? setTimeout(() => setLong(true), LONG) : undefined;
    return () => {
      clearTimeout(timer);
      setLong(false);
    };
  }, [waiting]);
  return waiting && long;
}

/** What goes on behind the sheet: the part being worked out, else whether the browser has it all. */
function doing(part: string | undefined, keeping: 'waiting' | 'kept' | 'failed' | undefined): string {
  if (part !== undefined) return `working out: ${part}`;
  if (keeping === 'failed') return 'not kept by the browser';
  return keeping === 'kept' ? 'kept in this browser' : '';
}

function Cell({
  name,
  wide = false,
  children,
}: {
  readonly name: string;
  readonly wide?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className={wide ? 'title-cell wide' : 'title-cell'}>
      <span className="title-name">{name}</span>
      {children}
    </div>
  );
}

/** Sheets with the whole of them to one scale. */
const DRAWN: readonly SheetName[] = ['choice', 'airframe', 'lift', 'heat', 'fit'];

// A pixel of the web is a 96th of an inch by definition (CSS Values and Units 3, section 6.2).
const PIXEL = 25.4 / 96;
const sayScale = (pen: number): string => localNumber(pen / PIXEL, 1);

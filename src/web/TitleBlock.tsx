import type { ReactNode } from 'react';
import type { Manner } from '../report/sayFigure.ts';
import { sayInWords } from '../report/sayFigure.ts';
import { Picker } from './schedule/Picker.tsx';
import { useAnswers } from './state/answers.ts';
import { asItCame, openBuild, useDesk } from './state/desk.ts';
import { SHEETS, usePlace } from './state/place.ts';

/** What the sheet is of, at its foot: build, brief, site, scale, state. */
export function TitleBlock({ pen, manner }: { readonly pen: number; readonly manner: Manner }) {
  const brief = useAnswers((answers) => answers.brief);
  const waiting = useAnswers((answers) => answers.waiting.length > 0);
  const { builds, asShipped, open } = useDesk();
  const sheet = usePlace((place) => place.sheet);
  const build = builds[open];
  const changed = build !== asShipped[open];
  const site = brief?.site;
  const choices = Object.entries(builds).map(([id, each]) => ({ id, name: each.name }));
  return (
    <footer className="title-block">
      <Cell name="build" wide>
        {build && sheet !== 'choice' ? (
          <Picker label="build" value={open} choices={choices} onChoose={openBuild} />
        ) : (
          <strong>{`${choices.length} candidates`}</strong>
        )}
      </Cell>
      <Cell name="brief" wide>
        <strong>{brief?.name ?? ''}</strong>
      </Cell>
      <Cell name="site">
        <strong>
          {site
            ? `${sayInWords(site.height, 'length', manner)}, ${sayInWords(site.temperature, 'temperature', manner)}, wind ${sayInWords(site.wind.value, 'speed', manner)}`
            : ''}
        </strong>
      </Cell>
      <Cell name="scale">
        <strong>{pen > 0 ? `1 : ${sayScale(pen)}` : ''}</strong>
      </Cell>
      <Cell name="state">
        <strong aria-live="polite">{waiting ? 'computing' : changed ? 'changed' : 'as it came'}</strong>
        {changed && sheet !== 'choice' && (
          <button type="button" className="plain-button small" onClick={asItCame}>
            take changes back
          </button>
        )}
      </Cell>
      <div className="title-cell maker">
        <span className="title-name">
          sheet {String(SHEETS.indexOf(sheet)).padStart(2, '0')} of{' '}
          {String(SHEETS.length - 1).padStart(2, '0')}
        </span>
        <span className="word-mark">Quadwright</span>
      </div>
      <p className="caution">
        Parts are invented for teaching. Local rules and licensed practice come first. Props off on the bench.
      </p>
    </footer>
  );
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

// A pixel of the web is a 96th of an inch by definition (CSS Values and Units 3, section 6.2).
const PIXEL = 25.4 / 96;
const sayScale = (pen: number): string => (pen / PIXEL).toFixed(1);

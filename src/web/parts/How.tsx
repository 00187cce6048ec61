import { Popover } from '@base-ui/react/popover';
import type { ReactElement, ReactNode } from 'react';
import type { Measure } from '../../assess/types.ts';
import { type Manner, sayBand, sayFigure } from '../../report/sayFigure.ts';
import { spanOf, WindowRule } from './WindowRule.tsx';

interface Props {
  readonly measure: Measure;
  readonly manner: Manner;
  readonly className?: string;
  readonly children: ReactNode;
}

const TRUST = {
  measured: 'measured by you',
  maker: "from the maker's sheet",
  inferred: 'inferred by us from the nameplate',
} as const;

/** A number that opens to tell where it comes from. The children are the number itself. */
export function How({ measure, manner, className, children }: Props): ReactElement {
  return (
    <Popover.Root>
      <Popover.Trigger className={`how-trigger ${className ?? ''}`}>{children}</Popover.Trigger>
      <Popover.Portal>
        <Popover.Positioner sideOffset={6} collisionPadding={12} className="layer">
          <Popover.Popup className="how">
            <Popover.Title className="how-title">{measure.label}</Popover.Title>
            <Lines measure={measure} manner={manner} />
            <Popover.Close className="plain-button how-close">close</Popover.Close>
          </Popover.Popup>
        </Popover.Positioner>
      </Popover.Portal>
    </Popover.Root>
  );
}

function Lines({ measure, manner }: { readonly measure: Measure; readonly manner: Manner }) {
  const { text, unit } = sayFigure(measure.value, measure.quantity, manner);
  const band = sayBand(measure, manner);
  const { window } = measure;
  const ends =
    window &&
    [window.low, window.high].map((end) => sayFigure(end, measure.quantity, manner, measure.value).text);
  return (
    <>
      <p className="how-figure">
        <span className="figure">{text}</span> {unit}
        <WindowRule measure={measure} span={spanOf([measure])} width={150} />
      </p>
      <dl className="how-lines">
        <dt>band</dt>
        <dd>{band === '' ? 'exact by its inputs' : `${band} ${unit}: four times in five it lies between`}</dd>
        {window && ends && (
          <>
            <dt>window</dt>
            <dd>
              {ends.join(' to ')} {unit} ({window.source})
            </dd>
          </>
        )}
        <dt>how</dt>
        <dd>{measure.how}</dd>
        <dt>source</dt>
        <dd>{measure.source}</dd>
        {measure.leansOn.length > 0 && (
          <>
            <dt>leans on</dt>
            <dd>
              <ul className="leanings">
                {measure.leansOn.map(({ input, trust, share }) => (
                  <li key={input}>
                    <span className="figure">{Math.round(share * 100)} %</span> {input},{' '}
                    <span className={`trust ${trust}`}>{TRUST[trust]}</span>
                  </li>
                ))}
              </ul>
            </dd>
          </>
        )}
      </dl>
    </>
  );
}

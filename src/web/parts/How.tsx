import { Popover } from '@base-ui/react/popover';
import type { ReactElement, ReactNode } from 'react';
import type { Measure } from '../../assess/types.ts';
import { type Manner, sayBand, sayFigure, sayWindow } from '../../report/sayFigure.ts';
import { layer } from '../layer.ts';
import { useWords } from '../state/manner.ts';
import { spanOf, WindowRule } from './WindowRule.tsx';

interface Props {
  readonly measure: Measure;
  readonly manner: Manner;
  readonly className?: string;
  readonly children: ReactNode;
}

const TRUST = {
  measured: 'measured',
  maker: "from the maker's sheet",
  inferred: 'inferred by us from the nameplate',
} as const;

/** A number that opens to tell where it comes from. The children are the number itself. */
export function How({ measure, manner, className, children }: Props): ReactElement {
  const words = useWords();
  return (
    <Popover.Root>
      <Popover.Trigger className={`how-trigger ${className ?? ''}`} data-measure={measure.id}>
        {children}
      </Popover.Trigger>
      <Popover.Portal container={layer}>
        <Popover.Positioner sideOffset={6} collisionPadding={12} className="layer">
          <Popover.Popup className="how">
            {/* Before the lines, so that opening it does not scroll past them to the button. */}
            <div className="how-head">
              <Popover.Title className="how-title">{words(measure.label)}</Popover.Title>
              <Popover.Close className="plain-button">close</Popover.Close>
            </div>
            <Lines measure={measure} manner={manner} />
          </Popover.Popup>
        </Popover.Positioner>
      </Popover.Portal>
    </Popover.Root>
  );
}

function Lines({ measure, manner }: { readonly measure: Measure; readonly manner: Manner }) {
  const words = useWords();
  const { text, unit } = sayFigure(measure, manner);
  const band = sayBand(measure, manner);
  return (
    <>
      <p className="how-figure">
        <span className="figure">{text}</span> {unit}
        {measure.words === undefined && <WindowRule measure={measure} span={spanOf([measure])} width={150} />}
      </p>
      <dl className="how-lines">
        {measure.words === undefined && (
          <>
            <dt>band</dt>
            <dd>
              {band === ''
                ? 'exact by its inputs'
                : `${band}${unit && ` ${unit}`}: four times in five it lies between`}
            </dd>
          </>
        )}
        {measure.window && (
          <>
            <dt>window</dt>
            <dd>
              {sayWindow(measure, manner)}
              {unit && ` ${unit}`} ({measure.window.source})
            </dd>
          </>
        )}
        <dt>how</dt>
        <dd>{words(measure.how)}</dd>
        <dt>source</dt>
        <dd>{measure.source}</dd>
        {measure.leansOn.length > 0 && (
          <>
            <dt>leans on</dt>
            <dd>
              <ul>
                {measure.leansOn.map(({ input, trust, share }) => (
                  <li key={input}>
                    {Math.round(share * 100)} % {input}, {TRUST[trust]}
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

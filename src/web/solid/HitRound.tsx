import type { HitsReport } from '../../assess/parts/airframeData.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { useSize } from '../parts/useSize.ts';
import { AirframeRound } from './AirframeRound.tsx';
import { useSeen } from './useSeen.ts';

interface Props {
  readonly build: Build;
  readonly hits: HitsReport;
  readonly manner: Manner;
}

/** The frame with the stress of a hit on its arms, drawn when it comes into view. */
export function HitRound({ build, hits, manner }: Props) {
  const [ref, { width }] = useSize<HTMLElement>();
  const seen = useSeen(ref);
  return (
    <section className="figure wide mode-round" ref={ref}>
      <h3>Where a hit bites</h3>
      {seen && width > 0 ? (
        <AirframeRound
          build={build}
          hits={hits}
          manner={manner}
          width={Math.min(width, 1240)}
          height={Math.round(Math.min(420, Math.max(240, width * 0.46)))}
          loaded
        />
      ) : (
        <p className="waiting">The frame is drawn here when it comes into view.</p>
      )}
    </section>
  );
}

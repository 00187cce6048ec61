import type { Measure } from '../../assess/types.ts';

interface Props {
  readonly measure: Measure;
  /** Both ends of the rule, in the measure's own unit; the same for all that are compared. */
  readonly span: readonly [low: number, high: number];
  readonly width?: number;
}

const HEIGHT = 14;

/** A short rule: the window as an open bracket, the band as a bar, the value as a stroke. */
export function WindowRule({ measure, span: [low, high], width = 120 }: Props) {
  const at = (value: number): number =>
    3 + ((Math.min(Math.max(value, low), high) - low) / (high - low || 1)) * (width - 6);
  const { window, band, value } = measure;
  return (
    <svg
      className="window-rule"
      viewBox={`0 0 ${width} ${HEIGHT}`}
      width={width}
      height={HEIGHT}
      aria-hidden="true"
    >
      <path className="base" d={`M0 ${HEIGHT / 2}H${width}`} />
      {window !== undefined && (
        <path
          className="window"
          d={`M${at(window.low) + 3} 1.5H${at(window.low)}V12.5H${at(window.low) + 3}M${at(window.high) - 3} 1.5H${at(window.high)}V12.5H${at(window.high) - 3}`}
        />
      )}
      <path className="band" d={`M${at(band[0])} ${HEIGHT / 2}H${at(band[1])}`} />
      <path className="value" d={`M${at(value)} 2V12`} />
    </svg>
  );
}

/** Ends of a rule that holds every value, band and window, with a little air. */
export function spanOf(measures: readonly Measure[]): readonly [number, number] {
  const ends = measures.flatMap((measure) => [
    measure.value,
    ...measure.band,
    ...(measure.window === undefined ? [] : [measure.window.low, measure.window.high]),
  ]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const air = (high - low) * 0.08 || Math.abs(high) * 0.1 || 1;
  return [low - air, high + air];
}

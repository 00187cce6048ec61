import { Slider } from '@base-ui/react/slider';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  readonly onMove: (value: number) => void;
  readonly onSettle: () => void;
}

/** A fine scale with a mark to slide along it, in whole steps. */
export function Adjust({ label, value, min, max, unit, onMove, onSettle }: Props) {
  const shown = Math.round(value);
  return (
    <Slider.Root
      className="adjust"
      value={Math.min(Math.max(shown, min), max)}
      min={min}
      max={max}
      step={1}
      onValueChange={onMove}
      onValueCommitted={onSettle}
    >
      <Slider.Label className="adjust-label">{label}</Slider.Label>
      <Slider.Value className="adjust-value figure">{() => `${shown} ${unit}`}</Slider.Value>
      <Slider.Control className="adjust-control">
        <Slider.Track className="adjust-track">
          <Slider.Thumb className="adjust-thumb" getAriaValueText={() => `${shown} ${unit}`} />
        </Slider.Track>
      </Slider.Control>
    </Slider.Root>
  );
}

import { Slider } from '@base-ui/react/slider';
import { withUnit } from '../../units/formatQuantity.ts';
import { decimalMark } from '../state/decimalMark.ts';
import { useWords } from '../state/manner.ts';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** Whole numbers when absent. */
  readonly step?: number;
  readonly unit: string;
  readonly onMove: (value: number) => void;
  readonly onSettle: () => void;
}

/** A fine scale with a mark to slide along it, in even steps. */
export function Adjust({ label, value, min, max, step = 1, unit, onMove, onSettle }: Props) {
  const shown = Math.round(value / step) * step;
  const number = String(shown).replace('.', decimalMark);
  const words = useWords()(withUnit(number, unit));
  return (
    <Slider.Root
      className="adjust"
      value={Math.min(Math.max(shown, min), max)}
      min={min}
      max={max}
      step={step}
      onValueChange={onMove}
      onValueCommitted={onSettle}
    >
      <Slider.Label className="adjust-label">{label}</Slider.Label>
      <Slider.Value className="adjust-value figure">{() => words}</Slider.Value>
      <Slider.Control className="adjust-control">
        <Slider.Track className="adjust-track">
          <Slider.Thumb className="adjust-thumb" getAriaValueText={() => words} />
        </Slider.Track>
      </Slider.Control>
    </Slider.Root>
  );
}

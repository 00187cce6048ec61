import { decimalMark } from '../state/decimalMark.ts';
import { Fault } from './Fault.tsx';
import { useDraft } from './useDraft.ts';

/** A number as typed, with a point; what does not read as one comes back as it is. */
function plainNumber(typed: string): string {
  // Spaces part thousands in some languages.
  const text = typed.replace(/(?<=\d)[\s\u202f](?=\d{3})/g, '');
  const both = text.includes(',') && text.includes('.');
  if (!both) return text.replace(',', '.');
  const thousands = decimalMark === ',' ? /\./g : /,/g;
  return text.replace(thousands, '').replace(',', '.');
}

interface Props {
  readonly label: string;
  /** In the unit shown. */
  readonly value: number | undefined;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly decimals?: number;
  /** Undefined where the field is emptied and may be. */
  readonly onEnter: (value: number | undefined) => void;
  readonly optional?: boolean;
}

/** A number with its unit, taken when the field is left; out of range or unreadable it says so and changes nothing. */
export function NumberEntry({
  label,
  value,
  unit,
  min,
  max,
  decimals = 0,
  onEnter,
  optional = false,
}: Props) {
  const shown = value === undefined ? '' : String(Number(value.toFixed(decimals))).replace('.', decimalMark);
  const { id, fault, field } = useDraft(shown, (text) => {
    // Either mark is understood; both in one number only as its language writes thousands.
    const given = plainNumber(text.trim());
    const number = Number(given);
    if (given === '' && optional) onEnter(undefined);
    else if (given === '' || !Number.isFinite(number)) return `a number${unit && ` in ${unit}`}, please`;
    else if (number < min || number > max) return `from ${min} to ${max}${unit && ` ${unit}`}`;
    else onEnter(number);
    return undefined;
  });
  return (
    <div className="number-entry">
      <label htmlFor={id}>{label}</label>
      <span className="number-field">
        <input className="text-field number" inputMode="decimal" {...field} />
        <span className="unit">{unit}</span>
      </span>
      <Fault id={id} fault={fault} />
    </div>
  );
}

import { useId } from 'react';
import type { PartField, Told } from '../worker/ownPartProtocol.ts';

interface Props {
  readonly field: PartField;
  readonly told: Told | undefined;
  readonly onTell: (told: Told) => void;
  /** What is wrong with it, when something is. */
  readonly fault: string | undefined;
  /** The measures that it moves most. */
  readonly moves: readonly string[] | undefined;
  /** Of an amount that is told without one. */
  readonly currency: string | undefined;
}

const TRUSTS = ['measured', 'maker', 'inferred'] as const;

/** One field of a part: its value, its unit, how it is known, what is allowed and what it drives. */
export function PartFieldRow({ field, told, onTell, fault, moves, currency }: Props) {
  const id = useId();
  const { label, says, choices, units, allowed, trusted, required, money } = field;
  const now: Told = told ?? { text: '' };
  const unit = now.unit ?? units[0];
  const tellText = (text: string) => onTell({ ...now, text, ...(unit === undefined ? {} : { unit }) });
  const hint = [says, allowed].filter((words) => words !== '').join('; ');
  return (
    <div className={fault ? 'own-field faulty' : 'own-field'}>
      <label htmlFor={id}>
        {label}
        {required && <span className="must"> must be told</span>}
      </label>
      <span className="own-value">
        {choices.length > 0 ? (
          <select
            id={id}
            className="text-field"
            value={now.text}
            required={required}
            aria-invalid={fault !== undefined}
            aria-describedby={`${id}-hint`}
            onChange={(event) => tellText(event.target.value)}
          >
            <option value="">not told</option>
            {choices.map((choice) => (
              <option key={choice}>{choice}</option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            className="text-field"
            value={now.text}
            maxLength={200}
            required={required}
            aria-invalid={fault !== undefined}
            aria-describedby={`${id}-hint`}
            onChange={(event) => tellText(event.target.value)}
          />
        )}
        {money && currency !== undefined && !/[A-Z]{3}|[£€$]/.test(now.text) && (
          <span className="unit own-currency">{currency}</span>
        )}
        {unit !== undefined && (
          <select
            className="text-field own-unit"
            aria-label={`unit of ${label}`}
            value={unit}
            onChange={(event) => onTell({ ...now, unit: event.target.value })}
          >
            {units.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        )}
        {trusted && (
          <select
            className="text-field own-trust"
            aria-label={`how ${label} is known`}
            value={now.trust ?? ''}
            onChange={(event) => {
              const { trust: _, ...rest } = now;
              onTell(event.target.value === '' ? rest : { ...rest, trust: event.target.value });
            }}
          >
            <option value="">known as the rest</option>
            {TRUSTS.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        )}
      </span>
      <small id={`${id}-hint`}>
        {fault ? <span className="fault">{fault}</span> : hint}
        {moves && moves.length > 0 && <span className="own-moves">moves {moves.join(', ')}</span>}
      </small>
    </div>
  );
}

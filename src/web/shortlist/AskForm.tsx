import type { Brief } from '../../build/schema/brief.ts';
import { usualSoftWants } from '../../choose/shortlist/usualScales.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import { Weights } from '../choice/Weights.tsx';
import { NumberEntry } from '../parts/NumberEntry.tsx';
import { Picker } from '../schedule/Picker.tsx';
import { useDesk } from '../state/desk.ts';
import { turnTo } from '../state/place.ts';
import { limitFields, SEAT_WORDS, setLimit, tickSeat, useAsk } from './ask.ts';

interface Props {
  readonly brief: Brief;
  readonly manner: Manner;
  readonly label: (measure: string) => string;
  readonly disabled: boolean;
}

/** What is searched, inside which limits, for what. */
export function AskForm({ brief, manner, label, disabled }: Props) {
  const builds = useDesk((desk) => desk.builds);
  const open = useDesk((desk) => desk.open);
  const wants = useDesk((desk) => desk.wants);
  const { template, seats, front, relax, limits } = useAsk();
  const chosen = template !== undefined && builds[template] !== undefined ? template : open;
  return (
    <fieldset className="shortlist-ask" disabled={disabled}>
      <legend className="unseen">What to search, inside which limits, for what</legend>
      <section className="question-group" aria-label="What is searched">
        <h3>Search the shelf for</h3>
        <div className="question-fields">
          <div className="shortlist-seats">
            {SEAT_WORDS.map(([seat, words]) => (
              <label className="tick" key={seat}>
                <input
                  type="checkbox"
                  checked={seats.includes(seat)}
                  onChange={(event) => tickSeat(seat, event.target.checked)}
                />
                {words}
              </label>
            ))}
          </div>
          <div className="pick-field">
            <span>All else stays as in</span>
            <Picker
              label="build to start from"
              value={chosen}
              choices={Object.entries(builds).map(([id, { name }]) => ({ id, name }))}
              onChoose={(id) => useAsk.setState({ template: id })}
            />
          </div>
        </div>
      </section>
      <section className="question-group" aria-label="Limits">
        <h3>Inside these limits</h3>
        <p className="shortlist-brief">
          {briefWords(brief, manner)}{' '}
          <button type="button" className="plain-button small" onClick={() => turnTo('brief')}>
            change the brief
          </button>
        </p>
        <div className="question-fields">
          {limitFields(manner.system ?? 'metric').map((field) => {
            const set = limits.find(
              ({ measure, [field.side]: end }) => measure === field.measure && end !== undefined,
            );
            const value = set?.[field.side];
            return (
              <NumberEntry
                key={field.label}
                label={field.label}
                unit={field.unit}
                min={0}
                max={field.max}
                decimals={field.decimals}
                optional
                value={value === undefined ? undefined : value / field.factor}
                onEnter={(to) => setLimit(field, to === undefined ? undefined : to * field.factor)}
              />
            );
          })}
        </div>
        <label className="tick">
          <input
            type="checkbox"
            checked={relax}
            onChange={(event) => useAsk.setState({ relax: event.target.checked })}
          />
          tell what each limit a tenth wider would bring (searches again for each)
        </label>
      </section>
      <section className="question-group" aria-label="Wants">
        <h3>Best by what counts</h3>
        <Weights wants={usualSoftWants(brief, wants)} label={label} manner={manner} />
        <label className="tick">
          <input
            type="checkbox"
            checked={front}
            onChange={(event) => useAsk.setState({ front: event.target.checked })}
          />
          draw the front of money, mass and minutes too (takes longer)
        </label>
      </section>
    </fieldset>
  );
}

function briefWords({ name, budget, massLimit }: Brief, manner: Manner): string {
  const told = [
    ...(budget === undefined
      ? []
      : [
          `${sayInWords(budget.amount, 'money', { ...manner, currency: budget.currency })} to the first flight`,
        ]),
    ...(massLimit === undefined ? [] : [`${sayInWords(massLimit, 'mass', manner)} all-up`]),
    'every stop of the fit rules',
  ];
  return `${name}: ${told.join(', ')}.`;
}

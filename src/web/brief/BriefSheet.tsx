import { type ReactNode, useMemo } from 'react';
import type { Brief } from '../../build/schema/brief.ts';
import { PURPOSES, REGIONS } from '../../build/schema/briefWords.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { FiveAnswers } from '../choice/FiveAnswers.tsx';
import { NumberEntry } from '../parts/NumberEntry.tsx';
import { Adjust } from '../schedule/Adjust.tsx';
import { PartPicker } from '../schedule/PartPicker.tsx';
import { Picker } from '../schedule/Picker.tsx';
import { useAnswers } from '../state/answers.ts';
import { rethink, rethinkSliding, settle, useDesk } from '../state/desk.ts';
import { entryUnits } from './entryUnits.ts';
import { Owned } from './Owned.tsx';

const STYLES: readonly (readonly [NonNullable<Brief['flyingStyle']>, string])[] = [
  ['easy', 'easy, as a novice does'],
  ['cruising', 'cruising along'],
  ['freestyle', 'freestyle, tricks and punches'],
  ['race', 'racing, flat out much of the time'],
];
const AS_PURPOSE = 'as the purpose asks';

/** A few plain questions; every number on every sheet follows the answers. */
export function BriefSheet({ manner }: { readonly manner: Manner }) {
  const brief = useDesk((desk) => desk.brief);
  const open = useDesk((desk) => desk.open);
  const view = useAnswers((answers) => answers.views[open]);
  if (brief === undefined) return <p className="waiting">Laying out the sheet.</p>;
  return (
    <div className="brief-sheet">
      <div className="questions">
        <h2>What is it for, and for whom?</h2>
        <WhatFor brief={brief} />
        <Where brief={brief} manner={manner} />
        <Money brief={brief} manner={manner} />
        <Owned brief={brief} />
      </div>
      <aside className="brief-answers" aria-label="Answers" aria-live="polite">
        {view?.ok && (
          <>
            <h2>{view.assessment.build}, for this brief</h2>
            <FiveAnswers assessment={view.assessment} brief={brief} manner={manner} />
          </>
        )}
      </aside>
    </div>
  );
}

const put = (values: Partial<Brief>): void => rethink((now) => ({ ...now, ...values }));

/** Leaves a field out rather than hold nothing in it. */
function without<K extends keyof Brief>(key: K): void {
  rethink((now) => {
    const { [key]: _, ...rest } = now;
    return rest as Brief;
  });
}

function Question({ asks, children }: { readonly asks: string; readonly children: ReactNode }) {
  return (
    <fieldset className="question-group">
      <legend>{asks}</legend>
      <div className="question-fields">{children}</div>
    </fieldset>
  );
}

function WhatFor({ brief }: { readonly brief: Brief }) {
  const shelf = useAnswers((answers) => answers.shelf);
  const cameras = useMemo(
    () => shelf.filter(({ kind, roles }) => kind === 'camera' && roles?.includes('recording') === true),
    [shelf],
  );
  return (
    <>
      <Question asks="The brief">
        <label className="wide-field">
          its name
          <input
            key={brief.name}
            className="text-field"
            defaultValue={brief.name}
            maxLength={200}
            onBlur={(event) => {
              const name = event.target.value.trim();
              if (name !== '' && name !== brief.name) put({ name });
            }}
          />
        </label>
      </Question>
      <Question asks="What will it be flown for?">
        <div className="choices" role="radiogroup" aria-label="purpose">
          {PURPOSES.map((purpose) => (
            <label key={purpose} className="tick">
              <input
                type="radio"
                name="purpose"
                checked={brief.purpose === purpose}
                onChange={() => put({ purpose })}
              />
              {purpose}
            </label>
          ))}
        </div>
        <div className="pick-field">
          <span>How will it be flown?</span>
          <Picker
            label="flying style"
            value={brief.flyingStyle ?? AS_PURPOSE}
            choices={[{ id: AS_PURPOSE, name: AS_PURPOSE }, ...STYLES.map(([id, name]) => ({ id, name }))]}
            onChoose={(id) => {
              const style = STYLES.find(([each]) => each === id)?.[0];
              if (style) put({ flyingStyle: style });
              else without('flyingStyle');
            }}
          />
        </div>
        <div className="pick-field">
          <span>
            What must it carry?{' '}
            {brief.mustCarry !== undefined && (
              <button type="button" className="plain-button small" onClick={() => without('mustCarry')}>
                nothing after all
              </button>
            )}
          </span>
          <PartPicker
            label="must carry"
            rows={cameras}
            part={brief.mustCarry}
            none="nothing in particular"
            onChoose={(mustCarry) => put({ mustCarry })}
          />
        </div>
      </Question>
      <Question asks="Who flies it?">
        <NumberEntry
          label="flights flown so far"
          unit=""
          min={0}
          max={100000}
          value={brief.pilot.flightsFlown}
          onEnter={(value = 0) => put({ pilot: { ...brief.pilot, flightsFlown: Math.round(value) } })}
        />
        <NumberEntry
          label="on a simulator"
          unit="h"
          min={0}
          max={100000}
          value={brief.pilot.simulatorHours}
          onEnter={(value = 0) => put({ pilot: { ...brief.pilot, simulatorHours: value } })}
        />
        <NumberEntry
          label="flights planned"
          unit=""
          min={1}
          max={1000}
          value={brief.flightsPlanned}
          onEnter={(value = 30) => put({ flightsPlanned: Math.round(value) })}
        />
      </Question>
    </>
  );
}

function Where({ brief, manner }: { readonly brief: Brief; readonly manner: Manner }) {
  const { site } = brief;
  const units = entryUnits(manner.system ?? 'metric');
  const place = (values: Partial<Brief['site']>) =>
    rethink((now) => ({ ...now, site: { ...now.site, ...values } }));
  return (
    <Question asks="Where, and in what weather?">
      <div className="pick-field">
        <span>Whose rules?</span>
        <Picker
          label="region"
          value={brief.region}
          choices={REGIONS.map((id) => ({ id, name: id }))}
          onChoose={(id) => {
            const region = REGIONS.find((each) => each === id);
            if (region) put({ region });
          }}
        />
      </div>
      <div className="slide-field">
        <Adjust
          label="wind it must live in"
          unit={units.speed.text}
          min={0}
          max={Math.round(units.speed.shown(16))}
          value={units.speed.shown(site.wind.value)}
          onMove={(value) =>
            rethinkSliding((now) => ({
              ...now,
              site: { ...now.site, wind: { ...now.site.wind, value: units.speed.meant(value) } },
            }))
          }
          onSettle={settle}
        />
      </div>
      <NumberEntry
        label="above the sea"
        unit={units.height.text}
        min={Math.round(units.height.shown(-400))}
        max={Math.round(units.height.shown(5000))}
        value={units.height.shown(site.height)}
        onEnter={(value = 0) => place({ height: units.height.meant(value) })}
      />
      <NumberEntry
        label="air outside"
        decimals={1}
        unit={units.temperature.text}
        min={Math.round(units.temperature.shown(243.15))}
        max={Math.round(units.temperature.shown(323.15))}
        value={units.temperature.shown(site.temperature)}
        onEnter={(value = 15) => place({ temperature: units.temperature.meant(value) })}
      />
      <NumberEntry
        label="how far out"
        unit={units.height.text}
        min={10}
        max={Math.round(units.height.shown(50000))}
        optional
        value={brief.farthest === undefined ? undefined : units.height.shown(brief.farthest)}
        onEnter={(value) =>
          value === undefined ? without('farthest') : put({ farthest: units.height.meant(value) })
        }
      />
    </Question>
  );
}

function Money({ brief, manner }: { readonly brief: Brief; readonly manner: Manner }) {
  const { mass } = entryUnits(manner.system ?? 'metric');
  return (
    <Question asks="What are the limits?">
      <NumberEntry
        label="budget before the first flight"
        decimals={2}
        unit={brief.currency}
        min={0}
        max={100000}
        optional
        value={brief.budget?.amount}
        onEnter={(amount) =>
          amount === undefined ? without('budget') : put({ budget: { amount, currency: brief.currency } })
        }
      />
      <NumberEntry
        label="heaviest, all-up"
        decimals={1}
        unit={mass.text}
        min={Math.ceil(mass.shown(0.005))}
        max={Math.floor(mass.shown(25))}
        optional
        value={brief.massLimit === undefined ? undefined : mass.shown(brief.massLimit)}
        onEnter={(value) =>
          value === undefined ? without('massLimit') : put({ massLimit: mass.meant(value) })
        }
      />
      <NumberEntry
        label="packs to buy"
        unit=""
        min={1}
        max={30}
        value={brief.packsWanted}
        onEnter={(value = 4) => put({ packsWanted: Math.round(value) })}
      />
      <div className="slide-field">
        <Adjust
          label="land with"
          unit="% left"
          min={0}
          max={60}
          value={brief.reserve * 100}
          onMove={(value) => rethinkSliding((now) => ({ ...now, reserve: value / 100 }))}
          onSettle={settle}
        />
      </div>
    </Question>
  );
}

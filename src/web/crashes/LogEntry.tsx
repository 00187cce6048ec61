import { useRef } from 'react';
import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import { crashLogData } from '../../build/write/crashLogData.ts';
import { yamlText } from '../../build/write/yamlText.ts';
import { saveFile } from '../desk/files.ts';
import { NumberEntry } from '../parts/NumberEntry.tsx';
import { noteCrashes } from '../state/desk.ts';
import { tell } from '../state/notices.ts';
import { theWorkers } from '../state/work.ts';
import { FlightsEntry } from './FlightsEntry.tsx';

interface Props {
  readonly id: string;
  readonly notes: CrashNotes | undefined;
  /** Of the forecast, whose names a log's pieces go by. */
  readonly parts: readonly string[];
  readonly currency: string;
}

const MOST_FLIGHTS = 1000;
/** A file larger than any log [bytes]. */
const LARGEST = 64 * 1024;

/** What the pilot noted of one build, field by field, and its file in and out. */
export function LogEntry({ id, notes, parts, currency }: Props) {
  const { crashedOn = [], money, broken = {} } = notes ?? {};
  const write = (change: Partial<CrashNotes>) => {
    const next = { flights: 1, crashedOn: [], ...notes, ...change };
    noteCrashes(id, next);
  };
  const brokenOf = (part: string, count: number | undefined) => {
    const { [part]: _, ...rest } = broken;
    const all = count === undefined ? rest : { ...rest, [part]: Math.round(count) };
    const { broken: __, ...plain } = notes ?? { flights: 1, crashedOn: [] };
    noteCrashes(id, Object.keys(all).length === 0 ? plain : { ...plain, broken: all });
  };
  const spent = (amount: number | undefined) => {
    const { money: _, ...plain } = notes ?? { flights: 1, crashedOn: [] };
    noteCrashes(
      id,
      amount === undefined ? plain : { ...plain, money: { amount, currency: money?.currency ?? currency } },
    );
  };
  return (
    <>
      <div className="log-fields">
        <NumberEntry
          label="flights flown"
          value={notes?.flights}
          unit=""
          min={Math.max(1, crashedOn.at(-1) ?? 1)}
          max={MOST_FLIGHTS}
          onEnter={(flights) => flights !== undefined && write({ flights: Math.round(flights) })}
        />
        {notes && (
          <>
            <FlightsEntry
              label="of them ended in a crash"
              value={crashedOn}
              most={notes.flights}
              onEnter={(flights) => write({ crashedOn: [...flights] })}
            />
            <NumberEntry
              label="spent on repairs"
              value={money?.amount}
              unit={money?.currency ?? currency}
              min={0}
              max={1e6}
              decimals={2}
              optional
              onEnter={spent}
            />
            {parts.map((part) => (
              <NumberEntry
                key={part}
                label={`${part}, broken`}
                value={broken[part]}
                unit=""
                min={0}
                max={10000}
                optional
                onEnter={(count) => brokenOf(part, count)}
              />
            ))}
          </>
        )}
      </div>
      <LogFile id={id} notes={notes} />
    </>
  );
}

function LogFile({ id, notes }: Pick<Props, 'id' | 'notes'>) {
  const chooser = useRef<HTMLInputElement>(null);
  return (
    <div className="try-buttons">
      <input
        ref={chooser}
        type="file"
        hidden
        accept=".yaml,.yml,.json"
        aria-label="crash log to take in"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) void takeIn(id, file);
          event.target.value = '';
        }}
      />
      <button type="button" className="try-button" onClick={() => chooser.current?.click()}>
        take in a log file
      </button>
      {notes && (
        <>
          <button
            type="button"
            className="plain-button"
            onClick={() => saveFile(`${id}-crashes.yaml`, yamlText(crashLogData(notes)), 'application/yaml')}
          >
            save the log
          </button>
          <button type="button" className="plain-button" onClick={() => noteCrashes(id, undefined)}>
            put the log away
          </button>
        </>
      )}
    </div>
  );
}

/** The file that `ask knocks --log` reads. */
async function takeIn(id: string, file: File): Promise<void> {
  if (file.size > LARGEST) return tell('import', `${file.name} is too large for a crash log.`);
  const read = await theWorkers().quick.readLog(await file.text(), file.name);
  if (read.ok) noteCrashes(id, read.notes);
  else tell('import', 'The log is not taken; nothing has changed by it:', read.reasons);
}

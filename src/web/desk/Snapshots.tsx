import { useState } from 'react';
import { lay, logsOf, useDesk } from '../state/desk.ts';
import { filesOf } from '../state/kept.ts';
import { tell } from '../state/notices.ts';
import { addSnapshot, removeSnapshot, type Snapshot, useSnapshots } from '../state/snapshots.ts';
import { theWorkers } from '../state/work.ts';

/** The whole desk as it stood, under a name, to come back to. */
export function Snapshots() {
  const snapshots = useSnapshots((state) => state.snapshots);
  const [name, setName] = useState('');
  const take = () => {
    const { builds, came, logs, brief } = useDesk.getState();
    if (brief === undefined) return;
    addSnapshot({
      name: name.trim() || `snapshot ${snapshots.length + 1}`,
      files: filesOf({ builds, came, logs }, brief),
    });
    setName('');
  };
  return (
    <section className="dialog-part">
      <h3>Snapshots</h3>
      <form
        className="desk-add"
        onSubmit={(event) => {
          event.preventDefault();
          take();
        }}
      >
        <input
          className="text-field"
          aria-label="name of the snapshot"
          placeholder="before I changed the motors"
          maxLength={100}
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        <button type="submit" className="plain-button">
          keep the desk as it stands
        </button>
      </form>
      {snapshots.length > 0 && (
        <ul className="desk-list">
          {snapshots.map((snapshot) => (
            <li key={snapshot.name}>
              <span>
                {snapshot.name} <small>{snapshot.files.builds.length} builds</small>
              </span>
              <button type="button" className="plain-button" onClick={() => void goBackTo(snapshot)}>
                go back to it<span className="unseen">: {snapshot.name}</span>
              </button>
              <button type="button" className="plain-button" onClick={() => removeSnapshot(snapshot.name)}>
                forget<span className="unseen"> {snapshot.name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Lays the snapshot in place of the desk; undo brings the desk back. */
async function goBackTo({ name, files }: Snapshot): Promise<void> {
  const { wants, open } = useDesk.getState();
  const { builds, brief, faults } = await theWorkers().quick.readKept(files);
  if (faults.length > 0) {
    tell('snapshot', `"${name}" can not be read any more:`, faults);
    return;
  }
  const byId = Object.fromEntries(builds.map(({ id, build }) => [id, build]));
  lay({
    builds: byId,
    came: Object.fromEntries(builds.map(({ id, came }) => [id, came])),
    logs: logsOf(builds),
    aside: builds.slice(8).map(({ id }) => id),
    open: byId[open] ? open : (builds[0]?.id ?? ''),
    wants,
    brief,
  });
}

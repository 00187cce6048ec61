import { useMemo } from 'react';
import { PartPicker } from '../schedule/PartPicker.tsx';
import { useAnswers } from '../state/answers.ts';
import { addBuild, change, compareBuild, openBuild, removeBuild, useDesk } from '../state/desk.ts';
import { turnTo } from '../state/place.ts';
import { useDeskOpen } from './deskOpen.ts';
import { exportBuild } from './files.ts';

/** Every build, to open, name, copy, compare, save or take away. */
export function BuildRows() {
  const { builds, aside, open } = useDesk();
  const shelf = useAnswers((answers) => answers.shelf);
  const frames = useMemo(() => shelf.filter(({ kind }) => kind === 'frame'), [shelf]);
  const ids = Object.keys(builds);
  const base = builds[open];
  return (
    <section className="dialog-part">
      <h3>Builds</h3>
      <table className="desk-rows">
        <thead>
          <tr>
            <th scope="col">name</th>
            <th scope="col">compared</th>
            <th scope="col">
              <span className="unseen">what to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {ids.map((id) => {
            const build = builds[id];
            if (build === undefined) return null;
            return (
              <tr key={id} className={id === open ? 'chosen' : ''}>
                <td>
                  <NameField key={build.name} id={id} name={build.name} />
                </td>
                <td>
                  <input
                    type="checkbox"
                    aria-label={`compare ${build.name}`}
                    checked={!aside.includes(id)}
                    onChange={(event) => compareBuild(id, event.target.checked)}
                  />
                </td>
                <td className="desk-actions">
                  <Act
                    word="open"
                    of={build.name}
                    onDo={() => {
                      openBuild(id);
                      turnTo('airframe');
                      useDeskOpen.setState({ open: false });
                    }}
                  />
                  <Act
                    word="copy"
                    of={build.name}
                    onDo={() => addBuild({ ...build, name: `${build.name}, copy`.slice(0, 200) })}
                  />
                  <Act word="save file" of={build.name} onDo={() => exportBuild(id)} />
                  <Act word="remove" of={build.name} onDo={() => removeBuild(id)} off={ids.length === 1} />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {base && (
        <div className="desk-add">
          <span>Another build from the shelf, with the parts of {base.name} on</span>
          <PartPicker
            label="frame of a new build"
            rows={frames}
            part={undefined}
            none="choose its frame"
            tried={(now, part) => ({ ...now, frame: { part } })}
            onChoose={(part) => {
              const name = frames.find(({ id }) => id === part)?.name ?? part;
              addBuild({ ...base, name: `${name}, new`, frame: { part } });
            }}
          />
        </div>
      )}
    </section>
  );
}

function Act({
  word,
  of,
  onDo,
  off = false,
}: {
  readonly word: string;
  readonly of: string;
  readonly onDo: () => void;
  readonly off?: boolean;
}) {
  return (
    <button type="button" className="plain-button" onClick={onDo} disabled={off}>
      {word}
      <span className="unseen"> {of}</span>
    </button>
  );
}

/** Takes the name when the field is left; an empty one gives the old name back. */
function NameField({ id, name }: { readonly id: string; readonly name: string }) {
  const take = (field: HTMLInputElement) => {
    const next = field.value.trim();
    if (next === '') field.value = name;
    else if (next !== name) change((build) => ({ ...build, name: next }), id);
  };
  return (
    <input
      className="text-field"
      aria-label={`name of ${name}`}
      defaultValue={name}
      maxLength={200}
      onBlur={(event) => take(event.target)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take(event.currentTarget);
      }}
    />
  );
}

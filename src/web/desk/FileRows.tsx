import { useRef, useState } from 'react';
import { useAnswers } from '../state/answers.ts';
import { layOut, useDesk } from '../state/desk.ts';
import { setUnits, useUnits } from '../state/manner.ts';
import { tell } from '../state/notices.ts';
import { exportBrief, importFiles } from './files.ts';
import { shareFragment } from './share.ts';

/** Files in and out, a link to share, and the demo to go back to. */
export function FileRows() {
  const { builds, open, brief } = useDesk();
  const demo = useAnswers((answers) => answers.demo);
  const system = useUnits((units) => units.system);
  const chooser = useRef<HTMLInputElement>(null);
  const [link, setLink] = useState('');
  const build = builds[open];
  return (
    <section className="dialog-part">
      <h3>Files and links</h3>
      <ul className="desk-list">
        <li>
          <span>
            Take in a build, a brief, a shelf, or a list of parts{' '}
            <small>the command line's own YAML or JSON, lists as CSV; or drop it on the page</small>
          </span>
          <input
            ref={chooser}
            type="file"
            multiple
            hidden
            accept=".yaml,.yml,.json,.csv,.tsv,.txt"
            aria-label="files to take in"
            onChange={(event) => {
              void importFiles([...(event.target.files ?? [])]);
              event.target.value = '';
            }}
          />
          <button type="button" className="plain-button" onClick={() => chooser.current?.click()}>
            choose files
          </button>
        </li>
        <li>
          <span>The brief</span>
          <button type="button" className="plain-button" onClick={exportBrief}>
            save file<span className="unseen"> of the brief</span>
          </button>
        </li>
        {build && brief && (
          <li>
            <span>
              A link to {build.name} <small>holds the build itself; nothing is sent until you send it</small>
            </span>
            <button
              type="button"
              className="plain-button"
              onClick={() => {
                const { origin, pathname } = window.location;
                const made = `${origin}${pathname}${shareFragment(build, brief)}`;
                setLink(made);
                void navigator.clipboard?.writeText(made).then(
                  () => tell('link', 'The link is on the clipboard.'),
                  () => undefined,
                );
              }}
            >
              make a link
            </button>
          </li>
        )}
        {link !== '' && (
          <li>
            <input
              className="text-field"
              aria-label="link to share"
              readOnly
              value={link}
              onFocus={(event) => event.target.select()}
            />
          </li>
        )}
        <li>
          <span>Units</span>
          {(['metric', 'imperial'] as const).map((each) => (
            <label key={each} className="tick">
              <input type="radio" name="units" checked={system === each} onChange={() => setUnits(each)} />
              {each}
            </label>
          ))}
        </li>
        {demo && (
          <li>
            <span>
              The demo as it ships <small>clears this desk: keep a snapshot or save files first</small>
            </span>
            <button type="button" className="plain-button" onClick={() => layOut(demo.builds, demo.brief)}>
              start over from the demo
            </button>
          </li>
        )}
      </ul>
    </section>
  );
}

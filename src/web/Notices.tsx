import { hush, useNotices } from './state/notices.ts';

/** What the page has to say of itself: under the head, until it is waved away. */
export function Notices() {
  const notices = useNotices((state) => state.notices);
  return (
    <div role="status" className="notices">
      {notices.map(({ id, says, more = [] }) => (
        <div key={id} className="notice">
          <div>
            <p>{says}</p>
            {more.length > 0 && (
              <ul>
                {more.slice(0, 8).map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            )}
          </div>
          <button type="button" className="plain-button" onClick={() => hush(id)}>
            close<span className="unseen"> this notice</span>
          </button>
        </div>
      ))}
    </div>
  );
}

import type { SameChoice } from '../../build/lists/ontoShelf.ts';
import { PART_KINDS } from '../../build/schema/partKinds.ts';
import type { PartsListView } from '../worker/partsListProtocol.ts';
import { keepList, say, sayColumn, type useList } from './list.ts';
import { Select } from './Select.tsx';

type List = NonNullable<ReturnType<typeof useList.getState>['list']>;

interface Props {
  readonly list: List;
  readonly view: PartsListView;
}

const NONE = '';
const TOLD = {
  told: 'as you told them',
  remembered: 'as remembered from last time',
  guessed: 'guessed by their names',
};
const ERRORS_SHOWN = 20;

/** What the columns are, what the rows make, what is wrong, and what to do with parts known already. */
export function ListSheet({ list, view }: Props) {
  const { wishes, goodRows, refused } = list;
  const blocked = view.ready === undefined || (view.bad > 0 && !goodRows);
  return (
    <>
      <section className="dialog-part">
        <h3>The list</h3>
        <div className="question-fields">
          <div className="pick-field">
            <span>All of them are</span>
            <Select
              label="kind of part"
              value={view.kind ?? NONE}
              choices={[
                { id: NONE, name: 'told by a column' },
                ...PART_KINDS.map((id) => ({ id, name: words(id) })),
              ]}
              onChoose={(id) => {
                const { kind: _, columns: __, ...rest } = wishes;
                const kind = PART_KINDS.find((each) => each === id);
                say({ wishes: kind === undefined ? rest : { ...rest, kind } });
              }}
            />
          </div>
          <div className="pick-field">
            <span>Decimals stand after a</span>
            <Select
              label="mark before decimals"
              value={wishes.decimals ?? view.decimals ?? NONE}
              choices={[
                ...(view.decimals === undefined ? [{ id: NONE, name: 'not clear yet' }] : []),
                { id: 'point', name: 'point' },
                { id: 'comma', name: 'comma' },
              ]}
              onChoose={(id) => {
                if (id === 'point' || id === 'comma') say({ wishes: { ...wishes, decimals: id } });
              }}
            />
          </div>
          <div className="pick-field">
            <span>Its values are known</span>
            <Select
              label="trust"
              value={wishes.trust ?? 'maker'}
              choices={[
                { id: 'maker', name: 'from a maker or shop' },
                { id: 'measured', name: 'by measuring' },
                { id: 'inferred', name: 'by inference' },
              ]}
              onChoose={(id) => {
                if (id === 'maker' || id === 'measured' || id === 'inferred')
                  say({ wishes: { ...wishes, trust: id } });
              }}
            />
          </div>
        </div>
      </section>
      {view.reasons.length > 0 && <Reasons says="It can not be read so:" reasons={view.reasons} />}
      {view.columns.length > 0 && (
        <section className="dialog-part">
          <h3>Its columns{view.by && <small>, {TOLD[view.by]}</small>}</h3>
          <ul className="list-columns">
            {view.columns.map((column) => (
              <Column key={column.name} column={column} fields={view.fields} />
            ))}
          </ul>
        </section>
      )}
      {view.rows.length > 0 && <Rows view={view} />}
      {view.errors.length > 0 && (
        <Reasons
          says={`${view.bad} of ${view.rows.length} rows can not be read:`}
          reasons={view.errors.slice(0, ERRORS_SHOWN)}
          more={view.errors.length - ERRORS_SHOWN}
        />
      )}
      {refused.length > 0 && <Reasons says="Not taken:" reasons={refused} />}
      <section className="dialog-part list-keep">
        {view.known > 0 && <SameChoices list={list} known={view.known} />}
        {view.bad > 0 && (
          <label className="tick">
            <input
              type="checkbox"
              checked={goodRows}
              onChange={(event) => say({ goodRows: event.target.checked })}
            />
            take the rows that read, leave the others
          </label>
        )}
        <button type="button" className="main-button" disabled={blocked} onClick={() => void keepList()}>
          lay {view.taken} {view.taken === 1 ? 'part' : 'parts'} on your shelf
        </button>
      </section>
    </>
  );
}

/** `flightController` as a person says it. */
const words = (name: string) => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();

interface ColumnProps {
  readonly column: PartsListView['columns'][number];
  readonly fields: PartsListView['fields'];
}

function Column({ column: { name, sample, field, unit }, fields }: ColumnProps) {
  const units = fields.find(({ path }) => path === field)?.units ?? [];
  const choices = unit === NONE || units.includes(unit) ? units : [...units, unit];
  return (
    <li>
      <span className="list-column">
        {name === '' ? 'without a name' : name} <small>{sample}</small>
      </span>
      <Select
        label={`what ${name} is`}
        value={field}
        choices={[
          { id: NONE, name: 'left out' },
          ...fields.map(({ path }) => ({ id: path, name: words(path.replaceAll('.', ': ')) })),
        ]}
        onChoose={(to) => sayColumn(name, to, NONE)}
      />
      {choices.length > 0 && (
        <Select
          label={`unit of ${name}`}
          value={unit}
          choices={[{ id: NONE, name: 'in each cell' }, ...choices.map((id) => ({ id, name: id }))]}
          onChoose={(to) => sayColumn(name, field, to)}
        />
      )}
    </li>
  );
}

const ROWS_SHOWN = 100;

function Rows({ view: { rows } }: { readonly view: PartsListView }) {
  return (
    <section className="dialog-part">
      <h3>Its rows</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reached by keyboard */}
      <section className="list-rows" tabIndex={0} aria-label="rows of the list">
        <table>
          <thead>
            <tr>
              <th scope="col">line</th>
              <th scope="col">part</th>
              <th scope="col">price</th>
              <th scope="col">becomes</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, ROWS_SHOWN).map((row) => (
              <tr key={row.line}>
                <td className="figure">{row.line}</td>
                <td>
                  {row.name} <small>{row.says}</small>
                </td>
                <td className="figure">{row.price}</td>
                <td>{row.bad ? <b>{row.becomes}</b> : row.becomes}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {rows.length > ROWS_SHOWN && <p>and {rows.length - ROWS_SHOWN} more.</p>}
      </section>
    </section>
  );
}

const SAME: readonly (readonly [SameChoice, string])[] = [
  ['old', 'leave the old ones'],
  ['new', 'put the new ones in their place'],
  ['both', 'have both'],
];

function SameChoices({ list, known }: { readonly list: List; readonly known: number }) {
  return (
    <fieldset className="question-group">
      <legend>
        {known} {known === 1 ? 'is' : 'are'} known already. What shall be done?
      </legend>
      <div className="choices">
        {SAME.map(([choice, says]) => (
          <label key={choice} className="tick">
            <input
              type="radio"
              name="same"
              checked={list.same === choice}
              onChange={() => say({ same: choice })}
            />
            {says}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface ReasonsProps {
  readonly says: string;
  readonly reasons: readonly string[];
  readonly more?: number;
}

function Reasons({ says, reasons, more = 0 }: ReasonsProps) {
  return (
    <section className="dialog-part" role="alert">
      <p>{says}</p>
      <ul className="list-errors">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      {more > 0 && <p>and {more} more.</p>}
    </section>
  );
}

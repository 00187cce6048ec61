import type { HitsReport } from '../../assess/parts/airframeData.ts';
import { loadPathWords } from '../../report/loadPath.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { ScrollTable } from '../parts/ScrollTable.tsx';

/** Every way an arm is struck against every surface: how often it breaks, and from what speed on. */
export function HitTable({ hits, manner }: { readonly hits: HitsReport; readonly manner: Manner }) {
  const worst = new Map<string, HitsReport['hits'][number]>();
  for (const hit of hits.hits) {
    const key = `${hit.way} ${hit.surface}`;
    const known = worst.get(key);
    if (known === undefined || hit.chance > known.chance) worst.set(key, hit);
  }
  const ways = [...new Set(hits.hits.map(({ way }) => way))];
  const surfaces = [...new Set(hits.hits.map(({ surface }) => surface))];
  return (
    <section className="figure wide">
      <h3>An arm struck</h3>
      <ScrollTable label="How often an arm breaks">
        <table className="hit-table">
          <thead>
            <tr>
              <th scope="col">way</th>
              {surfaces.map((surface) => (
                <th key={surface} scope="col">
                  {surface}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ways.map((way) => (
              <tr key={way}>
                <th scope="row">{way}</th>
                {surfaces.map((surface) => {
                  const hit = worst.get(`${way} ${surface}`);
                  return (
                    <td key={surface}>
                      {hit && (
                        <>
                          <b>{chance(hit.chance)}</b>
                          <small>
                            at {sayInWords(hit.speed, 'speed', manner)}
                            {hit.breakingSpeed !== undefined &&
                              `; half at ${asKnown(hit.breakingSpeed, hit.logDeviation, manner)}`}
                          </small>
                        </>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
      <p className="figure-says">
        How many break at that speed, of the weakest arm; the scatter of carbon between makers and batches is
        in it.
      </p>
      <p className="figure-says">{loadPathWords(hits, (value) => sayInWords(value, 'length', manner))}</p>
    </section>
  );
}

/** Of a normal distribution, from its middle to its 90th percentile (a table of the normal distribution). */
const TO_90TH = 1.2816;

/** No finer than the scatter of the strength allows, given as the deviation of its logarithm. */
function asKnown(speed: number, logDeviation: number, manner: Manner): string {
  const spread = Math.exp(TO_90TH * logDeviation);
  return formatQuantity(speed, 'speed', { ...manner, band: [speed / spread, speed * spread] });
}

function chance(value: number): string {
  if (value < 0.005) return 'hardly any';
  if (value > 0.995) return 'nearly all';
  return `${Math.round(value * 100)} %`;
}

import { useCallback, useMemo, useState } from 'react';
import type { HitsReport, HitWay } from '../../assess/parts/airframeData.ts';
import type { Build } from '../../build/schema/build.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import { type ArmLoad, armLoads, placeOnArm, stressBands } from '../../report/solids/armStresses.ts';
import type { CraftSolids } from '../../report/solids/solidsOf.ts';
import { writeGlb } from '../../report/solids/writeGlb.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { restate } from '../../units/restate.ts';
import { saveFile } from '../desk/files.ts';
import { fileName } from '../desk/pictures.ts';
import type { RoundScene } from './airframe3d.ts';
import { RoundView, type Shown } from './RoundView.tsx';
import { useSolids } from './useSolids.ts';

interface Props {
  readonly build: Build;
  readonly hits?: HitsReport;
  readonly manner: Manner;
  readonly width: number;
  readonly height: number;
  /** Whether the loads show at first. */
  readonly loaded?: boolean;
  readonly onScale?: (pen: number) => void;
}

const OVERLAYS: readonly { readonly id: keyof Shown; readonly word: string }[] = [
  { id: 'discs', word: 'swept discs' },
  { id: 'wakes', word: 'slipstreams' },
  { id: 'guards', word: 'guards' },
  { id: 'balance', word: 'centre of gravity' },
  { id: 'dimensions', word: 'dimensions' },
];

/** The open build in the round: what lies over it is switched on and off, arms carry the stress of a hit. */
export function AirframeRound({ build, hits, manner, width, height, loaded = false, onScale }: Props) {
  const craft = useSolids(build);
  const [shown, setShown] = useState<Shown>({
    discs: !loaded,
    wakes: false,
    guards: true,
    balance: !loaded,
    dimensions: !loaded,
  });
  const [load, setLoad] = useState(loaded);
  const [way, setWay] = useState<HitWay>('side-on');
  const [surface, setSurface] = useState('concrete');
  const [bands, setBands] = useState<readonly string[]>([]);
  const onScene = useCallback((made: RoundScene) => setBands(made.bandColours()), []);
  const struck = useMemo(
    () => (load && craft && hits ? armLoads(craft.arms, hits.hits, way, surface) : []),
    [load, craft, hits, way, surface],
  );
  const loads = useMemo(() => ({ loads: struck, bounds: stressBands(struck) }), [struck]);
  const labels = useMemo(
    () =>
      struck.map(({ arm, worst }) => ({
        at: placeOnArm(arm, worst.at),
        text: sayStress(worst.stress),
      })),
    [struck],
  );
  if (craft === undefined || width === 0) return <p className="waiting">Being put together.</p>;
  const { ways, surfaces } = choicesOf(hits, way);
  return (
    <RoundView
      craft={craft}
      width={width}
      height={height}
      shown={shown}
      labels={labels}
      loads={loads}
      description={inWords(craft)}
      onScene={onScene}
      {...(onScale ? { onScale } : {})}
    >
      <div className="round-tools">
        <fieldset className="round-overlays">
          <legend className="unseen">shown over the aircraft</legend>
          {OVERLAYS.filter(
            ({ id }) => id !== 'guards' || craft.solids.some(({ look }) => look === 'guard'),
          ).map(({ id, word }) => (
            <label key={id} className="tick">
              <input
                type="checkbox"
                checked={shown[id]}
                onChange={() => setShown((now) => ({ ...now, [id]: !now[id] }))}
              />
              {word}
            </label>
          ))}
          {hits && (
            <label className="tick">
              <input type="checkbox" checked={load} onChange={() => setLoad(!load)} />
              loads of a hit
            </label>
          )}
        </fieldset>
        <span className="stage-acts">
          <button type="button" className="plain-button small" onClick={() => saveSolids(craft)}>
            save glTF<span className="unseen"> of the airframe</span>
          </button>
        </span>
      </div>
      {load && (
        <div className="round-loads">
          <label>
            struck{' '}
            <select value={way} onChange={(event) => setWay(event.target.value as HitWay)}>
              {ways.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
          <label>
            on{' '}
            <select value={surface} onChange={(event) => setSurface(event.target.value)}>
              {surfaces.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
          <Legend bounds={loads.bounds} colours={bands} />
          <p className="figure-says">{loadsInWords(struck, manner)}</p>
        </div>
      )}
    </RoundView>
  );
}

/** Bands of stress by number and shade, in one row. */
function Legend({
  bounds,
  colours,
}: {
  readonly bounds: readonly number[];
  readonly colours: readonly string[];
}) {
  return (
    <ul className="round-legend" aria-label="stress along the arm, megapascals">
      {colours.map((colour, i) => (
        <li key={colour}>
          <svg className={`round-swatch band-${i}`} viewBox="0 0 34 12" aria-hidden="true">
            <rect width="34" height="12" fill={colour} />
          </svg>
          {Math.round((bounds[i] ?? 0) / 1e6)} to {Math.round((bounds[i + 1] ?? 0) / 1e6)}
          {i === colours.length - 1 && ' MPa'}
        </li>
      ))}
    </ul>
  );
}

function choicesOf(hits: HitsReport | undefined, way: HitWay) {
  const all = hits?.hits ?? [];
  return {
    ways: [...new Set(all.map((hit) => hit.way))],
    surfaces: [...new Set(all.filter((hit) => hit.way === way).map((hit) => hit.surface))],
  };
}

function often(chance: number): string {
  if (chance < 0.005) return 'hardly any';
  if (chance > 0.995) return 'nearly all';
  return `${Math.round(chance * 100)} %`;
}

/** [Pa], to two digits: the hit itself is not known more finely. */
const sayStress = (stress: number): string => withUnit(Number((stress / 1e6).toPrecision(2)), 'MPa');

function loadsInWords(struck: readonly ArmLoad[], manner: Manner): string {
  const worst = struck.toSorted((a, b) => b.worst.stress - a.worst.stress)[0];
  if (worst === undefined) return 'No arm is struck so.';
  const { arm, hit } = worst;
  return `Largest pull or push along each arm at ${sayInWords(hit.speed, 'speed', manner)}. The most is in the ${arm.name}: ${sayStress(worst.worst.stress)}, ${restate(withUnit(Math.round(worst.worst.at * 1000), 'mm'), manner)} from its root; ${often(hit.chance)} of such arms break, first in ${hit.weakest}.`;
}

/** The aircraft told to whom can't see it. */
export function inWords({
  bounds: { low, high },
  solids,
  discs,
  centreOfGravity,
  thrustCentre,
}: CraftSolids): string {
  const mm = (axis: 0 | 1 | 2): string => withUnit(Math.round((high[axis] - low[axis]) * 1000), 'mm');
  const off = (axis: 0 | 1 | 2): number => Math.round((centreOfGravity[axis] - thrustCentre[axis]) * 1000);
  const far = (axis: 0 | 1 | 2): string => withUnit(Math.abs(off(axis)), 'mm');
  const parts = [...new Set(solids.filter(({ part }) => part !== 'frame').map(({ name }) => name))];
  return `${mm(0)} long, ${mm(1)} wide over the discs and ${mm(2)} high, ${discs.length} propellers. Its centre of gravity lies ${far(0)} ${off(0) < 0 ? 'behind' : 'ahead of'} and ${far(2)} ${off(2) > 0 ? 'below' : 'above'} the centre of lift. On board: ${parts.join(', ')}.`;
}

const saveSolids = (craft: CraftSolids): void =>
  saveFile(`${fileName(craft.name)}.glb`, new Blob([writeGlb(craft)], { type: 'model/gltf-binary' }));

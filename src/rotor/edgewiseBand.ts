import { type Outcome, solved } from '../numerics/outcome.ts';
import { openThings, TEN_TO_NINETY, unexplained } from './band.ts';
import type { SectionTables } from './sections.ts';
import { solveEdgewise } from './solveEdgewise.ts';
import { spreadsOf } from './spreads.ts';
import type { Blade, EdgewiseCondition, EdgewiseState } from './types.ts';

export const EDGEWISE_LOADS = [
  'thrustCoefficient',
  'powerCoefficient',
  'inPlaneForce',
  'sideForce',
  'momentAdvancingUp',
  'momentAftUp',
] as const;

/** What of a rotor in oblique flow gets a band. */
export type EdgewiseLoad = (typeof EDGEWISE_LOADS)[number];

/** 10th and 90th percentile of each, in the units of `EdgewiseState`. */
export type EdgewiseBand = Readonly<Record<EdgewiseLoad, readonly [number, number]>>;

/**
 * How far the growth of the inflow across the disc is open, one standard deviation over Drees': the linear distributions in
 * print (Coleman 1945, Drees 1949, White and Blake 1979, Pitt and Peters 1981; Leishman 2006, table 3.1) lie a third apart.
 */
const LEAN_SPREAD = 0.3;
/** Of forces and moments besides, since nobody has measured them at this size (ours, no source). */
const NEVER_MEASURED = 0.25;

/**
 * Bands in edgewise flow: pitch, drag and chord as `rotorBand` knows them, and the lean of the inflow, each moved by a whole
 * standard deviation both ways and solved anew, the larger change counting (a stalled side bends). So a force or moment that crosses
 * zero keeps a band there.
 *
 * @param state the answer of `solveEdgewise` for this blade and condition
 * @param reynolds75 of the blade at this speed of turning, as `solveRotor` gives it
 */
export function edgewiseBand(
  blade: Blade,
  sections: SectionTables,
  condition: EdgewiseCondition,
  state: EdgewiseState,
  reynolds75: number,
): Outcome<EdgewiseBand> {
  const { angularSpeed, axialSpeed, edgewiseSpeed } = condition;
  const advance = (Math.hypot(axialSpeed, edgewiseSpeed) * 2 * Math.PI) / (angularSpeed * blade.diameter);
  const spreads = spreadsOf(blade, advance);
  const shares = unexplained(blade, { tipMach: state.tipMach, reynolds75 }, spreads);
  const squares = EDGEWISE_LOADS.map((load) => {
    const share =
      load === 'thrustCoefficient'
        ? shares.thrust
        : load === 'powerCoefficient'
          ? shares.power
          : Math.hypot(shares.thrust, NEVER_MEASURED);
    return (share * state[load]) ** 2;
  });
  const moves: ((sign: number) => Outcome<EdgewiseState>)[] = [
    ...openThings(blade, spreads).map(
      ([moved, spread]) =>
        (sign: number) =>
          solveEdgewise(moved(sign * spread), sections, condition),
    ),
    (sign) => solveEdgewise(blade, sections, { ...condition, inflowLean: 1 + sign * LEAN_SPREAD }),
  ];
  for (const move of moves) {
    const ways = [move(1), move(-1)];
    const answered = ways.flatMap((way) => (way.ok ? [way.value] : []));
    const [first] = ways;
    // At an edge of what can be solved only one of the two ways may be open.
    if (answered.length === 0 && first !== undefined && !first.ok) return first;
    EDGEWISE_LOADS.forEach((load, k) => {
      const change = Math.max(...answered.map((other) => Math.abs(other[load] - state[load])));
      squares[k] = (squares[k] ?? 0) + change * change;
    });
  }
  const band = (load: EdgewiseLoad): readonly [number, number] => {
    const half = TEN_TO_NINETY * Math.sqrt(squares[EDGEWISE_LOADS.indexOf(load)] ?? 0);
    return [state[load] - half, state[load] + half];
  };
  return solved({
    thrustCoefficient: band('thrustCoefficient'),
    powerCoefficient: band('powerCoefficient'),
    inPlaneForce: band('inPlaneForce'),
    sideForce: band('sideForce'),
    momentAdvancingUp: band('momentAdvancingUp'),
    momentAftUp: band('momentAftUp'),
  });
}

import type { Air } from '../../air/standardAtmosphere.ts';
import { noSolution } from '../../numerics/outcome.ts';
import { edgewiseBand } from '../../rotor/edgewiseBand.ts';
import type { SectionTables } from '../../rotor/sections.ts';
import { solveEdgewise } from '../../rotor/solveEdgewise.ts';
import { solveRotor } from '../../rotor/solveRotor.ts';
import type { Blade } from '../../rotor/types.ts';
import { bandedCell } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';
import { type Edgewise, NONE, type RotorAnswer, rotorAnswer } from './rotorAnswer.ts';

/** Share of the tip speed that `solveEdgewise` goes to. */
const LARGEST_ALONG = 0.6;

/** As `rotorAnswer`, moving along the disc too. */
export function edgewiseAnswer(
  blade: Blade,
  sections: SectionTables,
  air: Air,
  rpm: number,
  speed: number,
  along: number,
): RotorAnswer {
  const axial = rotorAnswer(blade, sections, air, rpm, speed);
  const angularSpeed = (rpm * Math.PI) / 30;
  const condition = { angularSpeed, axialSpeed: speed, edgewiseSpeed: along, air };
  const fastest = LARGEST_ALONG * angularSpeed * (blade.diameter / 2);
  const solved =
    along > fastest
      ? noSolution(
          `${along.toFixed(0)} m/s along the disc is beyond ${LARGEST_ALONG} of the tip speed, where the retreating blade flies backwards`,
        )
      : solveEdgewise(blade, sections, condition);
  if (!solved.ok) return { ...axial, ...NONE, noSolution: solved.reason };
  const { thrust, power, torque, thrustCoefficient, powerCoefficient } = solved.value;
  const { inPlaneForce, sideForce, momentAdvancingUp, momentAftUp } = solved.value;
  const still = solveRotor(blade, sections, { angularSpeed, axialSpeed: Math.max(speed, 0), air });
  const found = still.ok
    ? edgewiseBand(blade, sections, condition, solved.value, still.value.reynolds75)
    : still;
  const { noSolution: _, noBand: __, ...base } = axial;
  const answer = { ...base, thrustCoefficient, powerCoefficient, thrust, power, torque };
  if (!found.ok) return { ...answer, band: null, noBand: found.reason };
  const { thrustCoefficient: thrustBand, powerCoefficient: powerBand, ...band } = found.value;
  return {
    ...answer,
    band: { thrustCoefficient: thrustBand, powerCoefficient: powerBand },
    edgewise: { along, inPlaneForce, sideForce, momentAdvancingUp, momentAftUp, band },
  };
}

/** Forces in the disc and moments on the hub as a table; nothing where no speed along the disc was asked. */
export function edgewiseText(answers: readonly RotorAnswer[]): string {
  const rows = answers.flatMap(({ rpm, speed, edgewise }) => {
    if (edgewise === undefined) return [];
    const { along, band } = edgewise;
    const cell = (name: keyof Edgewise['band'], quantity: 'force' | 'torque') =>
      bandedCell({ value: edgewise[name], band: band[name] }, quantity);
    return [
      [
        rpm.toFixed(0),
        speed.toFixed(1),
        along.toFixed(1),
        cell('inPlaneForce', 'force'),
        cell('sideForce', 'force'),
        cell('momentAdvancingUp', 'torque'),
        cell('momentAftUp', 'torque'),
      ],
    ];
  });
  if (rows.length === 0) return '';
  const header = [
    'rpm',
    'm/s',
    'along m/s',
    'force aft',
    'to the advancing side',
    'moment, advancing side up',
    'aft side up',
  ];
  return `\n${narrowTable(
    header,
    rows,
    header.map(() => 'right' as const),
  )}\n\n`;
}

import type { Apart, Choice, PropellerMatch } from '../../build/infer/matchPropeller.ts';
import type { PartOf } from '../../build/schema/part.ts';

type Table = PartOf<'motor'>['thrustTables'][number];

const percent = (value: number) => `${Math.round(100 * Math.abs(value))} %`;
const side = (value: number) =>
  Math.abs(value) < 0.005 ? 'on' : `${percent(value)} ${value > 0 ? 'over' : 'under'}`;
const rpm = (angularSpeed: number) => `${Math.round((angularSpeed * 30) / Math.PI)} rpm`;

/** What matching a propeller to a table found, in words: for standard error. */
export function matchText(
  match: PropellerMatch,
  propeller: PartOf<'propeller'>,
  table: Table,
  count: number,
  choice: Choice,
): string {
  const { pitch, drag, chord } = match.oddness;
  const turned = `${((pitch * 180) / Math.PI).toFixed(1)} deg`;
  const lines = [
    `${count} lines of the table${choice === 'old' ? ', left out' : ''}. Over its shape, ${propeller.id} now has pitch turned by ${turned}, drag x ${drag.toFixed(2)}, lift x ${chord.toFixed(2)}.`,
    ...verdictText(match, propeller, table, choice),
    `At the table's fastest line, forecast thrust is open by +-${percent(match.after.thrust)} and power by +-${percent(match.after.power)} (before: ${percent(match.before.thrust)}, ${percent(match.before.power)}; 10th to 90th percentile).`,
    ...oddText(match),
  ];
  return `${lines.join('\n')}\n`;
}

function verdictText(
  match: PropellerMatch,
  { id, measured, size }: PartOf<'propeller'>,
  table: Table,
  choice: Choice,
): readonly string[] {
  const had = `the ${measured.length} ${measured.length === 1 ? 'point' : 'points'} that ${id} had`;
  const seen = match.apart
    .map((each) => `${rpm(each.angularSpeed)}: thrust ${side(each.thrust)}, power ${side(each.power)}`)
    .join('; ');
  const where = `Nothing is lost: the older points stay with ${id}, the table with its motor.`;
  switch (match.verdict) {
    case 'none before':
      return [];
    case 'agree':
      return [
        `The table agrees with ${had}, within what both leave open (table against what those lead to: ${seen}). ${keptText(choice, 'each weighed by its spread')}${choice === 'both' ? '' : ` ${where}`}`,
      ];
    case 'contradict': {
      const nearer = match.offShape.old < match.offShape.new ? 'the older points' : 'the table';
      return [
        `CONTRADICTION: the table does not fit ${had}. Table against what those lead to: ${seen}; they may differ by ${mayText(match.apart)} (one standard deviation).`,
        `Nearer to what the shape alone says: ${nearer} (older points ${percent(match.offShape.old)} off, table ${percent(match.offShape.new)}).`,
        `Look at: ${causesOf(match.apart, table, size).join('; ')}.`,
        `${keptText(choice, 'each with its spread widened by how far they are apart')} ${choice === 'both' ? 'When you know which is wrong: --keep-old or --replace. ' : ''}${where}`,
      ];
    }
  }
}

const keptText = (choice: Choice, how: string) =>
  choice === 'both'
    ? `All are kept, ${how}.`
    : choice === 'old'
      ? 'As asked, the older points alone are kept.'
      : "As asked, the table's points alone are kept.";

function mayText(apart: readonly Apart[]): string {
  const mean = (of: (each: Apart) => number) =>
    apart.reduce((sum, each) => sum + of(each), 0) / Math.max(apart.length, 1);
  return `${percent(mean(({ thrustMay }) => thrustMay))} in thrust and ${percent(mean(({ powerMay }) => powerMay))} in power`;
}

/** Likeliest first, by what is off (common practice, no source). */
function causesOf(
  apart: readonly Apart[],
  table: Table,
  { diameter, pitch, bladeCount }: PartOf<'propeller'>['size'],
): readonly string[] {
  const worst = (of: (each: Apart) => number) =>
    apart.map(of).reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most), 0);
  const [thrust, power] = [worst((each) => each.thrust), worst((each) => each.power)];
  const size = `${(diameter / 0.0254).toFixed(1)} x ${(pitch / 0.0254).toFixed(1)} x ${bladeCount}`;
  const another = `another propeller than ${size}, or a worn one`;
  const supply =
    "volts read without load, amperes of another meter, a winding or idle current that is not the motor's";
  const air =
    'air not that of the standard at sea level (at 1500 m both are 14 % less), rpm counted with a wrong number of magnets';
  const scale = 'a scale or its lever, the ground or a wall near the stand';
  const list =
    Math.abs(thrust) < 0.5 * Math.abs(power)
      ? [supply, another]
      : Math.abs(power) < 0.5 * Math.abs(thrust)
        ? [scale, another]
        : thrust > 0 === power > 0
          ? [another, air]
          : [another, scale, supply];
  return flat(table)
    ? ["the table's volts do not fall as its amperes rise: read without load?", ...list]
    : list;
}

/** Whether volts stay as they are while amperes treble. */
function flat({ points }: Table): boolean {
  const volts = points.flatMap(({ voltage }) => (voltage ? [voltage.value] : []));
  const amperes = points.flatMap(({ current }) => (current ? [current.value] : []));
  return (
    volts.length > 1 &&
    Math.max(...volts) - Math.min(...volts) < 0.002 * Math.max(...volts) &&
    Math.max(...amperes) > 3 * Math.min(...amperes)
  );
}

/** Beyond this many standard deviations of the family a fit is doubted aloud. */
const ODD = 2;

function oddText({ oddness }: PropellerMatch): readonly string[] {
  return oddness.deviations <= ODD
    ? []
    : [
        `WARNING: such a propeller is rarer than one in twenty (${oddness.deviations.toFixed(1)} standard deviations from its shape). The points are more likely wrong than the propeller: check volts under load, size and blades, rpm, air.`,
      ];
}

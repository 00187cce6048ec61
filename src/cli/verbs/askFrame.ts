import { type ArmAnswer, askArm } from '../../airframe/askArm.ts';
import { askFrame } from '../../airframe/askFrame.ts';
import type { Mode } from '../../airframe/types.ts';
import { readArmQuestion, readFrameQuestion } from '../../build/read/readQuestion.ts';
import { mustRead } from '../files.ts';
import { BadInput, type Io } from '../io.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskFrameOptions {
  readonly file: string;
  readonly json?: boolean;
}

/** `ask arm`: frequencies, tip stiffness and stress of one arm. */
export function askArmFile(options: AskFrameOptions, io: Io): void {
  const question = mustRead(readArmQuestion(io.readText(options.file), options.file));
  const answer = attempt(options.file, () => askArm(question));
  if (options.json) {
    io.writeOut(`${JSON.stringify(answer, null, 2)}\n`);
    return;
  }
  const lines = [modeTable(answer.frequencies), '', stiffnessLine(answer.tipStiffness)];
  if (answer.deflection !== undefined) {
    lines.push(
      `Under the load the tip moves ${answer.deflection.map((each) => millimetres(each)).join(', ')} along, across, up.`,
    );
  }
  if (answer.stress !== undefined) lines.push(stressLine(answer.stress));
  io.writeOut(`${lines.join('\n')}\n`);
}

/** `ask frame`: the modes of a whole free frame, and each arm's stiffness and stress. */
export function askFrameFile(options: AskFrameOptions, io: Io): void {
  const question = mustRead(readFrameQuestion(io.readText(options.file), options.file));
  const { frequencies, tipStiffness, arms } = attempt(options.file, () => askFrame(question));
  if (options.json) {
    io.writeOut(`${JSON.stringify({ frequencies, tipStiffness, arms }, null, 2)}\n`);
    return;
  }
  const lines = [modeTable(frequencies), ''];
  for (const arm of arms) {
    lines.push(`${arm.name}: ${stiffnessLine(arm.tipStiffness)}`);
    if (arm.stress !== undefined) lines.push(`  ${stressLine(arm.stress)}`);
  }
  io.writeOut(`${lines.join('\n')}\n`);
}

/** A place outside the arm or a plate that holds no arm is bad input; so is a model without a solution. */
function attempt<T>(
  file: string,
  ask: () => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string },
): T {
  try {
    const outcome = ask();
    if (outcome.ok) return outcome.value;
    throw new BadInput(`${file}: ${outcome.reason}. Compare with the example of \`--help\`.`);
  } catch (error) {
    if (error instanceof RangeError) {
      throw new BadInput(`${file}: ${error.message}. Compare with the example of \`--help\`.`);
    }
    throw error;
  }
}

const modeTable = (modes: readonly Mode[]) =>
  narrowTable(
    ['Hz', 'shape'],
    modes.map(({ frequency, shape }) => [frequency.toPrecision(4), shape]),
    ['right', 'left'],
  );

const stiffnessLine = ({ x, y, z }: ArmAnswer['tipStiffness']) =>
  `tip stiffness ${perMetre(x)} along, ${perMetre(y)} across, ${perMetre(z)} up`;

const stressLine = (stress: NonNullable<ArmAnswer['stress']>) =>
  `Stress there: ${mega(stress.alongArm)} along the arm, ${mega(stress.inPlaneShear)} shear in the plate, ${mega(stress.throughShear)} between plies.`;

/** Three digits; along itself an arm is hundreds of times as stiff as across. */
const perMetre = (stiffness: number) =>
  stiffness < 1e6 ? `${(stiffness / 1e3).toPrecision(3)} kN/m` : `${(stiffness / 1e6).toPrecision(3)} MN/m`;
const mega = (stress: number) => `${(stress / 1e6).toPrecision(3)} MPa`;
const millimetres = (metres: number) => `${(metres * 1000).toPrecision(3)} mm`;

import type { Command } from 'commander';
import { withBrief, withExamples, withJson, withShelf } from './commonOptions.ts';
import type { Io } from './io.ts';
import type { AskPartOptions } from './partContext.ts';
import { inColumns } from './print/narrow.ts';
import { type AskHitsOptions, askHits } from './verbs/askHits.ts';
import { type AskKnocksOptions, askKnocks } from './verbs/askKnocks.ts';
import { askPicture } from './verbs/askPicture.ts';
import { askShake } from './verbs/askShake.ts';

/** The questions about a build's picture, shake, hits and knocks, each one part of the assessment. */
export function addAirframeQuestions(ask: Command, io: Io): void {
  askOfBuild(
    ask,
    'picture',
    'what each camera sees of the aircraft, and the smallest change that clears it',
  ).action((build: string, options: AskPartOptions) => askPicture(build, options, inColumns(io, options)));
  askOfBuild(
    ask,
    'shake',
    "the frame's modes, the throttle that rings them, what gyro and cameras feel",
  ).action((build: string, options: AskPartOptions) => askShake(build, options, inColumns(io, options)));
  askOfBuild(ask, 'hits', 'what a square hit does to the arms, against grass, wood and concrete')
    .option('--all', 'every arm, not only the weakest')
    .action((build: string, options: AskHitsOptions) => askHits(build, options, inColumns(io, options)));
  askOfBuild(ask, 'knocks', "what the pilot's flights break and cost, with percentiles")
    .option('--flights <count>', "how many; the brief's when absent")
    .option('--seed <number>', "another run of chance than the build's own")
    .option('--log <file>', 'your own crash log, held against the forecast')
    .addHelpText('after', LOG_EXAMPLE)
    .action((build: string, options: AskKnocksOptions) => askKnocks(build, options, inColumns(io, options)));
}

const LOG_EXAMPLE = `
A crash log, as YAML or JSON; money and broken may be left out:
  flights: 24
  crashedOn: [2, 5, 6, 11, 19]
  money: 41.50 GBP
  broken: { arm: 1, propeller: 9 }`;

/** A verb that asks one part of the assessment of a build. */
function askOfBuild(ask: Command, name: string, says: string): Command {
  const command = ask.command(`${name} <build>`).description(says);
  return withExamples(
    withJson(withShelf(withBrief(command))),
    `ask ${name} demo/first-freestyle/turnstone.yaml --brief demo/first-freestyle/brief.yaml`,
    `ask ${name} my-build.yaml --for cruising --json`,
  );
}

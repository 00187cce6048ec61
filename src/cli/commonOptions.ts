import type { Command, HelpConfiguration, Option } from 'commander';

/** What a brief is for, where nothing narrower is said. */
const BRIEF = 'what it is for: purpose, pilot, site, budget';

export const withBrief = (command: Command, says = BRIEF): Command =>
  command
    .option('--brief <file>', says)
    .option('--for <purpose>', 'a plain brief instead: race, freestyle, "guarded filming", cruising, micro');

export const withShelf = (command: Command): Command =>
  again(command, '--shelf <file>', 'your own parts, laid over the shipped ones');

export const withWanted = (command: Command): Command =>
  again(command, '--want <want>', 'measure=weight, measure=weight@worst..best or @target+-tolerance');

export const withWants = (command: Command): Command =>
  again(withWanted(command), '--limit <limit>', 'measure<=value or measure>=value');

export const withJson = (command: Command): Command =>
  command.option('--json', 'as JSON, in SI; the shapes stand in docs/json.md');

/** An option that may be given several times; its values come as a list, empty when it is not given. */
export function again(command: Command, flags: string, says: string): Command {
  const gather = (value: string, before: readonly string[]): readonly string[] => [...before, value];
  return command.option(flags, `${says}; may be given again`, gather, []);
}

/** Under a verb's help. */
export function withExamples(command: Command, ...lines: readonly string[]): Command {
  const title = lines.length > 1 ? 'Examples' : 'Example';
  return command.addHelpText(
    'after',
    `\n${title}:\n${lines.map((line) => `  quadwright ${line}`).join('\n')}`,
  );
}

/** What stands in for an option that is not given, in words; a list is empty then, which needs no saying. */
export const help: HelpConfiguration = {
  optionDescription: ({ description, defaultValue }: Option): string =>
    typeof defaultValue === 'string' ? `${description} (${defaultValue} when absent)` : description,
};

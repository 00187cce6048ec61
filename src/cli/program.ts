import { Command, CommanderError } from 'commander';
import { BadInput, type ExitCode, exitCode, type Io } from './io.ts';
import { type AskAirOptions, askAir } from './verbs/askAir.ts';

/**
 * Runs the command line on words and tells the exit code. Nothing here reads the machine but
 * through `io`, so tests run it in-process.
 */
export async function runProgram(words: readonly string[], io: Io): Promise<ExitCode> {
  let code: ExitCode = exitCode.fine;
  const program = buildProgram(io, (found) => {
    code = found;
  });
  try {
    await program.parseAsync([...words], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCode.fine : exitCode.badInput;
    if (error instanceof BadInput) {
      io.writeError(`${error.message}\n`);
      return exitCode.badInput;
    }
    io.writeError(
      `Something is wrong inside Quadwright, not in what you gave: ${error instanceof Error ? error.message : String(error)}\n` +
        'Nothing was changed. Please report it with the command you ran.\n',
    );
    return exitCode.internal;
  }
}

function buildProgram(io: Io, _finish: (code: ExitCode) => void): Command {
  const program = new Command('quadwright')
    .description(
      'Settle a small multirotor before money is spent: physics, fit and money from one build file.',
    )
    .helpCommand(false)
    .addHelpText(
      'after',
      `
Exit codes: 0 fine, 1 findings of \`stop\`, 2 bad input, 3 a fault of ours.
Local rules and licensed practice come first. Props off on the bench; lithium packs need care.`,
    );
  const ask = program.command('ask').description('ask the physics directly');
  ask
    .command('air')
    .description('the air at a height (ISO 2533), or of a day')
    .option('--height <height>', 'geopotential height above sea level', '0 m')
    .option('--temperature <temperature>', 'thermometer reading; the standard one when absent')
    .option('--humidity <share>', 'relative humidity', '0 %')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      '\nExample:\n  quadwright ask air --height "300 m" --temperature "9 degC" --humidity "80 %"',
    )
    .action((options: AskAirOptions) => askAir(options, io));

  return configure(program, io);
}

/** The same manners for every verb: output through `io`, errors thrown, hints for misspelt words. */
function configure(command: Command, io: Io): Command {
  command
    .exitOverride()
    .showSuggestionAfterError(true)
    .configureOutput({
      writeOut: io.writeOut,
      writeErr: io.writeError,
      outputError: (text, write) => write(text.replace(/^error: /, '')),
    });
  for (const child of command.commands) configure(child, io);
  return command;
}

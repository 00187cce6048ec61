import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import { addAirframeQuestions } from './airframeQuestions.ts';
import { addBuildVerbs } from './buildVerbs.ts';
import { help } from './commonOptions.ts';
import { addFlightQuestions } from './flightQuestions.ts';
import { BadInput, type ExitCode, exitCode, Interrupted, type Io } from './io.ts';
import { addPartQuestions } from './partQuestions.ts';
import { addShelfVerbs } from './shelfVerbs.ts';

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
    if (error instanceof Interrupted) {
      io.writeError(`${error.message}\n`);
      return exitCode.interrupted;
    }
    io.writeError(
      `Something is wrong inside Quadwright, not in what you gave: ${error instanceof Error ? error.message : String(error)}\n` +
        'Nothing was changed. Please report it with the command you ran.\n',
    );
    return exitCode.internal;
  }
}

function buildProgram(io: Io, finish: (code: ExitCode) => void): Command {
  const program = new Command('quadwright')
    .description(
      'Settle a small multirotor before money is spent: physics, fit and money from one build file.',
    )
    .version(version, '--version', 'tell the version')
    .configureHelp(help)
    .addHelpText(
      'after',
      `
A file named - is what comes through the pipe.
Exit codes: 0 fine, 1 findings of \`stop\`, 2 bad input, 3 a fault of ours, 130 stopped by Ctrl-C.
Local rules and licensed practice come first. Props off on the bench; lithium packs need care.`,
    );
  addBuildVerbs(program, io, finish);
  addShelfVerbs(program, io, finish);
  const ask = program.command('ask').description('ask the physics directly');
  addPartQuestions(ask, io);
  addAirframeQuestions(ask, io);
  addFlightQuestions(ask, io);
  return configure(program, io);
}

/** The same manners for every verb: output through `io`, errors thrown, hints for misspelt words. */
function configure(command: Command, io: Io): Command {
  command
    .helpCommand(false)
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

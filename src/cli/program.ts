import { Command, CommanderError } from 'commander';
import { addAirframeQuestions } from './airframeQuestions.ts';
import { addFlightQuestions } from './flightQuestions.ts';
import { BadInput, type ExitCode, exitCode, Interrupted, type Io } from './io.ts';
import { ARM_EXAMPLE, FRAME_EXAMPLE } from './print/questionExamples.ts';
import { type AskAirOptions, askAir } from './verbs/askAir.ts';
import { type AskFrameOptions, askArmFile, askFrameFile } from './verbs/askFrame.ts';
import { type AskPointOptions, askPoint } from './verbs/askPoint.ts';
import { type AskRotorOptions, askRotor } from './verbs/askRotor.ts';
import { type AssessOptions, assessBuild } from './verbs/assess.ts';
import { type CalibrateOptions, calibrate } from './verbs/calibrate.ts';
import { type CheckOptions, checkFiles } from './verbs/check.ts';
import { type CompareOptions, compareBuilds } from './verbs/compare.ts';
import { type LeaningsOptions, tellLeanings } from './verbs/leanings.ts';
import { lookThroughShelf, type ShelfOptions } from './verbs/shelf.ts';
import { type ShelveOptions, shelveList } from './verbs/shelve.ts';
import { makeShortlist, type ShortlistOptions } from './verbs/shortlist.ts';
import { type TuneOptions, tuneBuild } from './verbs/tuneBuild.ts';

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
    .helpCommand(false)
    .addHelpText(
      'after',
      `
Exit codes: 0 fine, 1 findings of \`stop\`, 2 bad input, 3 a fault of ours, 130 stopped by Ctrl-C.
Local rules and licensed practice come first. Props off on the bench; lithium packs need care.`,
    );
  program
    .command('assess <build>')
    .description('everything computed of one build: measures with bands, findings, fit, money')
    .option('--brief <file>', 'what it is for: purpose, pilot, site, budget')
    .option('--for <purpose>', 'a plain brief instead: race, freestyle, "guarded filming", cruising, micro')
    .option('--shelf <file>', 'your own parts, laid over the shipped ones; may be given again', gather, [])
    .option('--full', 'level flight, wind, control, mission, clearing moves, shake, hits and crashes too')
    .option('--how', 'show how each number is computed')
    .option('--notes', 'show notes as well as stops and risks')
    .option('--json', 'as JSON, in SI; the shape stands in docs/json.md')
    .addHelpText(
      'after',
      `
Examples:
  quadwright assess demo/first-freestyle/kittiwake.yaml --brief demo/first-freestyle/brief.yaml
  quadwright assess my-build.yaml --for cruising --shelf my-parts.yaml --json`,
    )
    .action((build: string, options: AssessOptions) => finish(assessBuild(build, options, io)));

  program
    .command('compare <builds...>')
    .description('two to eight builds side by side, in order, with the reasons')
    .option('--brief <file>', 'what they are for')
    .option('--for <purpose>', 'a plain brief instead')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option('--full', 'level flight, wind, control, mission, clearing moves, shake, hits and crashes too')
    .option('--all', 'every measure, not only the first ones asked for')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Example:
  quadwright compare demo/first-freestyle/turnstone.yaml demo/first-freestyle/bonxie.yaml --brief demo/first-freestyle/brief.yaml`,
    )
    .action((builds: string[], options: CompareOptions) => finish(compareBuilds(builds, options, io)));

  program
    .command('shortlist')
    .description('the best combinations on the shelf under a brief, exactly, with the reasons')
    .requiredOption('--from <build>', 'the build whose other parts stay')
    .option('--brief <file>', 'what it is for')
    .option('--for <purpose>', 'a plain brief instead')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option(
      '--choose <seats>',
      'seats to search: frame,motors,propellers,pack,controllers,flightController,cameras; the first five when absent',
    )
    .option(
      '--want <want>',
      'measure=weight, measure=weight@worst..best or @target+-tolerance; again',
      gather,
      [],
    )
    .option('--limit <limit>', 'measure<=value or measure>=value; may be given again', gather, [])
    .option('--front <measures>', 'Pareto front over first-flight-cost, all-up-mass, flown-time')
    .option('--top <count>', 'how many to list', '10')
    .option('--workers <count>', 'at once; one for each core when absent')
    .option('--keep <file>', 'keep a checkpoint there, and resume from it')
    .option('--relax', 'search again with each limit a tenth wider')
    .option('--full', 'level flight, wind, picture, shake, hits and repairs of what is listed, too')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Examples:
  quadwright shortlist --from demo/first-freestyle/turnstone.yaml --brief demo/first-freestyle/brief.yaml
  quadwright shortlist --from my-build.yaml --for cruising --want "flown-time=5@10 min..40 min" --limit "all-up-mass<=900 g" --keep search.json`,
    )
    .action(async (options: ShortlistOptions) => finish(await makeShortlist(options, io)));

  program
    .command('tune <build>')
    .description('continuous choices of a build set so that it stands highest, with the way there')
    .option(
      '--turn <knob>',
      'pack-position, camera-tilt, layout-size, layout-sweep or arm-thickness, with its ends: knob=low..high; again',
      gather,
      [],
    )
    .option('--brief <file>', 'what it is for')
    .option('--for <purpose>', 'a plain brief instead')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option(
      '--want <want>',
      'measure=weight, measure=weight@worst..best or @target+-tolerance; again',
      gather,
      [],
    )
    .option('--limit <limit>', 'measure<=value or measure>=value; may be given again', gather, [])
    .option('--most <count>', 'settings to try at most', '400')
    .option('--write <file>', 'the tuned build')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Example:
  quadwright tune demo/first-freestyle/turnstone.yaml --brief demo/first-freestyle/brief.yaml --turn "pack-position=-20 mm..20 mm" --turn layout-sweep=0.8..1.2 --want hardest-motor-load=2 --write tuned.yaml`,
    )
    .action((build: string, options: TuneOptions) => finish(tuneBuild(build, options, io)));

  program
    .command('leanings <build>')
    .description('which inputs a figure leans on: one at a time, and by their share of its variance')
    .option(
      '--of <figure>',
      'the figure, such as flown-time, thrust-to-weight, hover-endurance',
      'flown-time',
    )
    .option('--brief <file>', 'what it is for')
    .option('--for <purpose>', 'a plain brief instead')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option('--rows <count>', 'of the sample; inputs + 2 times as many evaluations', '128')
    .option('--seed <number>', 'of the sample: the same gives the same', '1')
    .option('--svg <file>', 'the bars as a figure')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Example:
  quadwright leanings demo/first-freestyle/turnstone.yaml --brief demo/first-freestyle/brief.yaml --of flown-time --svg leanings.svg`,
    )
    .action((build: string, options: LeaningsOptions) => finish(tellLeanings(build, options, io)));

  program
    .command('shelf [what]')
    .description('look through the parts: kinds, one kind, or one part by its id')
    .option('--find <words>', 'only parts that hold these words')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      '\nExamples:\n  quadwright shelf\n  quadwright shelf motor --find 2207\n  quadwright shelf turnstone-5',
    )
    .action((what: string | undefined, options: ShelfOptions) => lookThroughShelf(what, options, io));

  program
    .command('shelve <list>')
    .description('a list of parts (CSV, YAML, JSON) onto your own shelf: shown first, kept when told')
    .requiredOption('--onto <file>', 'your shelf; made when there is none')
    .option('--kind <kind>', 'what all of them are, where no column tells it')
    .option('--column <use>', 'NAME=FIELD in UNIT; NAME= leaves it out; may be given again', gather, [])
    .option(
      '--decimals <mark>',
      'what stands before decimals: point or comma; seen by the numbers when absent',
    )
    .option('--separator <mark>', 'between cells: comma, semicolon, tab, bar; seen when absent')
    .option('--trust <trust>', 'how values are known that do not tell it: measured, maker, inferred')
    .option('--source <words>', 'where the list comes from')
    .option('--rates <file>', 'prices converted at your rates of a day')
    .option('--same <choice>', 'parts known already: old, new or both')
    .option('--good-rows', 'take the rows that read, leave the others')
    .option('--keep', 'write it')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Examples:
  quadwright shelve motors.csv --onto my-parts.yaml --kind motor --column "Weight=mass in g" --column "Price=price in EUR"
  quadwright shelve motors.csv --onto my-parts.yaml --same new --keep`,
    )
    .action((list: string, options: ShelveOptions) => finish(shelveList(list, options, io)));

  program
    .command('check <files...>')
    .description('whether build, brief and shelf files read well and the parts are there; all faults at once')
    .option('--shelf <file>', 'your own parts that they build on; may be given again', gather, [])
    .option('--json', 'as JSON')
    .addHelpText('after', '\nExample:\n  quadwright check my-build.yaml my-parts.yaml')
    .action((files: string[], options: CheckOptions) => finish(checkFiles(files, options, io)));

  program
    .command('calibrate')
    .description("a motor's thrust table as measured points of its propeller: a shelf file to lay over")
    .requiredOption('--motor <id>', 'the motor with the thrust table')
    .requiredOption('--propeller <id>', 'the propeller it was taken with')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .addHelpText(
      'after',
      '\nExample:\n  quadwright calibrate --motor williwaw-2207-1950 --propeller spume-5136-3 > matched.yaml',
    )
    .action((options: CalibrateOptions) => calibrate(options, io));

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

  ask
    .command('rotor')
    .description('thrust, torque and power of a propeller at given speeds')
    .requiredOption('--diameter <length>', 'tip to tip')
    .requiredOption('--blades <count>', 'how many')
    .option('--pitch <length>', 'as printed on it')
    .option('--chord <length>', 'blade width at three quarters of the radius, when measured')
    .option('--blade <file>', 'blade table instead of the pitch: CSV with r/R,c/R,beta (degrees)')
    .requiredOption('--rpm <list>', 'shaft speeds, with commas between')
    .option('--speed <list>', 'axial speeds; 0 m/s when absent')
    .option('--advance <list>', 'advance ratios V/(nD) instead of speeds')
    .option('--anchor <point>', 'one measured static point: "rpm=6000,thrust=1.9 N,power=21 W"')
    .option('--height <height>', 'above sea level, standard air', '0 m')
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Examples:
  quadwright ask rotor --diameter "5 in" --pitch "3.75 in" --blades 3 --rpm 12000,24000 --speed "0 m/s,10 m/s"
  quadwright ask rotor --diameter "5 in" --blades 2 --blade blade.csv --rpm 6000 --advance 0,0.2,0.4 --json

A blade table, root to tip (beta in degrees):
  r/R,c/R,beta
  0.15,0.11,33.1
  0.50,0.19,22.4
  0.75,0.15,15.9
  1.00,0.04,10.2`,
    )
    .action((options: AskRotorOptions) => askRotor(options, io));

  ask
    .command('point <build>')
    .description('every motor of a build at one throttle on its sagging pack, standing still')
    .option('--throttle <share>', 'of all motors', '100 %')
    .option('--charge <share>', 'left in the pack', '90 %')
    .option('--brief <file>', 'for the air of its site')
    .option('--for <purpose>', 'a plain brief instead')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      '\nExample:\n  quadwright ask point demo/first-freestyle/turnstone.yaml --throttle "60 %" --charge "40 %"',
    )
    .action((build: string, options: AskPointOptions) => askPoint(build, options, io));

  ask
    .command('arm')
    .description('frequencies, tip stiffness and stress of one arm')
    .requiredOption('--file <file>', 'the arm, as YAML or JSON')
    .option('--json', 'as JSON, in SI')
    .addHelpText('after', ARM_EXAMPLE)
    .action((options: AskFrameOptions) => askArmFile(options, io));

  ask
    .command('frame')
    .description('modes of a whole free frame, stiffness and stress of its arms')
    .requiredOption('--file <file>', 'the frame, as YAML or JSON')
    .option('--json', 'as JSON, in SI')
    .addHelpText('after', FRAME_EXAMPLE)
    .action((options: AskFrameOptions) => askFrameFile(options, io));

  addAirframeQuestions(ask, io);
  addFlightQuestions(ask, io);
  return configure(program, io);
}

const gather = (value: string, before: readonly string[]): readonly string[] => [...before, value];

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

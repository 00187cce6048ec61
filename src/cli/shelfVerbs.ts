import type { Command } from 'commander';
import { again, withExamples, withJson, withShelf } from './commonOptions.ts';
import type { ExitCode, Io } from './io.ts';
import { type CalibrateOptions, calibrate } from './verbs/calibrate.ts';
import { type CheckOptions, checkFiles } from './verbs/check.ts';
import { lookThroughShelf, type ShelfOptions } from './verbs/shelf.ts';
import { type ShelveOptions, shelveList } from './verbs/shelve.ts';

/** The verbs about parts and files. */
export function addShelfVerbs(program: Command, io: Io, finish: (code: ExitCode) => void): void {
  const shelf = program
    .command('shelf [what]')
    .description('look through the parts: kinds, one kind, or one part by its id')
    .option('--find <words>', 'only parts that hold these words');
  withExamples(withJson(withShelf(shelf)), 'shelf', 'shelf motor --find 2207', 'shelf turnstone-5').action(
    (what: string | undefined, options: ShelfOptions) => lookThroughShelf(what, options, io),
  );

  const shelve = program
    .command('shelve <list>')
    .description('a list of parts (CSV, YAML, JSON) onto your own shelf: shown first, kept when told')
    .requiredOption('--onto <file>', 'your shelf; made when there is none')
    .option('--kind <kind>', 'what all of them are, where no column tells it');
  again(shelve, '--column <use>', 'NAME=FIELD in UNIT; NAME= leaves it out')
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
    .option('--keep', 'write it');
  withExamples(
    withJson(shelve),
    'shelve motors.csv --onto my-parts.yaml --kind motor --column "Weight=mass in g" --column "Price=price in EUR"',
    'shelve motors.csv --onto my-parts.yaml --same new --keep',
  ).action((list: string, options: ShelveOptions) => finish(shelveList(list, options, io)));

  const check = program
    .command('check <files...>')
    .description(
      'whether build, brief and shelf files read well and the parts are there; all faults at once',
    );
  withExamples(withJson(withShelf(check)), 'check my-build.yaml my-parts.yaml').action(
    (files: string[], options: CheckOptions) => finish(checkFiles(files, options, io)),
  );

  const match = program
    .command('calibrate')
    .description("a motor's thrust table as measured points of its propeller: a shelf file to lay over")
    .requiredOption('--motor <id>', 'the motor with the thrust table')
    .requiredOption('--propeller <id>', 'the propeller it was taken with')
    .option('--keep-old', "where both have points: the propeller's own alone")
    .option('--replace', "where both have points: the table's alone");
  withExamples(
    withShelf(match),
    'calibrate --motor williwaw-2207-1950 --propeller spume-5136-3 > matched.yaml',
  ).action((options: CalibrateOptions) => calibrate(options, io));
}

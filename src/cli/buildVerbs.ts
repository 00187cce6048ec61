import type { Command } from 'commander';
import {
  again,
  withBrief,
  withExamples,
  withJson,
  withShelf,
  withWanted,
  withWants,
} from './commonOptions.ts';
import type { ExitCode, Io } from './io.ts';
import { type AssessOptions, assessBuild } from './verbs/assess.ts';
import { type CompareOptions, compareBuilds } from './verbs/compare.ts';
import { type DrawOptions, drawBuild } from './verbs/draw.ts';
import { type LeaningsOptions, tellLeanings } from './verbs/leanings.ts';
import { makeShortlist, type ShortlistOptions } from './verbs/shortlist.ts';
import { type TuneOptions, tuneBuild } from './verbs/tuneBuild.ts';

const FULL = 'level flight, wind, control, mission, clearing moves, shake, hits and crashes too';
const BRIEF = '--brief demo/first-freestyle/brief.yaml';

/** The verbs about whole builds. */
export function addBuildVerbs(program: Command, io: Io, finish: (code: ExitCode) => void): void {
  const assess = program
    .command('assess <build>')
    .description('everything computed of one build: measures with bands, findings, fit, money');
  withShelf(withBrief(assess))
    .option('--full', FULL)
    .option('--how', 'show how each number is computed')
    .option('--notes', 'show notes as well as stops and risks');
  withExamples(
    withJson(assess),
    `assess demo/first-freestyle/kittiwake.yaml ${BRIEF}`,
    'assess my-build.yaml --for cruising --shelf my-parts.yaml --json',
  ).action((build: string, options: AssessOptions) => finish(assessBuild(build, options, io)));

  const compare = program
    .command('compare <builds...>')
    .description('two to eight builds side by side, in order, with the reasons');
  withWanted(withShelf(withBrief(compare)))
    .option('--full', FULL)
    .option('--all', 'every measure, not only the first ones asked for');
  withExamples(
    withJson(compare),
    `compare demo/first-freestyle/turnstone.yaml demo/first-freestyle/bonxie.yaml ${BRIEF}`,
  ).action((builds: string[], options: CompareOptions) => finish(compareBuilds(builds, options, io)));

  const draw = program
    .command('draw <build>')
    .description('the aircraft to scale: from above, from its side, or in the round as glTF')
    .option('--plan <file>', 'from above, as SVG')
    .option('--side <file>', 'from its right side, as SVG')
    .option('--glb <file>', 'in the round, a named node a part: binary glTF 2.0, in metres');
  withExamples(
    withShelf(draw),
    'draw demo/first-freestyle/turnstone.yaml --plan turnstone.svg --glb turnstone.glb',
  ).action((build: string, options: DrawOptions) => drawBuild(build, options, io));

  const shortlist = program
    .command('shortlist')
    .description('the best combinations on the shelf under a brief, exactly, with the reasons')
    .requiredOption('--from <build>', 'the build whose other parts stay');
  withShelf(withBrief(shortlist)).option(
    '--choose <seats>',
    'seats to search: frame,motors,propellers,pack,controllers,flightController,cameras; the first five when absent',
  );
  withWants(shortlist)
    .option('--front <measures>', 'Pareto front over first-flight-cost, all-up-mass, flown-time')
    .option('--top <count>', 'how many to list', '10')
    .option('--workers <count>', 'at once; one for each core when absent')
    .option('--keep <file>', 'keep a checkpoint there, and resume from it')
    .option('--relax', 'search again with each limit a tenth wider')
    .option('--full', 'level flight, wind, picture, shake, hits and repairs of what is listed, too');
  withExamples(
    withJson(shortlist),
    `shortlist --from demo/first-freestyle/turnstone.yaml ${BRIEF}`,
    'shortlist --from my-build.yaml --for cruising --want "flown-time=5@10 min..40 min" --limit "all-up-mass<=900 g" --keep search.json',
  ).action(async (options: ShortlistOptions) => finish(await makeShortlist(options, io)));

  const tune = program
    .command('tune <build>')
    .description('continuous choices of a build set so that it stands highest, with the way there');
  again(
    tune,
    '--turn <knob>',
    'pack-position, camera-tilt, layout-size, layout-sweep or arm-thickness, with its ends: knob=low..high',
  );
  withWants(withShelf(withBrief(tune)))
    .option('--most <count>', 'settings to try at most', '400')
    .option('--write <file>', 'the tuned build');
  withExamples(
    withJson(tune),
    `tune demo/first-freestyle/turnstone.yaml ${BRIEF} --turn "pack-position=-20 mm..20 mm" --turn layout-sweep=0.8..1.2 --want hardest-motor-load=2 --write tuned.yaml`,
  ).action((build: string, options: TuneOptions) => finish(tuneBuild(build, options, io)));

  const leanings = program
    .command('leanings <build>')
    .description('which inputs a figure leans on: one at a time, and by their share of its variance')
    .option('--of <figure>', 'such as flown-time, thrust-to-weight, hover-endurance', 'flown-time');
  withShelf(withBrief(leanings))
    .option('--rows <count>', 'of the sample; inputs + 2 times as many evaluations', '128')
    .option('--seed <number>', 'of the sample: the same gives the same', '1')
    .option('--svg <file>', 'the bars as a figure');
  withExamples(
    withJson(leanings),
    `leanings demo/first-freestyle/turnstone.yaml ${BRIEF} --of flown-time --svg leanings.svg`,
  ).action((build: string, options: LeaningsOptions) => finish(tellLeanings(build, options, io)));
}

import type { Command } from 'commander';
import { SCENES } from '../assess/fly/types.ts';
import { withBrief, withExamples, withJson, withShelf } from './commonOptions.ts';
import type { AskFlightOptions } from './flightOf.ts';
import type { Io } from './io.ts';
import { inColumns } from './print/narrow.ts';
import { LEG_FORMS } from './readLegs.ts';
import { askReserve, askSpeed, askWind } from './verbs/askFlight.ts';
import { type AskFlyOptions, askFly } from './verbs/askFly.ts';
import { askHeat } from './verbs/askHeat.ts';
import { askMinutes } from './verbs/askMinutes.ts';
import { type AskMissionOptions, askMission } from './verbs/askMission.ts';
import { type AskTrimOptions, askTrim } from './verbs/askTrim.ts';

/** The questions about a build in flight. */
export function addFlightQuestions(ask: Command, io: Io): void {
  const ofBuild = (name: string, says: string): Command => {
    const command = ask.command(`${name} <build>`).description(says);
    const told = 'for the air of its site, its wind and its reserve';
    return withJson(
      withShelf(withBrief(command, told))
        .option('--wind <speed>', "instead of the brief's")
        .option('--how', 'how each number is computed, and its source'),
    );
  };

  withExamples(
    ofBuild(
      'trim',
      'every motor in steady flight at given speeds: thrust, speed, current, heat, wash of the others',
    )
      .option(
        '--speed <list>',
        'through the air, level; holding station in a wind is its speed',
        '0 m/s,10 m/s',
      )
      .option('--climb <speed>', 'upward', '0 m/s')
      .option('--charge <share>', 'left in the pack', '50 %'),
    'ask trim demo/first-freestyle/kittiwake.yaml --speed "0 m/s,8 m/s,16 m/s"',
    'ask trim demo/guarded/dotterel.yaml --climb "3 m/s"',
  ).action((build: string, options: AskTrimOptions) => askTrim(build, options, inColumns(io, options)));

  withExamples(
    ofBuild('heat', 'motors against their limits, controllers, wires, plug and the spike on the bus'),
    'ask heat demo/first-freestyle/turnstone.yaml --how',
  ).action((build: string, options: AskFlightOptions) => askHeat(build, options, inColumns(io, options)));

  withExamples(
    ofBuild('minutes', 'how long one pack lasts in every flying style'),
    'ask minutes demo/cruiser/curlew.yaml --for cruising',
  ).action((build: string, options: AskFlightOptions) => askMinutes(build, options, inColumns(io, options)));

  ofBuild('speed', 'level flight: power over speed, top speed, endurance, range, motors at speed')
    .addHelpText(
      'after',
      '\nExample:\n  quadwright ask speed demo/first-freestyle/turnstone.yaml --wind "5 m/s"',
    )
    .action((build: string, options: AskFlightOptions) => askSpeed(build, options, inColumns(io, options)));

  ofBuild('wind', 'tilt and throttle in a wind, the largest wind held, gusts, sway')
    .addHelpText(
      'after',
      '\nExample:\n  quadwright ask wind demo/cruiser/curlew.yaml --for cruising --wind "9 m/s"',
    )
    .action((build: string, options: AskFlightOptions) => askWind(build, options, inColumns(io, options)));

  ofBuild(
    'reserve',
    'roll, pitch and yaw in reserve, how quickly they come, what one lost or hot motor leaves',
  )
    .addHelpText('after', '\nExample:\n  quadwright ask reserve demo/guarded/dotterel.yaml --json')
    .action((build: string, options: AskFlightOptions) => askReserve(build, options, inColumns(io, options)));

  ofBuild('mission', 'legs flown one after another on one pack: time, energy, what is left')
    .option('--legs <legs>', 'with semicolons between; the usual flight of the purpose when left out')
    .addHelpText(
      'after',
      `
Legs:
${LEG_FORMS.map((form) => `  ${form}`).join('\n')}

Example:
  quadwright ask mission demo/cruiser/curlew.yaml --for cruising \\
    --legs "climb 30 m at 4 m/s; cruise 1500 m at 18 m/s against 5 m/s; hover 60 s; cruise 1500 m at 18 m/s with 5 m/s"`,
    )
    .action((build: string, options: AskMissionOptions) =>
      askMission(build, options, inColumns(io, options)),
    );

  ofBuild('fly', 'one scene flown by the simulation, beside what the closed forms say of it')
    .option('--scene <name>', SCENES.join(', '), 'gust')
    .option('--lasts <time>', 'of hover, dash and rough air')
    .option('--seed <number>', 'of the rough air: the same gives the same', '1')
    .option('--svg <file>', 'attitude, speed, drift, throttles and volts over time as a figure')
    .addHelpText(
      'after',
      `
Examples:
  quadwright ask fly demo/first-freestyle/turnstone.yaml --scene bank
  quadwright ask fly demo/cruiser/curlew.yaml --for cruising --scene "rough air" --wind "9 m/s" --lasts "120 s" --seed 7 --svg rough.svg`,
    )
    .action((build: string, options: AskFlyOptions) => askFly(build, options, inColumns(io, options)));
}

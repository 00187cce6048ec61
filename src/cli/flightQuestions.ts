import type { Command } from 'commander';
import { SCENES } from '../assess/fly/types.ts';
import type { AskFlightOptions } from './flightOf.ts';
import type { Io } from './io.ts';
import { LEG_FORMS } from './readLegs.ts';
import { askReserve, askSpeed, askWind } from './verbs/askFlight.ts';
import { type AskFlyOptions, askFly } from './verbs/askFly.ts';
import { type AskMissionOptions, askMission } from './verbs/askMission.ts';
import { type AskMotorOptions, askMotor } from './verbs/askMotor.ts';
import { type AskPackOptions, askPack } from './verbs/askPack.ts';

const gather = (value: string, before: readonly string[]): readonly string[] => [...before, value];

/** Adds the questions about flight, motor and pack to `ask`. */
export function addFlightQuestions(ask: Command, io: Io): void {
  const ofBuild = (name: string, says: string): Command =>
    ask
      .command(`${name} <build>`)
      .description(says)
      .option('--brief <file>', 'for the air of its site, its wind and its reserve')
      .option('--for <purpose>', 'a plain brief instead')
      .option('--shelf <file>', 'your own parts; may be given again', gather, [])
      .option('--wind <speed>', "instead of the brief's")
      .option('--json', 'as JSON, in SI');

  ofBuild('speed', 'level flight: power over speed, top speed, endurance, range, motors at speed')
    .addHelpText(
      'after',
      '\nExample:\n  quadwright ask speed demo/first-freestyle/turnstone.yaml --wind "5 m/s"',
    )
    .action((build: string, options: AskFlightOptions) => askSpeed(build, options, io));

  ofBuild('wind', 'tilt and throttle in a wind, the largest wind held, gusts, sway')
    .addHelpText(
      'after',
      '\nExample:\n  quadwright ask wind demo/cruiser/curlew.yaml --for cruising --wind "9 m/s"',
    )
    .action((build: string, options: AskFlightOptions) => askWind(build, options, io));

  ofBuild('reserve', 'roll, pitch and yaw in reserve, how quickly they come, what one lost motor leaves')
    .addHelpText('after', '\nExample:\n  quadwright ask reserve demo/guarded/dotterel.yaml --json')
    .action((build: string, options: AskFlightOptions) => askReserve(build, options, io));

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
    .action((build: string, options: AskMissionOptions) => askMission(build, options, io));

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
    .action((build: string, options: AskFlyOptions) => askFly(build, options, io));

  ask
    .command('motor')
    .description('a motor from its nameplate, with bands, and at one point')
    .option('--part <id>', 'a motor on the shelf')
    .option('--stator <size>', 'diameter and height in mm, such as 2207')
    .option('--speed-constant <value>', 'K_V, such as "1850 rpm/V"')
    .option('--mass <mass>', 'with its leads')
    .option('--rpm <number>', 'shaft speed of the point')
    .option('--torque <torque>', 'at the shaft')
    .option('--voltage <voltage>', 'at its terminals, direct-current equivalent, instead of a torque')
    .option('--winding <temperature>', 'of the winding', '60 degC')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Examples:
  quadwright ask motor --stator 2207 --speed-constant "1850 rpm/V" --mass "33 g"
  quadwright ask motor --part haar-2306-1720 --rpm 24000 --torque "120 mN m"`,
    )
    .action((options: AskMotorOptions) => askMotor(options, io));

  ask
    .command('pack')
    .description('how a pack sags over charge, temperature and current')
    .option('--part <id>', 'a pack on the shelf')
    .option('--chemistry <name>', 'LiPo, LiHV or Li-ion', 'LiPo')
    .option('--cells <count>', 'in series')
    .option('--parallel <count>', 'side by side', '1')
    .option('--capacity <charge>', 'printed on it')
    .option('--rate <number>', 'the C-number printed on it; for Li-ion cell amps over Ah')
    .option('--cycles <count>', 'charges behind it', '0')
    .option('--current <list>', 'with commas between', '10 A,50 A,100 A')
    .option('--charge <list>', 'left in it', '90 %,50 %,25 %')
    .option('--temperature <list>', 'of the cells', '25 degC,5 degC')
    .option('--shelf <file>', 'your own parts; may be given again', gather, [])
    .option('--json', 'as JSON, in SI')
    .addHelpText(
      'after',
      `
Examples:
  quadwright ask pack --part samphire-1300-6s --current "20 A,80 A"
  quadwright ask pack --cells 6 --capacity "1300 mAh" --rate 120 --temperature "25 degC,-5 degC"`,
    )
    .action((options: AskPackOptions) => askPack(options, io));
}

import type { Command } from 'commander';
import { withBrief, withExamples, withJson, withShelf } from './commonOptions.ts';
import type { Io } from './io.ts';
import { inColumns } from './print/narrow.ts';
import { ARM_EXAMPLE, FRAME_EXAMPLE } from './print/questionExamples.ts';
import { type AskAirOptions, askAir } from './verbs/askAir.ts';
import { type AskFrameOptions, askArmFile, askFrameFile } from './verbs/askFrame.ts';
import { type AskGustsOptions, askGusts } from './verbs/askGusts.ts';
import { type AskMotorOptions, askMotor } from './verbs/askMotor.ts';
import { type AskPackOptions, askPack } from './verbs/askPack.ts';
import { type AskPointOptions, askPoint } from './verbs/askPoint.ts';
import { type AskRotorOptions, askRotor } from './verbs/askRotor.ts';

/** The questions about one thing alone: air, propeller, motor, pack, the drive of a build, an arm, a frame. */
export function addPartQuestions(ask: Command, io: Io): void {
  const air = ask
    .command('air')
    .description('the air at a height (ISO 2533), or of a day')
    .option('--height <height>', 'geopotential height above sea level', '0 m')
    .option('--temperature <temperature>', 'thermometer reading; the standard one when absent')
    .option('--humidity <share>', 'relative humidity', '0 %');
  withExamples(withJson(air), 'ask air --height "300 m" --temperature "9 degC" --humidity "80 %"').action(
    (options: AskAirOptions) => askAir(options, inColumns(io, options)),
  );

  const gusts = ask
    .command('gusts')
    .description('wind at a height, its gusts with their spectrum, and a seeded stretch of them')
    .requiredOption('--wind <speed>', 'mean, at 10 m')
    .option('--height <height>', 'of the craft above ground', '10 m')
    .option(
      '--roughness <length>',
      'of the ground: 0.2 mm open water, 30 mm short grass, 1 m a suburb',
      '30 mm',
    )
    .option('--frequency <list>', 'to tell the spectrum at', '0.01 Hz,0.1 Hz,1 Hz')
    .option('--lasts <time>', 'of the stretch in --json', '60 s')
    .option('--step <time>', 'of the stretch in --json', '0.1 s')
    .option('--seed <number>', 'the same gives the same', '1');
  withExamples(withJson(gusts), 'ask gusts --wind "7 m/s" --height "30 m"').action(
    (options: AskGustsOptions) => askGusts(options, inColumns(io, options)),
  );

  const rotor = ask
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
    .option('--along <list>', 'speeds along the disc as well: force aft, side force and hub moments')
    .option('--anchor <point>', 'one measured static point: "rpm=6000,thrust=1.9 N,power=21 W"')
    .option('--height <height>', 'above sea level, standard air', '0 m');
  withExamples(
    withJson(rotor),
    'ask rotor --diameter "5 in" --pitch "3.75 in" --blades 3 --rpm 12000,24000 --speed "0 m/s,10 m/s"',
    'ask rotor --diameter "5 in" --pitch "3.75 in" --blades 3 --rpm 18000 --along "0 m/s,10 m/s,20 m/s"',
    'ask rotor --diameter "5 in" --blades 2 --blade blade.csv --rpm 6000 --advance 0,0.2,0.4 --json',
  )
    .addHelpText(
      'after',
      `
A blade table, root to tip (beta in degrees):
  r/R,c/R,beta
  0.15,0.11,33.1
  0.50,0.19,22.4
  0.75,0.15,15.9
  1.00,0.04,10.2`,
    )
    .action((options: AskRotorOptions) => askRotor(options, inColumns(io, options)));

  const motor = ask
    .command('motor')
    .description('a motor from its nameplate, with bands, and at one point')
    .option('--part <id>', 'a motor on the shelf')
    .option('--stator <size>', 'diameter and height in mm, such as 2207')
    .option('--speed-constant <value>', 'K_V, such as "1850 rpm/V"')
    .option('--mass <mass>', 'with its leads')
    .option('--rpm <number>', 'shaft speed of the point')
    .option('--torque <torque>', 'at the shaft; negative where the propeller drives the motor')
    .option('--voltage <voltage>', 'at its terminals, direct-current equivalent, instead of a torque')
    .option('--winding <temperature>', 'of the winding', '60 degC');
  withExamples(
    withJson(withShelf(motor)),
    'ask motor --stator 2207 --speed-constant "1850 rpm/V" --mass "33 g"',
    'ask motor --part haar-2306-1720 --rpm 24000 --torque "120 mN m"',
    'ask motor --part haar-2306-1720 --rpm 24000 "--torque=-60 mN m"',
  ).action((options: AskMotorOptions) => askMotor(options, inColumns(io, options)));

  const pack = ask
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
    .option('--temperature <list>', 'of the cells', '25 degC,5 degC');
  withExamples(
    withJson(withShelf(pack)),
    'ask pack --part samphire-1300-6s --current "20 A,80 A"',
    'ask pack --cells 6 --capacity "1300 mAh" --rate 120 --temperature "25 degC,-5 degC"',
  ).action((options: AskPackOptions) => askPack(options, inColumns(io, options)));

  const point = ask
    .command('point <build>')
    .description('every motor of a build at one throttle on its sagging pack, standing still')
    .option('--throttle <share>', 'of all motors', '100 %')
    .option('--charge <share>', 'left in the pack', '90 %');
  withExamples(
    withJson(withShelf(withBrief(point, 'for the air of its site'))),
    'ask point demo/first-freestyle/turnstone.yaml --throttle "60 %" --charge "40 %"',
  ).action((build: string, options: AskPointOptions) => askPoint(build, options, inColumns(io, options)));

  const arm = ask
    .command('arm')
    .description('frequencies, tip stiffness and stress of one arm')
    .requiredOption('--file <file>', 'the arm, as YAML or JSON');
  withJson(arm)
    .addHelpText('after', ARM_EXAMPLE)
    .action((options: AskFrameOptions) => askArmFile(options, inColumns(io, options)));

  const frame = ask
    .command('frame')
    .description('modes of a whole free frame, stiffness and stress of its arms')
    .requiredOption('--file <file>', 'the frame, as YAML or JSON');
  withJson(frame)
    .addHelpText('after', FRAME_EXAMPLE)
    .action((options: AskFrameOptions) => askFrameFile(options, inColumns(io, options)));
}

import { type Air, standardAtmosphere } from '../../air/standardAtmosphere.ts';
import { MEASURED_TIP_MACH } from '../../rotor/band.ts';
import { bladeFromNameplate, bladeFromTable } from '../../rotor/blade.ts';
import { anchorBlade } from '../../rotor/fitBlade.ts';
import { type MeasurementGain, nextMeasurement } from '../../rotor/nextMeasurement.ts';
import { type SectionTables, sectionTables } from '../../rotor/sections.ts';
import type { Blade } from '../../rotor/types.ts';
import { BadInput, type Io } from '../io.ts';
import { HEIGHTS, listOption, numberOption, quantityWithin, wholeOption } from '../options.ts';
import { narrowTable } from '../print/narrow.ts';
import { readBladeTable } from '../readBladeTable.ts';
import { bladeDoubts } from './bladeDoubts.ts';
import { edgewiseAnswer, edgewiseText } from './rotorAlong.ts';
import { FASTEST, type RotorAnswer, rotorAnswer } from './rotorAnswer.ts';

export interface AskRotorOptions {
  readonly diameter: string;
  readonly pitch?: string;
  readonly blades: string;
  readonly chord?: string;
  readonly blade?: string;
  readonly rpm: string;
  readonly speed?: string;
  readonly advance?: string;
  readonly along?: string;
  readonly anchor?: string;
  readonly height?: string;
  readonly json?: boolean;
}

/** `ask rotor`: a propeller at given speeds, from its nameplate or its blade table. */
export function askRotor(options: AskRotorOptions, io: Io): void {
  const air = standardAtmosphere({
    height: quantityWithin('--height', options.height ?? '0 m', 'length', HEIGHTS),
  });
  const sections = sectionTables();
  const blade = calibrated(bladeOf(options, io), options.anchor, sections, air);
  const speeds = listOption('--rpm', options.rpm, (item) => numberOption('--rpm', item, 1, 190_000));
  if (options.speed !== undefined && options.advance !== undefined) {
    throw new BadInput('--speed and --advance: give one of the two.');
  }
  const flows =
    options.advance === undefined
      ? listOption('--speed', options.speed ?? '0 m/s', (item) => ({
          speed: quantityWithin('--speed', item, 'speed', {
            low: -FASTEST,
            high: FASTEST,
            words: `-${FASTEST} m/s to ${FASTEST} m/s`,
          }),
        }))
      : listOption('--advance', options.advance, (item) => ({
          advance: numberOption('--advance', item, -5, 5),
        }));
  const along = listOption('--along', options.along ?? '0 m/s', (item) =>
    quantityWithin('--along', item, 'speed', { low: 0, high: FASTEST, words: `0 m/s to ${FASTEST} m/s` }),
  );
  const answers = speeds.flatMap((rpm) =>
    flows.flatMap((flow) => {
      const speed = 'speed' in flow ? flow.speed : (flow.advance * rpm * blade.diameter) / 60;
      if (options.along === undefined) return [rotorAnswer(blade, sections, air, rpm, speed)];
      return along.map((each) => edgewiseAnswer(blade, sections, air, rpm, speed, each));
    }),
  );
  io.writeOut(
    options.json
      ? `${JSON.stringify(answers, null, 2)}\n`
      : `${answersText(answers, blade)}${edgewiseText(answers)}${fastText(answers, blade, air)}${nextText(blade, sections, air, answers)}`,
  );
}

function bladeOf(options: AskRotorOptions, io: Io): Blade {
  const diameter = quantityWithin('--diameter', options.diameter, 'length', {
    low: 0.02,
    high: 1,
    words: '20 mm to 1 m',
  });
  const bladeCount = wholeOption('--blades', options.blades, 1, 8);
  const pitch =
    options.pitch === undefined
      ? undefined
      : quantityWithin('--pitch', options.pitch, 'length', {
          low: 0,
          high: 2 * diameter,
          words: '0 to two diameters',
        });
  if (options.blade !== undefined) {
    if (options.chord !== undefined)
      throw new BadInput('--chord: the blade table tells the chords already. Leave it out.');
    const columns = readBladeTable(io.readText(options.blade), options.blade);
    for (const doubt of bladeDoubts(columns, pitch, diameter)) io.writeError(`${options.blade}: ${doubt}\n`);
    return bladeFromTable({ diameter, bladeCount, ...columns, ...(pitch === undefined ? {} : { pitch }) });
  }
  if (pitch === undefined) {
    throw new BadInput(
      '--pitch is missing. Give the pitch, such as --pitch "3.75 in", or a table with --blade FILE.csv.',
    );
  }
  const chordAt75 =
    options.chord === undefined
      ? {}
      : {
          chordAt75: quantityWithin('--chord', options.chord, 'length', {
            low: 0.01 * diameter,
            high: 0.3 * diameter,
            words: '0.01 to 0.3 of the diameter, measured at three quarters of the radius',
          }),
        };
  return bladeFromNameplate({ diameter, pitch, bladeCount, ...chordAt75 });
}

/** `rpm=6000,thrust=1.9 N,power=21 W`: one measured static point. */
function calibrated(blade: Blade, text: string | undefined, sections: SectionTables, air: Air): Blade {
  if (text === undefined) return blade;
  const pairs = new Map(
    text.split(',').map((pair) => {
      const at = pair.indexOf('=');
      return [pair.slice(0, at).trim(), pair.slice(at + 1).trim()] as const;
    }),
  );
  const example = '"rpm=6000,thrust=1.9 N,power=21 W"';
  const unknown = [...pairs.keys()].find((key) => !['rpm', 'thrust', 'power'].includes(key));
  if (unknown !== undefined) throw new BadInput(`--anchor: "${unknown}" is not read. Allowed: ${example}.`);
  const take = (key: string): string => {
    const value = pairs.get(key);
    if (value === undefined) throw new BadInput(`--anchor: ${key} is missing. Write it like ${example}.`);
    return value;
  };
  const rpm = numberOption('--anchor rpm', take('rpm'), 1, 190_000);
  const fitted = anchorBlade(blade, sections, {
    angularSpeed: (rpm * Math.PI) / 30,
    thrust: quantityWithin('--anchor thrust', take('thrust'), 'force', {
      low: 1e-4,
      high: 1e4,
      words: 'over 0 N',
    }),
    power: quantityWithin('--anchor power', take('power'), 'power', {
      low: 1e-4,
      high: 1e5,
      words: 'over 0 W',
    }),
    air,
  });
  if (!fitted.ok) throw new BadInput(`--anchor: ${fitted.reason}`);
  return fitted.value;
}

/** Which measurement would narrow the answers most, and at which of the shaft speeds asked that is so. */
function nextText(blade: Blade, sections: SectionTables, air: Air, answers: readonly RotorAnswer[]): string {
  let best: { readonly gain: MeasurementGain; readonly rpm: number } | undefined;
  for (const { rpm, speed, thrust } of answers) {
    if (thrust === null) continue;
    const condition = { angularSpeed: (rpm * Math.PI) / 30, axialSpeed: speed, air };
    const gains = nextMeasurement(blade, sections, condition);
    const [gain] = gains.ok ? gains.value : [];
    if (gain === undefined) continue;
    const left = ({ thrustBand, powerBand }: MeasurementGain) => thrustBand + powerBand;
    if (best === undefined || left(gain) < left(best.gain)) best = { gain, rpm };
  }
  if (best === undefined) return '';
  const { gain, rpm } = best;
  const share = (of: number) => `${Math.round(100 * of)} %`;
  const at = `at ${rpm.toFixed(0)} rpm`;
  const what =
    gain.measurement === 'static thrust and power at the rpm asked'
      ? `static thrust and power ${at}; it narrows`
      : `${gain.measurement}; ${at} it narrows`;
  return `Measure next: ${what} the thrust band to ${share(gain.thrustBand)} and the power band to ${share(gain.powerBand)} of its width.\n`;
}

/** Said where a tip is faster than any that the method was checked on. */
function fastText(answers: readonly RotorAnswer[], blade: Blade, air: Air): string {
  const fastest = Math.max(
    ...answers.map(({ rpm, speed }) => Math.hypot((rpm / 60) * Math.PI * blade.diameter, speed)),
  );
  const measured = Math.max(MEASURED_TIP_MACH, blade.anchorTipMach?.[1] ?? 0);
  return fastest <= 1.005 * measured * air.speedOfSound
    ? ''
    : `Nothing was measured beyond tip Mach ${measured.toFixed(measured > MEASURED_TIP_MACH ? 2 : 1)}; here it is ${(fastest / air.speedOfSound).toFixed(2)}, and the bands are widened by judgement.\n`;
}

/** Two digits, without an exponent: nameplates are not known finer. */
const two = (value: number) => String(Number(value.toPrecision(2)));

function answersText(answers: readonly RotorAnswer[], blade: Blade): string {
  const rows = answers.map((each) => {
    const head = [each.rpm.toFixed(0), each.speed.toFixed(1), each.advanceRatio.toFixed(2)];
    if (each.thrust === null || each.power === null || each.torque === null) {
      return [...head, '', '', '', '', '', '', ''];
    }
    const share = (band: readonly [number, number] | undefined) =>
      band === undefined ? '' : `${band[0].toPrecision(2)} to ${band[1].toPrecision(2)}`;
    return [
      ...head,
      two(each.thrust),
      two(each.power),
      two(each.torque * 1000),
      (each.thrustCoefficient ?? 0).toPrecision(2),
      share(each.band?.thrustCoefficient),
      (each.powerCoefficient ?? 0).toPrecision(2),
      share(each.band?.powerCoefficient),
    ];
  });
  const header = [
    'rpm',
    'm/s',
    'J',
    'thrust N',
    'power W',
    'torque mN m',
    'C_T',
    'C_T band',
    'C_P',
    'C_P band',
  ];
  const reasons = new Set(
    answers.flatMap(({ noSolution }) => (noSolution === undefined ? [] : [noSolution])),
  );
  const without = [...reasons].map((reason) => `No solution: ${reason}.\n`).join('');
  const known = blade.anchored ? `${blade.knownBy} and a measured point` : blade.knownBy;
  return `${narrowTable(
    header,
    rows,
    header.map(() => 'right' as const),
  )}\n\n${without}Known by: ${known}. Bands are 10th to 90th percentile. J is the advance of a turn over the diameter, V / (n D); C_T and C_P are thrust over rho n2 D4 and power over rho n3 D5, n in turns a second.\n`;
}

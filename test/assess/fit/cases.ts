import type { Severity } from '../../../src/assess/types.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import type { Variation } from './variations.ts';

/** What a rule must say of a demo build with one thing changed. Limits are TRADE.md's or the rule's own words. */
export interface Case {
  readonly when: string;
  readonly gives: 'passes' | 'silent' | Severity;
  readonly vary: Variation;
}

const passes = (when: string, vary: Variation = {}): Case => ({ when, gives: 'passes', vary });
const silent = (when: string, vary: Variation = {}): Case => ({ when, gives: 'silent', vary });
const gives = (severity: Severity, when: string, vary: Variation = {}): Case => ({
  when,
  gives: severity,
  vary,
});

const MOTOR = 'haar-2306-1720';
const PROP = 'spume-5130-3';
const PACK = 'samphire-1300-6s';
const FRAME = 'turnstone-5';
const BRAIN = 'daymark-30';
const BRIDGE = 'groyne-45';
const LINK = 'maroon-fairway';
const deg = Math.PI / 180;
const rpmPerVolt = Math.PI / 30;

const build = (change: (build: Build) => void): Variation => ({ build: change });
const part = (id: string, fields: Readonly<Record<string, unknown>>): Variation => ({
  parts: { [id]: fields },
});
const screw = (motorLength: number) =>
  build((b) => {
    b.screws.motorLength = motorLength;
  });
const frame = (id: string) =>
  build((b) => {
    b.frame.part = id;
  });
const extra = (id: string, count = 1) =>
  build((b) => {
    b.extras.push({ part: id, count });
  });
const without = (...ids: string[]) =>
  build((b) => {
    b.extras = b.extras.filter((each) => !ids.includes(each.part));
  });
const owns = (...alreadyOwns: string[]): Variation => ({
  brief: (brief) => {
    brief.alreadyOwns = alreadyOwns;
  },
});
const farthest = (distance: number): Variation => ({
  brief: (brief) => {
    brief.farthest = distance;
  },
});
const gap = (kind: string, size: number): Variation => ({
  gaps: [{ motor: 'front left', to: 'a thing', part: kind, gap: size, place: [0.1, 0], overlapShare: 0 }],
});
const ring = (size: number): Variation => ({ ...gap('guards', size), demo: 'guarded/dotterel' });
const standoff = (standoffHeight: number) => part(FRAME, { standoffHeight });
const packSize = (length: number, width: number) => part(PACK, { size: { length, width, height: 0.04 } });
const weighing = (mass: number, region: 'EU' | 'UK' | 'US' | 'other' = 'UK'): Variation => ({
  weighed: mass,
  brief: (brief) => {
    brief.region = region;
  },
});
const pilot = (simulatorHours: number, flightsFlown = 5): Variation => ({
  brief: (brief) => {
    brief.pilot = { simulatorHours, flightsFlown };
  },
});
const tilt = (angle: number) =>
  build((b) => {
    if (b.cameras[0]) b.cameras[0].tilt = angle;
  });
const camera = (id: string) =>
  build((b) => {
    if (b.cameras[0]) b.cameras[0].part = id;
  });
const diagonal = (size: number) =>
  build((b) => {
    b.frame.layout = { kind: 'true X', diagonal: size };
  });
const singles = (length: number) =>
  build((b) => {
    b.controllers = { part: 'riprap-50' };
    b.wiring.supplyLead = { area: 2e-6, length };
  });
const EMPTY_BOXES = {
  [FRAME]: { inTheBox: [], notInTheBox: [] },
  [BRAIN]: { inTheBox: [] },
  [BRIDGE]: { inTheBox: [] },
  'periwinkle-19': { inTheBox: [] },
};
const listless: Variation = { parts: EMPTY_BOXES };

/** Neighbouring tips of a true X are the diagonal over sqrt 2, less the propeller of 129.54 mm, apart. */
const apart = (tips: number) => diagonal((0.12954 + tips) * Math.SQRT2);

export const CASES: Readonly<Record<string, readonly Case[]>> = {
  'motor-hole-circle': [
    passes('both have 16 mm'),
    passes('0.3 mm off', part(MOTOR, { mountCircles: [0.0163] })),
    gives('stop', '0.5 mm off', part(MOTOR, { mountCircles: [0.0165] })),
  ],
  'motor-screw-into-winding': [
    passes('8 mm through 5 mm into 3 mm, on the limit'),
    gives('stop', 'a tenth more', screw(8.1e-3)),
    gives('risk', 'a depth nobody tells, a little over', {
      ...screw(8.3e-3),
      ...part(MOTOR, { threadDepth: undefined }),
    }),
    silent(
      'no length is told',
      build((b) => delete b.screws.motorLength),
    ),
  ],
  'motor-screw-short': [
    passes('2 mm of thread, on the limit', screw(7e-3)),
    gives('risk', '1.9 mm of thread', screw(6.9e-3)),
    gives('stop', '0.9 mm of thread', screw(5.9e-3)),
    gives(
      'note',
      'no length is told',
      build((b) => delete b.screws.motorLength),
    ),
  ],
  'motor-screw-thread': [
    passes('M3 on 16 mm'),
    gives('risk', 'the arm is drilled for another', part(MOTOR, { mountScrew: 'M2' })),
    gives('note', 'M2 on 16 mm', {
      parts: { [MOTOR]: { mountScrew: 'M2' }, [FRAME]: { motorScrew: undefined } },
    }),
  ],
  'motor-screws-at-hand': [
    passes("the frame's list has 8 mm"),
    passes('they are on board', extra('screws-m3x8', 16)),
    passes('they come with the motors', part(MOTOR, { inTheBox: [{ item: 'motor screws', count: 4 }] })),
    gives('risk', "another length than the frame's", screw(7e-3)),
    gives('risk', 'another length on board', extra('screws-m3x10', 16)),
    gives('note', 'nothing brings them', listless),
  ],
  'motor-cells': [
    passes('6S on 5S to 6S'),
    gives('stop', '7S', part(PACK, { cells: 7 })),
    gives('risk', '4S', part(PACK, { cells: 4 })),
    silent('no cells are told', part(MOTOR, { cells: undefined })),
  ],
  'speed-constant-window': [
    passes('1700 rpm/V on 6S, on the limit', part(MOTOR, { speedConstant: { value: 1700 * rpmPerVolt } })),
    gives('risk', '1690 rpm/V', part(MOTOR, { speedConstant: { value: 1690 * rpmPerVolt } })),
    gives('risk', '1960 rpm/V', part(MOTOR, { speedConstant: { value: 1960 * rpmPerVolt } })),
    silent('a size the trade has no window for', { demo: 'micro/wheatear' }),
  ],
  'motor-current': [
    passes('37 A of 37 A', { figures: { peakMotorCurrent: 37 } }),
    gives('risk', '37.1 A', { figures: { peakMotorCurrent: 37.1 } }),
    gives('stop', '46.5 A, over 1.25 times', { figures: { peakMotorCurrent: 46.5 } }),
  ],
  'motor-heat': [
    passes('80 degC', { figures: { hoverCaseTemperature: 353.15 } }),
    gives('risk', '81 degC', { figures: { hoverCaseTemperature: 354.15 } }),
  ],
  'controller-class': [
    passes('45 A at 5 inch 6S'),
    gives('note', '44 A', part(BRIDGE, { current: { value: 44 } })),
    silent('4S', { demo: 'first-freestyle/tystie' }),
  ],
  'arm-thickness': [
    passes('5 mm at 5.1 in'),
    gives(
      'note',
      '4.5 mm',
      build((b) => (b.frame.armThickness = 4.5e-3)),
    ),
    gives(
      'risk',
      '4 mm',
      build((b) => (b.frame.armThickness = 4e-3)),
    ),
    silent('guarded', { demo: 'guarded/dotterel' }),
  ],
  'frame-as-sold': [
    silent('as it is sold'),
    gives(
      'note',
      'arms a tenth longer',
      build((b) => {
        b.frame.layout = { kind: 'true X', diagonal: 0.26 };
      }),
    ),
  ],
  'servo-tail': [silent('four motors'), gives('note', 'a tilting tail', frame('avocet-tri'))],
  'more-motors-no-safety': [silent('four motors'), gives('note', 'six motors', frame('eider-hexa'))],
  'ground-clearance': [
    passes('propellers above the arms'),
    gives(
      'risk',
      'propellers below the arms',
      build((b) => (b.propellers.side = 'below')),
    ),
    gives(
      'risk',
      'a camera hangs lowest',
      build((b) => {
        if (b.cameras[1]) b.cameras[1].place = { x: 0, y: 0, z: 0.04 };
      }),
    ),
  ],
  'spare-arm': [
    passes('one is sold'),
    passes('one in the box', { demo: 'first-freestyle/whimbrel' }),
    gives(
      'note',
      'none is sold',
      part(FRAME, { arms: { construction: 'separate arms', thickness: { value: 5e-3 } } }),
    ),
  ],
  'propeller-too-large': [
    passes('5.1 in on 5.2 in'),
    gives(
      'stop',
      '6 in',
      build((b) => (b.propellers.part = 'neap-6030-2')),
    ),
    passes('3 % over', part(FRAME, { maxPropeller: 0.1258 })),
    gives('stop', 'over 3 % over', part(FRAME, { maxPropeller: 0.1257 })),
  ],
  'propeller-to-propeller-gap': [
    passes('3 mm', apart(3e-3)),
    gives('risk', '2.9 mm', apart(2.9e-3)),
    gives('stop', 'overlap', apart(-1e-3)),
  ],
  'propeller-to-body-gap': [
    passes('as built'),
    passes('5 mm', gap('pack', 5e-3)),
    gives('risk', '4.9 mm', gap('pack', 4.9e-3)),
    gives('stop', 'touching', gap('pack', -0.1e-3)),
  ],
  'propeller-bore': [
    passes('5 mm on 5 mm'),
    gives('stop', 'a smaller hole', part(PROP, { bore: 1.5e-3 })),
    gives('risk', 'a larger hole', part(PROP, { bore: 6e-3 })),
    gives('risk', 'a smaller hole against a guessed shaft', {
      parts: { [PROP]: { bore: 2e-3 }, [MOTOR]: { shaft: undefined } },
    }),
  ],
  'propeller-fixing': [
    passes('nut and nut'),
    gives('stop', 'screws on a nut', part(PROP, { fixing: 'screws' })),
    gives('risk', 'screws on a guessed nut', {
      parts: { [PROP]: { fixing: 'screws' }, [MOTOR]: { shaft: undefined } },
    }),
  ],
  'propeller-hands': [
    passes('two and two'),
    passes('two and one with a tilting tail', frame('avocet-tri')),
    gives(
      'stop',
      'three and one',
      build((b) => {
        const at = (name: string, x: number, y: number, spin: 'clockwise' | 'counterclockwise') => ({
          name,
          x,
          y,
          spin,
        });
        b.frame.layout = {
          kind: 'positions',
          motors: [
            at('a', 0.08, -0.08, 'clockwise'),
            at('b', 0.08, 0.08, 'clockwise'),
            at('c', -0.08, -0.08, 'clockwise'),
            at('d', -0.08, 0.08, 'counterclockwise'),
          ],
        };
      }),
    ),
  ],
  'guard-tip-gap': [
    silent('no guards'),
    passes('0.6 mm on a radius of 38 mm', ring(0.6e-3)),
    gives('note', '1 mm, wide', ring(1e-3)),
    gives('risk', '0.35 mm', ring(0.35e-3)),
    gives('stop', '0.2 mm', ring(0.2e-3)),
  ],
  'guard-lip': [
    passes('a lip of 3 mm', { demo: 'guarded/dotterel' }),
    gives('note', 'a plain hoop', {
      demo: 'guarded/dotterel',
      ...part('dotterel-3', { guards: { tipGap: 0.7e-3, lipRadius: 0, height: 0.018, thickness: 1.2e-3 } }),
    }),
    silent('no guards'),
  ],
  'stack-pattern': [passes('30.5 mm'), gives('stop', 'boards of 16 mm', part(BRIDGE, { pattern: 0.016 }))],
  'stack-one-pattern': [
    passes('both 30.5 mm'),
    gives(
      'risk',
      '30.5 and 20 mm',
      build((b) => (b.flightController.part = 'daymark-20')),
    ),
    silent('one board', { demo: 'guarded/dotterel', ...part(LINK, {}), build: (b) => delete b.videoLink }),
  ],
  'stack-headroom': [
    passes('3 mm', standoff(0.025)),
    gives('risk', '2.9 mm', standoff(0.0249)),
    gives('stop', 'it does not go in', standoff(0.0219)),
  ],
  'pads-over-carbon': [
    passes('as built'),
    passes('2 mm', standoff(0.024)),
    gives('risk', '1.9 mm', standoff(0.0239)),
    gives('note', 'single controllers on carbon arms', singles(0.1)),
    silent('a moulded frame', part(FRAME, { material: { kind: 'moulded nylon' } })),
  ],
  'gyro-mounting': [
    passes('soft'),
    gives(
      'risk',
      'hard',
      build((b) => (b.flightController.gyroMounting = 'hard')),
    ),
    gives('note', 'no rubber anywhere', listless),
  ],
  'usb-reach': [passes('to the left'), gives('note', 'to the front', part(BRAIN, { usbSide: 'front' }))],
  'flight-controller-cells': [
    passes('6S on 3S to 6S'),
    gives('stop', '6S on 4S', part(BRAIN, { cells: { min: 3, max: 5 } })),
    gives('risk', '6S on 7S to 8S', part(BRAIN, { cells: { min: 7, max: 8 } })),
  ],
  'serial-ports': [
    passes('three of three', part(BRAIN, { serialPorts: 3 })),
    gives('stop', 'three of two', part(BRAIN, { serialPorts: 2 })),
  ],
  'supply-voltage': [
    passes('regulators of 5 and 9 V'),
    passes(
      'straight from the pack',
      part(BRAIN, { regulators: [{ voltage: { value: 5 }, current: { value: 2 } }] }),
    ),
    gives('stop', 'over the rating', part(LINK, { minVoltage: 12, maxVoltage: 17.6 })),
    gives('risk', 'dark before landing', part(LINK, { minVoltage: 22, maxVoltage: 26.4 })),
  ],
  'regulator-load': [
    passes(
      '1 A of 1.34 A',
      part(BRAIN, { regulators: [{ voltage: { value: 9 }, current: { value: 1.34 } }] }),
    ),
    gives(
      'risk',
      '1 A of 1.32 A',
      part(BRAIN, { regulators: [{ voltage: { value: 9 }, current: { value: 1.32 } }] }),
    ),
    gives(
      'stop',
      '1 A of 0.99 A',
      part(BRAIN, { regulators: [{ voltage: { value: 9 }, current: { value: 0.99 } }] }),
    ),
  ],
  'bus-spike': [
    passes('90 mm of lead'),
    gives('risk', 'a capacitor of 26 V', part('cap-1000-35', { voltage: 26 })),
    passes(
      'a video link of 30 V on the pack, with a capacitor',
      part(LINK, { minVoltage: 18, maxVoltage: 30 }),
    ),
    gives('risk', 'the same without', {
      ...part(LINK, { minVoltage: 18, maxVoltage: 30 }),
      ...without('cap-1000-35'),
    }),
    silent('nothing on the bus tells a rating', without('cap-1000-35')),
  ],
  'controller-count': [
    passes('four motors'),
    gives('stop', 'six motors on one board', frame('eider-hexa')),
    passes('six motors on six controllers', {
      build: (b) => {
        b.frame.part = 'eider-hexa';
        b.controllers = { part: 'riprap-50' };
      },
    }),
  ],
  'controller-cells': [
    passes('6S on 3S to 6S'),
    gives('stop', '6S on 5S', part(BRIDGE, { cells: { min: 3, max: 5 } })),
    gives('risk', '6S on 7S to 8S', part(BRIDGE, { cells: { min: 7, max: 8 } })),
  ],
  'board-full-voltage': [
    passes('25.2 V on 25.2 V'),
    gives('risk', '26.1 V on 25.2 V', part(PACK, { chemistry: 'LiHV' })),
    gives('stop', '25.2 V on 21 V', part(BRIDGE, { cells: { min: 3, max: 5 } })),
  ],
  'controller-current': [
    passes('1.2 times 37.5 A is 45 A', { figures: { peakMotorCurrent: 37.5 } }),
    gives('risk', '37.6 A', { figures: { peakMotorCurrent: 37.6 } }),
    gives('stop', '52.1 A of 52 A', { figures: { peakMotorCurrent: 52.1 } }),
  ],
  'lead-length-single': [
    passes('150 mm', singles(0.15)),
    gives('risk', '151 mm', singles(0.151)),
    silent('one board'),
  ],
  'connector-match': [
    passes('60 A plugs'),
    gives(
      'stop',
      'a 30 A plug on the lead',
      build((b) => (b.wiring.connector = 'plug-30')),
    ),
    silent(
      'no plug is told',
      build((b) => delete b.wiring.connector),
    ),
  ],
  'connector-current': [
    passes('120 A on a 60 A plug', { figures: { peakPackCurrent: 120 } }),
    gives('risk', '121 A', { figures: { peakPackCurrent: 121 } }),
  ],
  'main-wire': [
    passes('14 AWG'),
    gives(
      'risk',
      '16 AWG',
      build((b) => (b.wiring.packLead = { area: 1.31e-6, length: 0.09 })),
    ),
    silent(
      'no lead is told',
      build((b) => delete b.wiring.packLead),
    ),
  ],
  'capacitor-fitted': [
    passes('1000 uF'),
    passes('one in a box', {
      ...without('cap-1000-35'),
      ...part(BRIDGE, { inTheBox: [{ item: 'capacitor', count: 1 }] }),
    }),
    gives('risk', 'none', without('cap-1000-35')),
    gives('note', '100 uF', part('cap-1000-35', { capacitance: { value: 100e-6 } })),
    gives('note', '3000 uF', extra('cap-1000-35', 2)),
  ],
  'capacitor-voltage': [
    passes('35 V on 6S'),
    gives('risk', '31 V on 25.2 V', part('cap-1000-35', { voltage: 31 })),
    gives('stop', '25 V on 25.2 V', part('cap-1000-35', { voltage: 25 })),
  ],
  // 120 C of 1.3 Ah are 156 A on the label, 78 A held.
  'pack-current': [
    passes('77.9 A', { figures: { peakPackCurrent: 77.9 } }),
    gives('note', '78.1 A', { figures: { peakPackCurrent: 78.1 } }),
    gives('risk', '156.1 A', { figures: { peakPackCurrent: 156.1 } }),
    gives('risk', 'round cells, 14 A of 13 A', {
      ...part(PACK, { chemistry: 'Li-ion', cRating: 10 }),
      figures: { peakPackCurrent: 14 },
    }),
    gives('stop', 'round cells, 17 A of 13 A', {
      ...part(PACK, { chemistry: 'Li-ion', cRating: 10 }),
      figures: { peakPackCurrent: 17 },
    }),
  ],
  'sag-at-full-throttle': [
    passes('3.3 V', { figures: { fullThrottleCellVoltage: 3.3 } }),
    gives('risk', '3.29 V', { figures: { fullThrottleCellVoltage: 3.29 } }),
  ],
  'label-honesty': [
    silent('the resistance is told'),
    passes('99 C', part(PACK, { cRating: 99, cellResistance: undefined })),
    gives('note', '100 C', part(PACK, { cRating: 100, cellResistance: undefined })),
  ],
  'pack-wear': [
    silent('a new pack'),
    passes(
      '150 charges',
      build((b) => (b.pack.cycles = 150)),
    ),
    gives(
      'risk',
      '151 charges',
      build((b) => (b.pack.cycles = 151)),
    ),
  ],
  'pack-length': [
    passes('100 mm on 100 mm', packSize(0.1, 0.038)),
    gives('risk', '101 mm', packSize(0.101, 0.038)),
    gives('stop', '121 mm', packSize(0.121, 0.038)),
    gives('note', 'a place nobody tells', {
      parts: {
        [FRAME]: { pack: { side: 'above' } },
        [PACK]: { size: { length: 0.2, width: 0.03, height: 0.04 } },
      },
    }),
  ],
  'pack-width': [
    passes('42 mm on 42 mm', packSize(0.076, 0.042)),
    gives('risk', '43 mm', packSize(0.076, 0.043)),
    gives('stop', '59 mm', packSize(0.076, 0.059)),
    gives('note', 'a place nobody tells', {
      parts: {
        [FRAME]: { pack: { side: 'above' } },
        [PACK]: { size: { length: 0.07, width: 0.09, height: 0.04 } },
      },
    }),
  ],
  'pack-place': [
    passes('4 mm back'),
    gives(
      'risk',
      '60 mm back on a plate of 112 mm',
      build((b) => (b.pack.offset = -0.06)),
    ),
  ],
  'pack-side': [
    passes('above'),
    gives(
      'note',
      'below',
      build((b) => (b.pack.side = 'below')),
    ),
  ],
  balance: [
    passes('as built'),
    gives(
      'risk',
      '30 mm forward',
      build((b) => (b.pack.offset = 0.03)),
    ),
  ],
  'balance-sideways': [
    passes('as built'),
    gives(
      'risk',
      '64 g 60 mm to the right of 657 g',
      build((b) => {
        if (b.cameras[1]) b.cameras[1].place = { x: 0.04, y: 0.06, z: -0.05 };
      }),
    ),
  ],
  'lens-to-pack': [
    passes('30 mm'),
    gives(
      'risk',
      'camera beside the pack',
      build((b) => {
        if (b.cameras[0]) b.cameras[0].place = { x: 0.02, y: 0, z: -0.05 };
      }),
    ),
    silent(
      'no flying camera',
      build((b) => (b.cameras = b.cameras.slice(1))),
    ),
  ],
  'pack-underneath': [
    silent('above'),
    gives(
      'note',
      'below',
      build((b) => (b.pack.side = 'below')),
    ),
  ],
  'pack-pad': [
    passes('on the buying list'),
    passes('in the box', { demo: 'first-freestyle/whimbrel' }),
    gives('note', 'nowhere', listless),
  ],
  'strap-count': [
    passes('two'),
    gives(
      'risk',
      'one',
      build((b) => {
        for (const each of b.extras) each.count = 1;
      }),
    ),
    gives('stop', 'none', without('strap-20x220')),
  ],
  'strap-width': [passes('20 mm'), gives('note', '15 mm', extra('strap-15x180'))],
  // Once round 38 x 40 mm and 40 mm: 196 mm.
  'strap-length': [
    passes('196 mm', part('strap-20x220', { length: 0.196 })),
    gives('risk', '195 mm', part('strap-20x220', { length: 0.195 })),
  ],
  'camera-width': [
    passes('19 mm'),
    gives('note', '14 mm', camera('periwinkle-14')),
    passes('14 mm with packing', {
      build: (b) => {
        if (b.cameras[0]) b.cameras[0].part = 'periwinkle-14';
        b.extras.push({ part: 'perch-camera-14-in-19', count: 1 });
      },
    }),
    gives('stop', '20 mm', camera('periwinkle-20-wide')),
  ],
  'camera-tilt-range': [passes('40 degrees', tilt(40 * deg)), gives('risk', '41 degrees', tilt(41 * deg))],
  'camera-tilt-window': [
    passes('20 degrees, novice', tilt(20 * deg)),
    gives('note', '21 degrees, novice', tilt(21 * deg)),
    gives('note', '9 degrees, novice', tilt(9 * deg)),
  ],
  'flying-camera-mount': [
    silent('cheeks hold it'),
    gives('stop', 'nothing holds it', part(FRAME, { cameraWidths: [] })),
    passes('a mount holds it', { ...part(FRAME, { cameraWidths: [] }), ...extra('perch-camera-19') }),
  ],
  'recording-camera-mount': [
    passes('its own mount'),
    gives('risk', 'none', without('perch-zawn')),
    gives('risk', 'another mount', {
      build: (b) => {
        b.extras = b.extras.map((each) =>
          each.part === 'perch-zawn' ? { ...each, part: 'perch-gloup' } : each,
        );
      },
    }),
  ],
  'recording-camera-soft': [passes('soft'), gives('note', 'hard', extra('perch-gloup-hard'))],
  'soft-print-heat': [
    silent('no print under the motors'),
    passes('60 degC', { ...extra('perch-arm-guards', 4), figures: { hoverCaseTemperature: 333.15 } }),
    gives('risk', '61 degC', { ...extra('perch-arm-guards', 4), figures: { hoverCaseTemperature: 334.15 } }),
  ],
  'camera-cable': [passes('in a box'), gives('note', 'nowhere', listless)],
  'video-system': [
    passes('Fairway both'),
    gives('stop', 'another camera', camera('whelk-19')),
    gives(
      'stop',
      'no link',
      build((b) => delete b.videoLink),
    ),
  ],
  'goggles-system': [
    passes('to be bought'),
    passes('at hand and right', owns('binnacle-fairway')),
    gives('risk', 'at hand and wrong', owns('binnacle-analogue')),
    gives('note', 'at hand, which?', owns('goggles')),
  ],
  'video-antenna': [
    passes('one'),
    gives(
      'stop',
      'none',
      build((b) => (b.antennas = [])),
    ),
    passes('in the box', {
      build: (b) => {
        b.antennas = [];
        b.videoLink = { part: 'maroon-fairway-twin' };
      },
    }),
  ],
  'video-antenna-plug': [
    passes('the same'),
    gives(
      'stop',
      'another',
      build((b) => (b.antennas = [{ part: 'teasel-micro' }])),
    ),
  ],
  'video-cooling': [
    passes('4 W', part(LINK, { power: { value: 4 } })),
    gives('note', '9 W'),
    silent(
      'no link',
      build((b) => delete b.videoLink),
    ),
  ],
  'receiver-fitted': [
    passes('one'),
    gives(
      'stop',
      'none',
      build((b) => delete b.receiver),
    ),
    gives('note', 'two', part(BRAIN, { builtInReceiver: 'Halyard 2.4' })),
  ],
  'transmitter-link': [
    passes('to be bought'),
    passes('at hand and right', owns('tiller-24-full')),
    gives('risk', 'at hand and wrong', owns('tiller-868')),
    gives('note', 'at hand, which?', owns('transmitter')),
  ],
  'receiver-antenna': [
    silent('soldered on'),
    passes(
      'in the box',
      build((b) => (b.receiver = { part: 'halyard-24-twin' })),
    ),
    gives(
      'stop',
      'none',
      build((b) => (b.receiver = { part: 'halyard-868' })),
    ),
  ],
  'antenna-frequency': [
    passes('5.8 GHz on 5.8 GHz'),
    gives(
      'stop',
      '868 MHz on 2.4 GHz',
      build((b) => b.antennas.push({ part: 'sedge-868' })),
    ),
  ],
  'antenna-off-carbon': [
    passes('a mount'),
    gives('risk', 'no mount', without('perch-video-antenna')),
    passes(
      'told, high over the plates',
      build((b) => (b.antennas = [{ part: 'teasel-short', place: { x: -0.06, y: 0, z: -0.07 } }])),
    ),
    gives(
      'risk',
      'told, between the plates',
      build((b) => (b.antennas = [{ part: 'teasel-short', place: { x: -0.05, y: 0, z: -0.01 } }])),
    ),
  ],
  'receiver-antenna-off-carbon': [
    passes('a mount'),
    gives('note', 'no mount', without('perch-receiver-antenna')),
  ],
  'position-receiver-near-video': [
    silent('none on board'),
    passes('at the tail, on a mast', { demo: 'cruiser/curlew' }),
    gives('risk', 'beside the link', {
      demo: 'cruiser/curlew',
      build: (b) => {
        for (const each of b.extras) delete each.place;
      },
    }),
  ],
  'command-power-legal': [
    passes('100 mW'),
    gives('risk', '250 mW in the UK', { ...part('tiller-24', { outputPower: 0.25 }), ...owns('tiller-24') }),
    gives('note', 'a region nobody tells', { brief: (brief) => (brief.region = 'other') }),
  ],
  // 20 dBm + 4 dBi - 108 dBm below: 132 dB less 10 are 32.4 + 67.6 + 20 log10(d): 12.6 km at 2.4 GHz.
  'command-link-margin': [
    passes('500 m'),
    passes('12 km', farthest(12e3)),
    gives('risk', '13 km', farthest(13e3)),
  ],
  'video-link-margin': [
    silent('near by'),
    gives('note', '1 km and no sensitivity', farthest(1000)),
    passes('-95 dBm at 500 m', part(LINK, { sensitivity: -95 })),
    gives('risk', '-93 dBm at 500 m', part(LINK, { sensitivity: -93 })),
  ],
  'failsafe-untested': [
    gives('note', 'always'),
    silent(
      'no receiver',
      build((b) => delete b.receiver),
    ),
  ],
  'must-carry': [
    passes('on board'),
    gives('stop', 'not on board', { brief: (brief) => (brief.mustCarry = 'gloup') }),
    passes('any part will do', { brief: (brief) => (brief.mustCarry = LINK) }),
  ],
  'brief-names-unknown': [
    silent('all known'),
    silent('kinds are known', owns('bench', 'goggles')),
    gives('risk', 'a camera that is nowhere', { brief: (brief) => (brief.mustCarry = 'zawm') }),
    gives('note', 'a tool that is nowhere', owns('iron-66')),
  ],
  'spare-propellers': [passes('to be bought'), gives('note', 'ticked', owns('propeller'))],
  'charger-power': [
    passes('100 W'),
    gives('note', '30 W for a pack of 33 W', {
      ...part('bollard-100', { power: { value: 30 } }),
      ...owns('bollard-100'),
    }),
    silent('one is owned, which?', owns('charger')),
  ],
  'parallel-charging': [
    gives('note', 'four packs one by one'),
    passes('two at once', owns('bollard-500-twin')),
    silent('one pack', { brief: (brief) => (brief.packsWanted = 1) }),
  ],
  'mass-limit': [
    passes('on the limit', { ...weighing(0.85) }),
    gives('stop', 'over it', { ...weighing(0.851) }),
  ],
  'simulator-first': [
    passes('ten hours', pilot(10)),
    gives('risk', 'nine hours', pilot(9)),
    silent('thirty flights flown', pilot(0, 30)),
    passes('a small guarded craft', { demo: 'guarded/dotterel', ...pilot(0) }),
  ],
  'novice-wind': [
    passes('6 m/s', { brief: (brief) => (brief.site.wind = { value: 6 }) }),
    gives('risk', '6.1 m/s', { brief: (brief) => (brief.site.wind = { value: 6.1 }) }),
  ],
  'mass-class': [
    gives('note', 'UK', weighing(0.65)),
    gives('note', 'US', weighing(0.24, 'US')),
    gives('note', 'not told', weighing(0.24, 'other')),
    gives('note', 'EU and too fast', { ...weighing(0.24, 'EU'), figures: { topSpeed: 19 } }),
  ],
  'mass-threshold-near': [
    silent('far from any'),
    passes('5 g under 250 g', weighing(0.245)),
    gives('risk', '4.9 g under 250 g', weighing(0.2451)),
    gives('risk', '4 g under 100 g in the UK', weighing(0.096)),
    silent('97 g in the EU', weighing(0.097, 'EU')),
    // 0.55 lb are 249.48 g.
    gives('risk', '245 g in the US', weighing(0.245, 'US')),
  ],
  'guards-no-permission': [silent('no guards'), gives('note', 'guards', { demo: 'guarded/dotterel' })],
  observer: [
    gives('note', 'goggles'),
    silent(
      'no video',
      build((b) => delete b.videoLink),
    ),
  ],
  // 327 x (0.230 + 0.1295) m + 20 m = 137.6 m.
  'beyond-sight': [
    silent('no distance is told'),
    passes('137 m', farthest(137)),
    gives('note', '138 m', farthest(138)),
  ],
  // 1.6 dBi are 1.445 times: 17.3 mW radiate 25 mW.
  'video-power-legal': [
    passes(
      '17 mW and 1.6 dBi',
      build((b) => (b.videoLink = { part: LINK, outputPower: 0.017 })),
    ),
    gives('note', '25 mW and 1.6 dBi'),
    gives(
      'risk',
      '200 mW',
      build((b) => (b.videoLink = { part: LINK, outputPower: 0.2 })),
    ),
    passes('1 W in the US', {
      build: (b) => (b.videoLink = { part: LINK, outputPower: 1 }),
      brief: (brief) => (brief.region = 'US'),
    }),
    silent(
      'no link',
      build((b) => delete b.videoLink),
    ),
  ],
};

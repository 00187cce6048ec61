import { expose } from 'comlink';
import { samplePicture } from '../../../test/report/samplePicture.ts';
import type { Desk } from './protocol.ts';

// TEMPORARY until src/assess lands: deleted before reporting.
const seat = (part: string) => ({ part });
const desk: any = {
  open: async () => ({
    brief: {
      name: 'First freestyle, windy point',
      currency: 'GBP',
      site: { height: 12, temperature: 282, wind: { value: 8 } },
    },
    builds: [
      'Headland 5, dead cat',
      'Skerry 5, true X',
      'Kittiwake 5, stretched X',
      'Tern 3, guarded',
      'Gannet 7, H',
      'Petrel 5, squashed X',
    ].map((name, i) => ({
      id: `b${i}`,
      build: {
        name,
        frame: seat('f'),
        motors: seat('m'),
        propellers: seat('p'),
        pack: { part: 'k', offset: 0 },
        controllers: seat('c'),
        cameras: [{ part: 'cam', role: 'flying', tilt: 0.4 }],
      },
    })),
    shelf: [
      { id: 'p', kind: 'propeller', name: 'Sample 5.1x3.6x3', says: '4.2 g, 3.20 GBP' },
      { id: 'p2', kind: 'propeller', name: 'Other 5x4.3x3', says: '4.6 g' },
    ],
  }),
  assess: async () => ({
    ok: true,
    picture: samplePicture,
    measures: [
      {
        id: 'all-up-mass',
        label: 'all-up mass',
        sheet: 'airframe',
        quantity: 'mass',
        value: 0.684,
        band: [0.671, 0.702],
        better: 'less',
        how: 'sum of parts',
        source: 'common practice',
        leansOn: [{ input: 'pack mass', trust: 'maker', share: 0.6 }],
      },
      {
        id: 'thrust-to-weight',
        label: 'thrust to weight',
        sheet: 'airframe',
        quantity: 'ratio',
        value: 7.6,
        band: [6.9, 8.2],
        window: { low: 6, high: 10, source: 'common practice' },
        better: 'window',
        how: 'T/W',
        source: 's',
        leansOn: [],
      },
      {
        id: 'flown-time',
        label: 'minutes, your style',
        sheet: 'airframe',
        quantity: 'time',
        value: 290,
        band: [250, 340],
        better: 'more',
        how: 'h',
        source: 's',
        leansOn: [],
      },
    ],
    findings: [
      {
        id: 'a',
        sheet: 'airframe',
        severity: 'stop',
        says: 'Front pair carries 56 % of the weight: 1.94 N against 1.55 N at hover.',
        remedy: 'Slide the pack 14 mm back.',
        source: '',
        place: { x: 0.08, y: 0.1 },
        parts: ['motors'],
      },
      {
        id: 'b',
        sheet: 'airframe',
        severity: 'risk',
        says: 'Balance is 6 mm ahead of the centre of lift.',
        remedy: 'Slide the pack back.',
        source: '',
        parts: ['pack'],
      },
      {
        id: 'c',
        sheet: 'airframe',
        severity: 'note',
        says: 'Arms of 5 mm suit a 5 inch propeller.',
        remedy: 'None needed.',
        source: '',
        parts: ['frame'],
      },
    ],
  }),
};
expose(desk as Desk);

import type { MassItem } from '../../airframe/types.ts';
import { inBox, onBuyingList } from '../money/boxes.ts';
import { carbonDistance } from './carbonDistance.ts';
import { mountsFor } from './mounts.ts';
import { fails, fits, megahertz, mm, SLACK } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

/** From an antenna to carbon [m]. */
const OFF_CARBON = 0.02;
const POSITION_TO_VIDEO = 0.03;
/** Antennas serve this far off their frequency. */
const BAND = 0.08;

export const antennaRules: readonly FitRule[] = [
  {
    id: 'receiver-antenna',
    title: 'antenna of the receiver',
    limit: 'one on board or in its box, when it needs one',
    severities: ['stop'],
    look: ({ craft }) => {
      const { receiver } = craft.parts;
      if (receiver === undefined || !receiver.needsAntenna) return []; // soldered on
      const own = craft.parts.antennas.some((antenna) => antenna.for === 'receiver');
      const boxed = receiver.inTheBox.some((each) => each.item === 'receiver antenna');
      return [
        own || boxed
          ? fits('The receiver has its antenna.', ['receiver'])
          : fails(
              'stop',
              'The receiver has no antenna: it loses the link within metres.',
              `Add an antenna for ${megahertz(receiver.frequency)}${receiver.antennaPlug === undefined ? '' : ` with a ${receiver.antennaPlug} plug`}.`,
              ['receiver', 'antennas'],
            ),
      ];
    },
  },
  {
    id: 'antenna-frequency',
    title: "antenna's frequency",
    limit: 'its radio, to 8 %',
    severities: ['stop'],
    look: ({ craft }) =>
      craft.parts.antennas.flatMap((antenna) => {
        const { videoLink, receiver } = craft.parts;
        const radio = antenna.for === 'video' ? videoLink : antenna.for === 'receiver' ? receiver : undefined;
        if (radio === undefined) return [];
        const number = { value: antenna.frequency, limit: radio.frequency, quantity: 'frequency' as const };
        return [
          Math.abs(antenna.frequency / radio.frequency - 1) > BAND
            ? fails(
                'stop',
                `An antenna for ${megahertz(antenna.frequency)} on a radio at ${megahertz(radio.frequency)}.`,
                'Take an antenna for that band.',
                ['antennas'],
                { number },
              )
            : fits(
                `${megahertz(antenna.frequency)} antenna on ${megahertz(radio.frequency)}.`,
                ['antennas'],
                {
                  number,
                },
              ),
        ];
      }),
  },
  {
    id: 'antenna-off-carbon',
    title: 'video antenna clear of the carbon',
    limit: '20 mm, or a mount that holds it off where no place is told',
    severities: ['risk'],
    look: (context) => antennaOffCarbon(context, 'video', 'risk'),
  },
  {
    id: 'receiver-antenna-off-carbon',
    title: 'receiver antenna clear of the carbon',
    limit: '20 mm, or a mount that holds it off where no place is told',
    severities: ['note'],
    look: (context) => antennaOffCarbon(context, 'receiver', 'note'),
  },
  {
    id: 'position-receiver-near-video',
    title: 'position receiver clear of the video link',
    limit: '30 mm',
    severities: ['risk'],
    look: ({ craft }) => {
      const index = craft.parts.extras.findIndex(({ part }) => part.kind === 'positionReceiver');
      const item = craft.massItems.find(({ part }) => part === `extras[${index}]`);
      const video = craft.massItems.find(({ part }) => part === 'videoLink');
      if (index < 0 || item === undefined || video === undefined) return [];
      const distance = apart(item, video);
      const number = { value: distance, limit: POSITION_TO_VIDEO, quantity: 'length' as const };
      const place = { x: item.place[0], y: item.place[1] };
      return [
        distance < POSITION_TO_VIDEO - SLACK
          ? fails(
              'risk',
              `The position receiver sits ${mm(distance)} from the video link, which deafens it.`,
              `Keep ${mm(POSITION_TO_VIDEO)}, best on a mount at the tail, and tell its place in the build.`,
              ['extras', 'videoLink'],
              { number, place },
            )
          : fits(`${mm(distance)} between position receiver and video link.`, ['extras'], { number, place }),
      ];
    },
  },
];

/**
 * Where the build tells an antenna's place the distance is reckoned, else a mount is taken to keep it.
 * The outer half of an antenna is what radiates (common practice, no source).
 */
function antennaOffCarbon(
  context: FitContext,
  use: 'video' | 'receiver',
  severity: 'risk' | 'note',
): readonly FitVerdict[] {
  const { craft } = context;
  const radio = use === 'video' ? craft.parts.videoLink : craft.parts.receiver;
  if (radio === undefined || !craft.frame.material.name.includes('carbon')) return [];
  const told = craft.parts.antennas.flatMap((antenna, index) => {
    const item = craft.massItems.find(({ part }) => part === `antennas[${index}]`);
    const known = craft.build.antennas[index]?.place !== undefined;
    return antenna.for === use && item !== undefined && known ? [{ antenna, item }] : [];
  });
  const parts = [use === 'video' ? 'videoLink' : 'receiver', 'antennas', 'frame'];
  if (told.length > 0) {
    return told.map(({ antenna, item }) => {
      const [x, y, z] = item.place;
      const distance = carbonDistance(craft.frame, [x, y, z - antenna.length / 4]);
      const number = { value: distance, limit: OFF_CARBON, quantity: 'length' as const };
      return distance < OFF_CARBON - SLACK
        ? fails(
            severity,
            `The ${use} antenna's outer half is ${mm(distance)} from carbon, which screens it.`,
            `Move it to keep ${mm(OFF_CARBON)}.`,
            parts,
            { number, place: { x, y } },
          )
        : fits(`The ${use} antenna keeps ${mm(distance)} from carbon.`, parts, { number, place: { x, y } });
    });
  }
  const item = use === 'video' ? 'video antenna mount' : 'receiver antenna mount';
  const mount = mountsFor(context, use === 'video' ? 'video antenna' : 'receiver antenna').length > 0;
  if (mount || inBox(craft.parts, item)) {
    return [fits(`A mount holds the ${use} antenna off the plates.`, parts)];
  }
  const listed = onBuyingList(craft.parts, item);
  return [
    fails(
      severity,
      `Nothing on board holds the ${use} antenna${listed ? '; a mount is on the buying list' : ''}: carbon within ${mm(OFF_CARBON)} screens it and blades cut it.`,
      listed
        ? 'Add that mount to the build, so that its mass counts too.'
        : `Add a printed mount that keeps ${mm(OFF_CARBON)} from carbon.`,
      parts,
    ),
  ];
}

const apart = (a: MassItem, b: MassItem) =>
  Math.hypot(a.place[0] - b.place[0], a.place[1] - b.place[1], a.place[2] - b.place[2]);

import type { MassItem } from '../../airframe/types.ts';
import { inBox, onBuyingList } from '../money/boxes.ts';
import { kitChoice, linkOf } from '../money/kitChoice.ts';
import { usualDistance } from '../windows.ts';
import { carbonDistance } from './carbonDistance.ts';
import { legalPower } from './lawRules.ts';
import { mountsFor } from './mounts.ts';
import { linkMargin } from './radioLink.ts';
import { decibels, fails, fits, megahertz, metres, mm, SLACK } from './say.ts';
import { type FitContext, type FitRule, type FitVerdict, TRADE } from './types.ts';

/** From an antenna to carbon [m]. */
const OFF_CARBON = 0.02;
const POSITION_TO_VIDEO = 0.03;
const LEAST_MARGIN = 10;
/** Stub on a transmitter or a receiver [dBi] (common practice, no source). */
const STUB_GAIN = 2;
/** Antennas serve this far off their frequency. */
const BAND = 0.08;
/** Beyond this the picture, not the command, ends a flight [m] (common practice, no source). */
const PICTURE_MATTERS = 1000;

export const radioRules: readonly FitRule[] = [
  {
    id: 'receiver-fitted',
    title: 'a receiver on board',
    limit: 'one',
    severities: ['stop', 'note'],
    look: ({ craft }) => {
      const builtIn = craft.parts.flightController.builtInReceiver;
      const own = craft.parts.receiver;
      if (own !== undefined && builtIn !== undefined) {
        return [
          fails(
            'note',
            `${own.name} is on board, and the flight controller brings a receiver for ${builtIn} as well.`,
            'Leave one out, or see that only one is bound and set up.',
            ['receiver', 'flightController'],
          ),
        ];
      }
      const link = own?.link ?? builtIn;
      return [
        link === undefined
          ? fails(
              'stop',
              'There is no receiver: it cannot be commanded.',
              "Add one of your transmitter's link.",
              ['receiver'],
            )
          : fits(`A receiver for ${link} is on board.`, [
              own === undefined ? 'flightController' : 'receiver',
            ]),
      ];
    },
  },
  {
    id: 'transmitter-link',
    title: 'transmitter and receiver',
    limit: 'one radio link',
    severities: ['risk', 'note'],
    look: ({ craft, brief, shelf }) => {
      const choice = kitChoice(craft, brief, shelf).transmitter;
      const link = linkOf(craft);
      if (choice === undefined || link === undefined) return []; // receiver-fitted
      const others = choice.ownedOthers.map(({ name }) => name).join(', ');
      if (choice.ownedOthers.length > 0 && !choice.owned) {
        return [
          fails(
            'risk',
            `The transmitter at hand (${others}) does not speak ${link}: it cannot be bound.`,
            'Take a receiver of its link, or count another transmitter in.',
            ['receiver'],
          ),
        ];
      }
      if (choice.owned && choice.ownedBy === 'kind') {
        return [
          fails(
            'note',
            `The brief owns a transmitter without saying which; this receiver speaks ${link}.`,
            'Give the id of your transmitter in alreadyOwns, and it is checked.',
            ['receiver'],
          ),
        ];
      }
      return choice.part === undefined
        ? [] // nothing on the shelf speaks it: the money sheet says so
        : [fits(`${choice.part.name} speaks ${link}.`, ['receiver'])];
    },
  },
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
              'Keep 30 mm, best on a mount at the tail, and tell its place in the build.',
              ['extras', 'videoLink'],
              { number, place },
            )
          : fits(`${mm(distance)} between position receiver and video link.`, ['extras'], { number, place }),
      ];
    },
  },
  {
    id: 'command-power-legal',
    title: 'legal power of the transmitter',
    limit: 'EU and UK 100 mW radiated at 2.4 GHz, 25 mW over a dipole at 868 MHz; US 4 W radiated',
    severities: ['risk', 'note'],
    source: 'regulations by region, dated: src/assess/fit/regions.ts; local rules decide',
    look: (context) => {
      const part = transmitterOf(context);
      if (part?.outputPower === undefined || part.frequency === undefined) return []; // not told
      return [
        legalPower(context, {
          seat: 'receiver',
          name: `transmitter (${part.name})`,
          power: part.outputPower,
          // Makers tell the power with their own antenna in it (common practice).
          gain: 0,
          frequency: part.frequency,
        }),
      ];
    },
  },
  {
    id: 'command-link-margin',
    title: 'command link at the farthest',
    limit: '10 dB over the sensitivity in free air',
    severities: ['risk'],
    source: `ITU-R P.525-5 (free-space loss); margin of 10 dB: ${TRADE}`,
    look: (context) => {
      const { receiver, antennas } = context.craft.parts;
      const power = transmitterOf(context)?.outputPower;
      // Without a told sensitivity or power there is nothing to reckon.
      if (receiver?.sensitivity === undefined || power === undefined) return [];
      const own = antennas.find((antenna) => antenna.for === 'receiver')?.gain ?? STUB_GAIN;
      const link = {
        power,
        gains: STUB_GAIN + own,
        sensitivity: receiver.sensitivity,
        frequency: receiver.frequency,
      };
      const distance = context.brief.farthest ?? usualDistance(context.brief.purpose);
      const margin = linkMargin(link, distance);
      const reach = distance * 10 ** ((margin - LEAST_MARGIN) / 20);
      const number = { value: reach, limit: distance, quantity: 'length' as const };
      const says = `The command has ${decibels(margin)} over the receiver's sensitivity at ${metres(distance)}, antennas facing`;
      return [
        margin < LEAST_MARGIN
          ? fails(
              'risk',
              `${says}: ${LEAST_MARGIN} dB is the least.`,
              `Stay inside ${metres(reach)}, or take a lower frequency or a better receiver; more power only inside the law.`,
              ['receiver', 'antennas'],
              { number },
            )
          : fits(`${says}; ${LEAST_MARGIN} dB wanted.`, ['receiver'], { number }),
      ];
    },
  },
  {
    id: 'video-link-margin',
    title: 'video link at the farthest',
    limit: '10 dB over the sensitivity in free air; asked for from 1 km on',
    severities: ['risk', 'note'],
    source: `ITU-R P.525-5 (free-space loss); margin of 10 dB: ${TRADE}`,
    look: (context) => videoLinkMargin(context),
  },
  {
    id: 'failsafe-untested',
    title: 'what it does when the link is lost',
    limit: 'tested before the first flight',
    severities: ['note'],
    look: (context) =>
      linkOf(context.craft) === undefined
        ? []
        : [
            fails(
              'note',
              'Whether it drops when the link is lost no file can tell, and an untested failsafe is the usual fly-away.',
              'Propellers off, arm it, switch the transmitter off: the motors must stop within a second or two.',
              ['receiver', 'flightController'],
            ),
          ],
  },
];

function transmitterOf({ craft, brief, shelf }: FitContext) {
  const choice = kitChoice(craft, brief, shelf).transmitter;
  // One that is owned without saying which has no values to reckon with.
  return choice?.ownedBy === 'kind' ? undefined : choice?.part;
}

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
      `Nothing on board holds the ${use} antenna${listed ? '; a mount is on the buying list' : ''}: carbon within 20 mm screens it and blades cut it.`,
      listed
        ? 'Add that mount to the build, so that its mass counts too.'
        : `Add a printed mount that keeps ${mm(OFF_CARBON)} from carbon.`,
      parts,
    ),
  ];
}

function videoLinkMargin({ craft, brief }: FitContext): readonly FitVerdict[] {
  const link = craft.parts.videoLink;
  const distance = brief.farthest ?? usualDistance(brief.purpose);
  if (link === undefined) return [];
  const power = craft.build.videoLink?.outputPower ?? link.outputPower;
  if (link.sensitivity === undefined) {
    if (distance < PICTURE_MATTERS) return []; // near by, the picture is not what ends a flight
    return [
      fails(
        'note',
        `The sensitivity of the video link's receiving side is not told, so its picture at ${metres(distance)} is not reckoned.`,
        'Fly out by steps and turn back at the first breaks in the picture; give sensitivity on your own shelf.',
        ['videoLink'],
      ),
    ];
  }
  const own = craft.parts.antennas.find((antenna) => antenna.for === 'video')?.gain ?? 0;
  const way = { power, gains: own + STUB_GAIN, sensitivity: link.sensitivity, frequency: link.frequency };
  const margin = linkMargin(way, distance);
  const reach = distance * 10 ** ((margin - LEAST_MARGIN) / 20);
  const number = { value: reach, limit: distance, quantity: 'length' as const };
  const says = `The picture has ${decibels(margin)} in hand at ${metres(distance)}`;
  return [
    margin < LEAST_MARGIN
      ? fails(
          'risk',
          `${says}: ${LEAST_MARGIN} dB is the least.`,
          `Turn back at ${metres(reach)}, or put a directional antenna on the goggles.`,
          ['videoLink', 'antennas'],
          { number },
        )
      : fits(`${says}; ${LEAST_MARGIN} dB wanted.`, ['videoLink'], { number }),
  ];
}

const apart = (a: MassItem, b: MassItem) =>
  Math.hypot(a.place[0] - b.place[0], a.place[1] - b.place[1], a.place[2] - b.place[2]);

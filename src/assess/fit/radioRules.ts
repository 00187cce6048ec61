import { linkOf, transmitterFor } from '../money/kitChoice.ts';
import { usualDistance } from '../windows.ts';
import { legalPower } from './lawRules.ts';
import { linkMargin } from './radioLink.ts';
import { decibels, fails, fits, metres } from './say.ts';
import { type FitContext, type FitRule, type FitVerdict, TRADE } from './types.ts';

const LEAST_MARGIN = 10;
/** Stub on a transmitter or a receiver [dBi] (common practice, no source). */
const STUB_GAIN = 2;
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
      const choice = transmitterFor(craft, brief, shelf);
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
  const choice = transmitterFor(craft, brief, shelf);
  // One that is owned without saying which has no values to reckon with.
  return choice?.ownedBy === 'kind' ? undefined : choice?.part;
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

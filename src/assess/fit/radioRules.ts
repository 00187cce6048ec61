import { hasMount } from './cameraRules.ts';
import { inBox } from './powerRules.ts';
import { fails, fits } from './say.ts';
import type { FitContext, FitRule } from './types.ts';

const antennasFor = ({ craft }: FitContext, use: 'video' | 'receiver') =>
  craft.parts.antennas.filter((antenna) => antenna.for === use);

export const radioRules: readonly FitRule[] = [
  {
    id: 'video-antenna',
    title: 'antenna on the video link',
    look: (context) => {
      const link = context.craft.parts.videoLink;
      if (link === undefined) return [];
      const own = antennasFor(context, 'video');
      if (own.length === 0) {
        return [
          link.inTheBox.some((each) => each.item === 'video antenna')
            ? fits('The video antenna comes with the link.', ['videoLink'])
            : fails(
                'stop',
                'The video link has no antenna: powered without one it burns its output.',
                'Add an antenna of its plug and frequency, and never power it bare.',
                ['videoLink', 'antennas'],
              ),
        ];
      }
      return [fits(`${own.length} video antenna${own.length > 1 ? 's' : ''}.`, ['videoLink', 'antennas'])];
    },
  },
  {
    id: 'video-antenna-plug',
    title: 'plug of the video antenna',
    look: (context) => {
      const link = context.craft.parts.videoLink;
      if (link === undefined) return [];
      return antennasFor(context, 'video').map((antenna) =>
        antenna.plug === link.antennaPlug
          ? fits(`${antenna.plug} on both.`, ['videoLink', 'antennas'])
          : fails(
              'stop',
              `The antenna has ${antenna.plug}, the video link ${link.antennaPlug}: it cannot be plugged on.`,
              'Take the antenna with the right plug; adapters break in the first crash.',
              ['videoLink', 'antennas'],
            ),
      );
    },
  },
  {
    id: 'antenna-frequency',
    title: "antenna's frequency",
    look: (context) => {
      const { videoLink, receiver } = context.craft.parts;
      return context.craft.parts.antennas.flatMap((antenna) => {
        const radio = antenna.for === 'video' ? videoLink : antenna.for === 'receiver' ? receiver : undefined;
        if (radio === undefined) return [];
        const off = Math.abs(antenna.frequency / radio.frequency - 1);
        const number = { value: antenna.frequency, limit: radio.frequency, quantity: 'frequency' as const };
        return [
          off > 0.08
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
      });
    },
  },
  {
    id: 'antenna-off-carbon',
    title: 'antennas clear of the carbon',
    look: (context) => {
      if (!context.craft.frame.material.name.includes('carbon')) return [];
      const video = antennasFor(context, 'video').length > 0;
      if (!video) return [];
      const held = hasMount(context, 'video antenna') || inBox(context.craft.parts, 'video antenna mount');
      return [
        held
          ? fits('The video antenna has a mount that holds it off the plates.', ['antennas', 'frame'])
          : fails(
              'risk',
              'Nothing holds the video antenna: carbon within 20 mm screens it and blades cut it.',
              'Add a printed mount at the tail that keeps 20 mm from carbon.',
              ['antennas', 'frame'],
            ),
      ];
    },
  },
  {
    id: 'receiver-fitted',
    title: 'a receiver on board',
    look: ({ craft }) => {
      const builtIn = craft.parts.flightController.builtInReceiver;
      if (craft.parts.receiver !== undefined)
        return [fits(`Receiver for ${craft.parts.receiver.link}.`, ['receiver'])];
      return [
        builtIn === undefined
          ? fails(
              'stop',
              'There is no receiver: it cannot be commanded.',
              "Add one of your transmitter's link.",
              ['receiver'],
            )
          : fits(`The flight controller brings a receiver for ${builtIn}.`, ['flightController']),
      ];
    },
  },
  {
    id: 'receiver-antenna',
    title: 'antenna of the receiver',
    look: (context) => {
      const { receiver } = context.craft.parts;
      if (receiver === undefined || !receiver.needsAntenna) return [];
      const own = antennasFor(context, 'receiver').length > 0;
      const boxed = receiver.inTheBox.some((each) => each.item === 'receiver antenna');
      return [
        own || boxed
          ? fits('The receiver has its antenna.', ['receiver'])
          : fails(
              'stop',
              'The receiver has no antenna: it loses the link within metres.',
              'Add its antenna.',
              ['receiver', 'antennas'],
            ),
      ];
    },
  },
  {
    id: 'video-cooling',
    title: 'cooling of the video link',
    look: ({ craft }) => {
      const link = craft.parts.videoLink;
      if (link === undefined) return [];
      const power = link.power.value;
      const number = { value: power, limit: 4, quantity: 'power' as const };
      return [
        power > 4
          ? fails(
              'note',
              `The video link turns ${power.toFixed(0)} W into heat and is cooled by flying.`,
              'On the bench not longer than one to two minutes without a fan; use its low-power setting.',
              ['videoLink'],
              { number },
            )
          : fits(`The video link draws ${power.toFixed(1)} W.`, ['videoLink'], { number }),
      ];
    },
  },
  {
    id: 'position-receiver-near-video',
    title: 'position receiver clear of the video link',
    look: ({ craft }) => {
      const item = craft.massItems.find((each) =>
        craft.parts.extras.some(
          ({ part }) => part.kind === 'positionReceiver' && each.name.includes(part.name),
        ),
      );
      const video = craft.massItems.find((each) => each.part === 'videoLink');
      if (item === undefined || video === undefined) return [];
      const distance = Math.hypot(
        item.place[0] - video.place[0],
        item.place[1] - video.place[1],
        item.place[2] - video.place[2],
      );
      const number = { value: distance, limit: 0.03, quantity: 'length' as const };
      return [
        distance < 0.03
          ? fails(
              'risk',
              `The position receiver sits ${(distance * 1000).toFixed(0)} mm from the video link, which deafens it.`,
              'Keep 30 mm, best on a mount at the tail.',
              ['extras', 'videoLink'],
              { number },
            )
          : fits(`${(distance * 1000).toFixed(0)} mm between position receiver and video link.`, ['extras'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'video-power-legal',
    title: 'legal power of the video link',
    look: ({ craft, brief }) => {
      const link = craft.parts.videoLink;
      if (link === undefined) return [];
      const set = craft.build.videoLink?.outputPower ?? link.outputPower;
      // 5.8 GHz short-range devices, CEPT ERC Recommendation 70-03 annex 1: 25 mW radiated; from memory.
      const limit = brief.region === 'EU' || brief.region === 'UK' ? 0.025 : undefined;
      if (limit === undefined || link.frequency < 5.7e9 || link.frequency > 5.9e9) {
        return [
          fails(
            'note',
            `The video link can radiate ${(set * 1000).toFixed(0)} mW.`,
            'Look up what your region and licence allow before the first flight.',
            ['videoLink'],
          ),
        ];
      }
      const number = { value: set, limit, quantity: 'power' as const };
      return [
        set > limit
          ? fails(
              'risk',
              `The video link is set to ${(set * 1000).toFixed(0)} mW; without a licence ${(limit * 1000).toFixed(0)} mW radiated is allowed in the ${brief.region} in this band.`,
              `Set it to ${(limit * 1000).toFixed(0)} mW. Local rules decide.`,
              ['videoLink'],
              { number, source: 'CEPT ERC Recommendation 70-03, annex 1 (from memory)' },
            )
          : fits(`Set to ${(set * 1000).toFixed(0)} mW.`, ['videoLink'], { number }),
      ];
    },
  },
];

const megahertz = (frequency: number) => `${(frequency / 1e6).toFixed(0)} MHz`;

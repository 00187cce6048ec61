import { gogglesFor } from '../money/kitChoice.ts';
import { eachCamera } from './mounts.ts';
import { fails, fits } from './say.ts';
import type { FitRule } from './types.ts';

/** A video link above this is cooled by flying only [W]. */
const WARM_LINK = 4;

export const videoRules: readonly FitRule[] = [
  {
    id: 'video-system',
    title: 'camera and video link',
    limit: 'one video system',
    severities: ['stop'],
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const link = context.craft.parts.videoLink;
        if (part.system === undefined) return undefined; // the camera tells no system
        if (link === undefined) {
          return fails(
            'stop',
            'There is a flying camera and no video link: nothing reaches the goggles.',
            `Add a link of ${part.system}.`,
            ['videoLink'],
          );
        }
        return part.system === link.system
          ? fits(`Camera and link speak ${link.system}.`, ['cameras', 'videoLink'])
          : fails(
              'stop',
              `The camera is for ${part.system}, the link for ${link.system}: no picture.`,
              'Take both of one system.',
              ['cameras', 'videoLink'],
            );
      }),
  },
  {
    id: 'goggles-system',
    title: 'goggles and video link',
    limit: 'one video system',
    severities: ['risk', 'note'],
    look: (context) => {
      const link = context.craft.parts.videoLink;
      const choice = gogglesFor(context.craft, context.brief, context.shelf);
      if (link === undefined || choice === undefined) return [];
      const others = choice.ownedOthers.map(({ name }) => name).join(', ');
      if (choice.ownedOthers.length > 0 && !choice.owned) {
        return [
          fails(
            'risk',
            `The goggles at hand (${others}) do not speak ${link.system}: no picture.`,
            `Take a camera and link of their system, or count goggles for ${link.system} in.`,
            ['videoLink'],
          ),
        ];
      }
      if (choice.owned && choice.ownedBy === 'kind') {
        return [
          fails(
            'note',
            `The brief owns goggles without saying which; this link speaks ${link.system}.`,
            'Give the id of your goggles in alreadyOwns, and it is checked.',
            ['videoLink'],
          ),
        ];
      }
      return choice.part === undefined
        ? [] // nothing on the shelf speaks it: the money sheet says so
        : [fits(`${choice.part.name} speak ${link.system}.`, ['videoLink'])];
    },
  },
  {
    id: 'video-antenna',
    title: 'antenna on the video link',
    limit: 'one on board or in its box',
    severities: ['stop'],
    look: ({ craft }) => {
      const link = craft.parts.videoLink;
      if (link === undefined) return [];
      const count = craft.parts.antennas.filter((antenna) => antenna.for === 'video').length;
      if (count > 0) {
        return [fits(`${count} video antenna${count > 1 ? 's' : ''}.`, ['videoLink', 'antennas'])];
      }
      return [
        link.inTheBox.some((each) => each.item === 'video antenna')
          ? fits('The video antenna comes with the link.', ['videoLink'])
          : fails(
              'stop',
              'The video link has no antenna: powered without one it burns its output.',
              `Add an antenna with a ${link.antennaPlug} plug for its frequency, and never power it bare.`,
              ['videoLink', 'antennas'],
            ),
      ];
    },
  },
  {
    id: 'video-antenna-plug',
    title: 'plug of the video antenna',
    limit: 'the same plug',
    severities: ['stop'],
    look: ({ craft }) => {
      const link = craft.parts.videoLink;
      if (link === undefined) return [];
      return craft.parts.antennas
        .filter((antenna) => antenna.for === 'video')
        .map((antenna) =>
          antenna.plug === link.antennaPlug
            ? fits(`Antenna and link both have ${antenna.plug}.`, ['videoLink', 'antennas'])
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
    id: 'video-cooling',
    title: 'cooling of the video link',
    limit: '4 W without moving air',
    severities: ['note'],
    look: ({ craft }) => {
      const link = craft.parts.videoLink;
      if (link === undefined) return [];
      const power = link.power.value;
      const number = { value: power, limit: WARM_LINK, quantity: 'power' as const };
      return [
        power > WARM_LINK
          ? fails(
              'note',
              `The video link turns ${power.toFixed(1)} W into heat and is cooled by flying.`,
              'On the bench not longer than one to two minutes without a fan; use its low-power setting.',
              ['videoLink'],
              { number },
            )
          : fits(`The video link draws ${power.toFixed(1)} W.`, ['videoLink'], { number }),
      ];
    },
  },
];

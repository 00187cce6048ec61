import { PART_KINDS } from '../../build/schema/partKinds.ts';
import { nearestName } from '../../units/nearestName.ts';
import { sessionCharging } from '../money/charging.ts';
import { fails, fits, volts } from './say.ts';
import type { FitContext, FitRule } from './types.ts';

/** Most that packs on one charging board may differ, per cell [V]. */
const PARALLEL_SPREAD = 0.1;
/** Nobody waits longer than this for a session's packs [s] (common practice, no source). */
const PATIENCE = 2.5 * 3600;

export const kitRules: readonly FitRule[] = [
  {
    id: 'must-carry',
    title: 'what the brief wants on board',
    limit: 'on board',
    severities: ['stop'],
    look: ({ craft, brief, shelf }) => {
      const wanted = brief.mustCarry;
      if (wanted === undefined) return [];
      const part = shelf.parts.get(wanted);
      if (part === undefined) return []; // brief-names-unknown says so
      return [
        aboard(craft).has(wanted)
          ? fits(`${part.name} is on board, as the brief wants.`, ['cameras', 'extras'])
          : fails('stop', `The brief wants ${part.name} on board; it is not.`, 'Add it, with its mount.', [
              'cameras',
              'extras',
            ]),
      ];
    },
  },
  {
    id: 'brief-names-unknown',
    title: 'parts that the brief names',
    limit: 'ids or kinds of part that the shelf knows',
    severities: ['risk', 'note'],
    look: ({ brief, shelf }) => {
      const hint = (typed: string, known: readonly string[]) => {
        const near = nearestName(typed, known);
        return near === undefined
          ? 'Look through the shelf, or add it to your own.'
          : `Did you mean "${near}"?`;
      };
      const carried = brief.mustCarry;
      const kinds: readonly string[] = PART_KINDS;
      const lost = brief.alreadyOwns.filter((each) => !shelf.parts.has(each) && !kinds.includes(each));
      return [
        ...(carried === undefined || shelf.parts.has(carried)
          ? []
          : [
              fails(
                'risk',
                `The brief wants "${carried}" on board, which is on no shelf: whether it is there cannot be checked.`,
                hint(carried, [...shelf.parts.keys()]),
                ['extras'],
              ),
            ]),
        ...lost.map((each) =>
          fails(
            'note',
            `The brief owns "${each}", which is neither a part on the shelf nor a kind of part: it saves no money here.`,
            hint(each, [...kinds, ...shelf.parts.keys()]),
            ['extras'],
          ),
        ),
      ];
    },
  },
  {
    id: 'spare-propellers',
    title: 'spare propellers',
    limit: 'five sets',
    severities: ['note'],
    look: ({ craft, brief }) => {
      const owned = craft.parts.propellers.find(
        ({ id, kind }) => brief.alreadyOwns.includes(id) || brief.alreadyOwns.includes(kind),
      );
      return [
        owned === undefined
          ? fits('Five spare sets of propellers are on the buying list.', ['propellers'])
          : fails(
              'note',
              `${owned.name} are ticked as at hand, so no spares are on the buying list.`,
              'Count them: five spare sets last a beginner a few weeks.',
              ['propellers'],
            ),
      ];
    },
  },
  {
    id: 'charger-power',
    title: 'charger for the packs',
    limit: '1C: cells times 4.2 V times capacity in Ah',
    severities: ['note'],
    look: ({ craft, brief, shelf }) => {
      const session = sessionCharging(craft, brief, shelf);
      if (session === undefined) return []; // no charger known: the money sheet says what is missing
      const { power, charger, limitedBy, rate } = session;
      const number = { value: charger.power.value, limit: power, quantity: 'power' as const };
      return [
        limitedBy === 'charger'
          ? fails(
              'note',
              `The packs on ${charger.name} would take ${power.toFixed(0)} W together; it gives ${charger.power.value.toFixed(0)} W, which charges at ${rate.toFixed(2)} C.`,
              'Charge slower, which does the packs good, or take a stronger charger.',
              ['pack'],
              { number },
            )
          : fits(`${charger.name} gives the ${power.toFixed(0)} W that its packs take at once.`, ['pack'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'parallel-charging',
    title: 'packs charged side by side',
    limit: 'packs within 0.1 V a cell; asked for when a session takes over two and a half hours to charge',
    severities: ['note'],
    look: ({ craft, brief, shelf }) => {
      const session = sessionCharging(craft, brief, shelf);
      if (session === undefined || brief.packsWanted < 2) return [];
      const hours = (session.sessionTime / 3600).toFixed(1);
      const packs = `${brief.packsWanted} packs on ${session.charger.name}`;
      const number = { value: session.sessionTime, limit: PATIENCE, quantity: 'time' as const };
      return [
        session.sessionTime > PATIENCE
          ? fails(
              'note',
              `${packs} take ${hours} h, which tempts to charge them on one board: packs over ${volts(PARALLEL_SPREAD)} a cell apart then drive currents into each other.`,
              `Charge in parallel only packs of equal cells within ${volts(PARALLEL_SPREAD)} a cell, in a fire-safe place, and stay beside them; or take a charger with more outputs.`,
              ['pack'],
              { number },
            )
          : fits(`${packs} take ${hours} h.`, ['pack'], { number }),
      ];
    },
  },
];

function aboard({ parts }: FitContext['craft']): ReadonlySet<string> {
  const { controllers, videoLink, receiver, connector } = parts;
  return new Set(
    [
      parts.frame,
      ...parts.motors,
      ...parts.propellers,
      controllers,
      parts.flightController,
      parts.pack,
      ...parts.cameras,
      videoLink,
      receiver,
      ...parts.antennas,
      connector,
      ...parts.extras.map(({ part }) => part),
    ].flatMap((part) => part?.id ?? []),
  );
}

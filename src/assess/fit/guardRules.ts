import { fails, fits, mm, percent, SLACK } from './say.ts';
import type { FitRule } from './types.ts';

/** Less than this and a flexing blade touches [share of the radius]. */
const TIGHT = 0.01;
/** More than this and the ring gives no thrust back [share of the radius]. */
const WIDE = 0.02;
/** Rings bend this far in a hard turn [m]. */
const TOUCHES = 0.3e-3;

export const guardRules: readonly FitRule[] = [
  {
    id: 'guard-tip-gap',
    title: 'gap inside the guards',
    limit: '1 to 2 % of the radius; stop under 0.3 mm',
    severities: ['stop', 'risk', 'note'],
    look: ({ gaps, craft }) => {
      const ring = gaps.find((gap) => gap.part === 'guards');
      const motor = craft.motors.find(({ place }) => place.name === ring?.motor);
      const rotor = motor === undefined ? undefined : craft.rotors[motor.rotor];
      if (ring === undefined || rotor === undefined) return [];
      const radius = rotor.blade.diameter / 2;
      const share = ring.gap / radius;
      const number = { value: ring.gap, limit: TIGHT * radius, quantity: 'length' as const };
      const place = { x: ring.place[0], y: ring.place[1] };
      if (ring.gap < TIGHT * radius - SLACK) {
        return [
          fails(
            ring.gap < TOUCHES ? 'stop' : 'risk',
            ring.gap < 0
              ? `The blades are ${mm(-ring.gap)} larger than the ring they turn in.`
              : `Only ${mm(ring.gap)} between blade and guard: they touch when the ring bends.`,
            'Smaller propellers, or rings of larger diameter.',
            ['propellers', 'frame'],
            { number, place },
          ),
        ];
      }
      return [
        share > WIDE
          ? fails(
              'note',
              `The guard stands ${percent(share)} of the radius off the tips: it protects, and adds no thrust.`,
              'Only a gap of 1 to 2 % with a rounded lip gives thrust back.',
              ['frame'],
              { number: { ...number, limit: WIDE * radius }, place },
            )
          : fits(`Guard gap ${mm(ring.gap)}, ${percent(share)} of the radius.`, ['frame'], { number, place }),
      ];
    },
  },
  {
    id: 'guard-lip',
    title: 'lip of the guards',
    limit: 'a rounded lip of 3 % of the diameter',
    severities: ['note'],
    look: ({ craft }) => {
      const { guards, maxPropeller } = craft.parts.frame;
      if (guards === undefined) return [];
      const least = 0.03 * maxPropeller;
      const number = { value: guards.lipRadius, limit: least, quantity: 'length' as const };
      return [
        guards.lipRadius < least
          ? fails(
              'note',
              guards.lipRadius === 0
                ? 'The guards are plain hoops: they usually cost a little thrust.'
                : `A lip of ${mm(guards.lipRadius)} round the guards; ${mm(least)} would turn the air in cleanly.`,
              'Take them for safety, not for thrust.',
              ['frame'],
              { number },
            )
          : fits(`The guards have a lip of ${mm(guards.lipRadius)}.`, ['frame'], { number }),
      ];
    },
  },
];

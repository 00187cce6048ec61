import type { LayoutParameters } from '../../src/airframe/types.ts';
import { fly } from '../../src/assess/fly/fly.ts';
import type { Scene } from '../../src/assess/fly/types.ts';
import { agility } from '../../src/flight/reserve/agility.ts';
import { motorOut } from '../../src/flight/reserve/motorOut.ts';
import { neutralLevers } from '../../src/flight/types.ts';
import { contextOf, type Demo } from '../../test/assess/parts/crafts.ts';
import { exampleQuad } from '../../test/flight/exampleModel.ts';
import { craft, ring } from '../../test/flight/reserve/crafts.ts';
import type { Figures } from './retell.ts';
import { known, say, table } from './say.ts';

/** Of docs/method/reserve.md, simulation.md and whole-flight.md. */
export const flightFigures: Figures = {
  'what one motor out leaves': motorsOut,
  'example quad: lag': () => say(1000 * lively().lag, 'ms'),
  'example quad: 90 degrees passed': () => say(lively().bank.roll.toPass, 's', 2),
  'example quad: 90 degrees stopped': () => say(lively().bank.roll.toStop, 's', 2),
  'scenes against closed forms': scenes,
};

/** As in test/flight/reserve/onBus.test.ts. */
const lively = () =>
  known(
    agility(
      exampleQuad(),
      [
        [0.003, 0, 0],
        [0, 0.0035, 0],
        [0, 0, 0.006],
      ],
      neutralLevers,
      { charge: 0.5 },
    ),
  );

/** Of the rotors of a 5 inch craft, over thrust and edgewise speed [s/m]. */
const IN_PLANE = 0.015;

function motorsOut(): string {
  const layouts: readonly (readonly [name: string, layout: LayoutParameters, servoTilt?: number])[] = [
    ['tri with tail servo', { kind: 'tri', frontWidth: 0.25, length: 0.22 }, 0.5],
    ['X', { kind: 'true X', diagonal: 0.22 }],
    ['plus', { kind: 'plus', diagonal: 0.22 }],
    ['flat six, alternating spin', { kind: 'hexa X', diagonal: 0.3 }],
    ['flat eight', { kind: 'octo', diagonal: 0.4 }],
    ['X8 coaxial', { kind: 'X8 coaxial', width: 0.2, length: 0.2, discSpacing: 0.05 }],
    ['Y6 coaxial', { kind: 'Y6 coaxial', frontWidth: 0.25, length: 0.22, discSpacing: 0.05 }],
  ];
  const held = (model: Parameters<typeof motorOut>[0]): string => {
    const counts = new Map<string, number>();
    for (const one of motorOut(model, IN_PLANE)) counts.set(one.held, (counts.get(one.held) ?? 0) + 1);
    return [...counts]
      .map(([what, count]) => (counts.size === 1 ? what : `${what}: ${count} of ${model.effectors.length}`))
      .join('; ');
  };
  // Thrust to weight 7, however many motors.
  const all = { maximumThrust: 7 * 0.7 * 9.80665 };
  const rows = layouts.map(([name, layout, servoTilt]) => {
    const motors = craft(layout).effectors.length;
    const limits = { maximumThrust: all.maximumThrust / motors };
    return [name, held(craft(layout, servoTilt === undefined ? limits : { ...limits, servoTilt }))];
  });
  const paired = craft({ kind: 'hexa X', diagonal: 0.3 });
  const effectors = ring([1, 1, -1, -1, 1, -1], 0.15).map((effector) => {
    return { ...effector, minimumThrust: 0.2, maximumThrust: all.maximumThrust / 6 };
  });
  rows.splice(4, 0, ['flat six, paired spin (P P N N P N)', held({ ...paired, effectors })]);
  return table(['layout', 'after any one motor'], rows);
}

/** Simulated over closed form. */
function scenes(): string {
  const builds: readonly (readonly [name: string, demo: Demo])[] = [
    ['Turnstone, open 5 inch', 'first-freestyle/turnstone'],
    ['Wheatear, ringed micro', 'micro/wheatear'],
    ['Dotterel, guarded', 'guarded/dotterel'],
  ];
  const asked: readonly (readonly [scene: Scene, id: string])[] = [
    ['bank', 'roll-bank-time'],
    ['gust', 'gust-push'],
    ['gust', 'gust-rise'],
    ['dash', 'dash-speed'],
  ];
  const rows = builds.map(([name, demo]) => {
    const { flight, ...context } = contextOf(demo);
    if (flight === undefined) throw new Error(`${demo} has no hover`);
    const ratios = asked.map(([scene, id]) => {
      const flying = fly({ ...context, flight }, { scene, wind: context.brief.site.wind.value, seed: 1 });
      let step = flying.next();
      while (step.done !== true) step = flying.next();
      const figure = known(step.value).figures.find((each) => each.id === id);
      return say((figure?.simulated ?? Number.NaN) / (figure?.closedForm ?? Number.NaN), '', 2);
    });
    return [name, ...ratios];
  });
  return table(
    [
      'simulated over closed form',
      'time to 90 degrees of bank',
      'push of a gust in its first 0.3 s',
      'rise in it',
      'speed of a dash, for its tilt',
    ],
    rows,
  );
}

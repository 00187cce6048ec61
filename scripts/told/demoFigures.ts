import { costLines } from '../../src/assess/money/costLines.ts';
import { BUS_AS_RECKONED, type BusScales, busOf } from '../../src/assess/parts/bus.ts';
import { dragOf } from '../../src/assess/parts/dragOf.ts';
import { busTransient } from '../../src/drive/busTransient.ts';
import { hoverStory } from '../../src/flight/hoverStory.ts';
import { neutralLevers } from '../../src/flight/types.ts';
import { contextOf, type Demo } from '../../test/assess/parts/crafts.ts';
import type { Figures } from './retell.ts';
import { known, percent, say } from './say.ts';

/** Of the demo's builds. */
export const demoFigures: Figures = {
  'cheapest frame: listed': () => say(frame('first-freestyle/turnstone').listed, '', 2),
  'cheapest frame: with what it lacks': () => say(frame('first-freestyle/turnstone').whole, '', 2),
  'Kittiwake’s frame: listed': () => say(frame('first-freestyle/kittiwake').listed, '', 2),
  'Kittiwake’s frame: with what it lacks': () => say(frame('first-freestyle/kittiwake').whole, '', 2),
  'Whimbrel’s frame: listed': () => say(frame('first-freestyle/whimbrel').listed, '', 2),
  'Turnstone: mass': () => say(craftMass(), 'kg', 2),
  'Turnstone: drag area from ahead': () => {
    const { front } = dragOf(contextOf('first-freestyle/turnstone', {}, false).craft).areas;
    return say(1e4 * front.area * front.coefficient, 'cm2');
  },
  'loss by speed: in hover': () => {
    const { hover } = story(1);
    return say(
      mean(hover.stations.map(({ ironLoss }) => ironLoss)) -
        mean(plain().hover.stations.map(({ ironLoss }) => ironLoss)),
      'W',
      1,
    );
  },
  'loss by speed: of the thrust': () => percent(1 - story(1).punch.netThrust / plain().punch.netThrust),
  'bus: braked': () => say(bus().peak, 'V', 1),
  'bus: mean': () => say(bus().braking.mean, 'V', 1),
  'bus: returned': () => say(bus().braking.returned, 'A'),
  'bus: returned, held': () => say(bus({}, true, 1000).braking.returned, 'A'),
  'bus: cut': () => say(bus().cut.peak, 'V', 1),
  'bus: bare': () => say(bus({}, false).peak, 'V', 1),
  'bus: slowly': () => say(bus({ drop: 2.5 }).peak, 'V', 1),
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;
const craftMass = (): number => contextOf('first-freestyle/turnstone', {}, false).craft.massProperties.mass;

function frame(demo: Demo): { readonly listed: number; readonly whole: number } {
  const { craft, brief, shelf } = contextOf(demo, {}, false);
  const listed = craft.parts.frame.price.amount;
  const lacking = costLines(craft, brief, shelf).lines.filter(
    ({ group, id }) => group === 'missing from the box' || id.startsWith('spare arm'),
  );
  return { listed, whole: lacking.reduce((sum, { count, unitPrice }) => sum + count * unitPrice, listed) };
}

/** Turnstone's hover story, resistance growing with speed by so much of what it is taken to. */
function story(runningResistanceScale: number) {
  const { flight } = contextOf('first-freestyle/turnstone');
  if (flight === undefined) throw new Error('it has no hover');
  return known(hoverStory(flight.model, { ...neutralLevers, runningResistanceScale }, []));
}
const plain = () => story(1e-9);

/** Turnstone's bus after full throttle; rotors so many times as heavy. */
function bus(scales: Partial<BusScales> = {}, fitted = true, inertia = 1) {
  const { craft, flight } = contextOf('first-freestyle/turnstone');
  if (flight === undefined) throw new Error('it has no hover');
  const extras = craft.parts.extras.filter(({ part }) => fitted || part.kind !== 'capacitor');
  const { told, model } = flight;
  const punch = { packCurrent: told.story.punch.packCurrent, temperature: model.airTemperature };
  const motors = craft.motors.map((motor) => ({
    ...motor,
    rotatingInertia: inertia * motor.rotatingInertia,
  }));
  return busTransient(
    busOf({ ...craft, motors, parts: { ...craft.parts, extras } }, punch, { ...BUS_AS_RECKONED, ...scales }),
  );
}

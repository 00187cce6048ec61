import { expect, it } from 'vitest';
import { forwardCraft, forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { besideThrust, bodyMoments } from '../../../src/flight/forward/momentShares.ts';
import { servoLean } from '../../../src/flight/forward/servoLean.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { contextOf } from '../../assess/parts/crafts.ts';

const { flight } = contextOf('first-freestyle/turnstone', { build: { frame: { part: 'avocet-tri' } } });
if (flight === undefined) throw new Error('no hover');
const side = { area: 0.008, coefficient: 1.1 };
const drag = { front: side, side, top: side };
const made = forwardCraft(flight.model, neutralLevers, drag);
if (!made.ok) throw new Error(made.reason);
const craft = made.value;

const at = (speed: number) => {
  const trim = forwardPoint(craft, speed, 0.5);
  if (!trim.ok) throw new Error(trim.reason);
  const lean = servoLean(craft, trim.value);
  if (lean === undefined) throw new Error('no servo');
  return { trim: trim.value, ...lean };
};

it('leans as in the hover trim at rest', () => {
  // The hover trim tilts the thrust as it shares it out, forward trim does not: a per cent of cosine.
  const angle = craft.trim.servoAngle;
  expect(angle).not.toBe(0);
  expect(Math.asin(at(0).sine) / angle).toBeCloseTo(1, 1.5);
});

it('leaves no yaw at speed, summed here on its own', () => {
  const { trim, station, sine } = at(12);
  const tail = flight.model.stations[station]!;
  const lever = tail.position[0] - flight.model.centreOfGravity[0];
  const cosine = Math.sqrt(1 - sine * sine);
  const reaction = flight.model.stations.reduce(
    (sum, { spin }, i) => sum - spin * trim.load.torque[i]! * (i === station ? cosine : 1),
    0,
  );
  const push = lever * trim.thrusts[station]! * sine;
  const left =
    push +
    reaction +
    bodyMoments(craft, trim)[2] +
    flight.model.stations.reduce((sum, _, i) => sum + besideThrust(craft, trim, i)[2], 0);
  expect(Math.abs(left)).toBeLessThan(1e-6 * Math.abs(push));
  expect(Math.abs(sine)).toBeLessThan(0.3);
});

it('is absent without a servo', () => {
  const quad = contextOf('first-freestyle/turnstone').flight;
  if (quad === undefined) throw new Error('no hover');
  const other = forwardCraft(quad.model, neutralLevers, drag);
  if (!other.ok) throw new Error(other.reason);
  const trim = forwardPoint(other.value, 5, 0.5);
  expect(trim.ok && servoLean(other.value, trim.value)).toBeUndefined();
});

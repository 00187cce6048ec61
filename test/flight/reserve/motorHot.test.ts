import { describe, expect, it } from 'vitest';
import { caseConductance } from '../../../src/drive/motorHeat.ts';
import { pointForThrusts } from '../../../src/flight/operatingPoint.ts';
import { motorHot } from '../../../src/flight/reserve/motorHot.ts';
import { withMotorLimited } from '../../../src/flight/reserve/motorOut.ts';
import { reserveOnBus } from '../../../src/flight/reserve/onBus.ts';
import { type FlightModel, neutralLevers } from '../../../src/flight/types.ts';
import { exampleQuad } from '../exampleModel.ts';

const inertia = [
  [0.003, 0, 0],
  [0, 0.0035, 0],
  [0, 0, 0.006],
] as const;
const moment = { charge: 0.5 };

function hotOf(model: FlightModel, levers = neutralLevers) {
  const onBus = reserveOnBus(model, inertia, levers, moment);
  if (!onBus.ok) throw new Error(onBus.reason);
  return { onBus: onBus.value, hot: motorHot(model, levers, moment, onBus.value, 0.015) };
}

describe('one motor held to what it bears for good', () => {
  const quad = exampleQuad();
  const { onBus, hot } = hotOf(quad);
  const [first] = hot;

  it('bears more than its hover and less than full throttle, on a usual 5 inch', () => {
    for (const { bearsShare, bears, motor } of hot) {
      expect(bearsShare, motor).toBeGreaterThan(0.2);
      expect(bearsShare, motor).toBeLessThan(0.95);
      expect(bears).toBeGreaterThan(onBus.hover.thrusts[0]!);
    }
  });

  // First law of thermodynamics by hand, on the two lumps: what the case sheds to the air is all the heat, what passes from winding to
  // case is the copper's, one of the two stands at its limit. The wash is the momentum theory of the disc (Glauert 1926), copper
  // grows by 0.393 % a kelvin about 20 degC (IEC 60028).
  it('is in balance there, with winding or case at its limit', () => {
    const thrusts = [...onBus.hover.thrusts];
    thrusts[0] = first!.bears;
    const point = pointForThrusts(quad, neutralLevers, thrusts, moment);
    if (!point.ok) throw new Error(point.reason);
    const { motorCurrent, ironLoss, thrust } = point.value.stations[0]!;
    const { motor, propDiameter } = quad.stations[0]!;
    const wash = Math.sqrt(thrust / (2 * quad.airDensity * (Math.PI / 4) * propDiameter ** 2));
    const toAir = caseConductance(motor, wash);
    const toCase = motor.heat.windingToCase;
    const air = quad.airTemperature;
    const copperAt = (winding: number) =>
      motorCurrent ** 2 * motor.resistance * (1 + 0.00393 * (winding - motor.referenceTemperature));
    // Winding and case by turns, until they agree.
    let [winding, shell] = [air, air];
    for (let k = 0; k < 500; k++) {
      shell = air + (copperAt(winding) + ironLoss) / toAir;
      winding = shell + copperAt(winding) / toCase;
    }
    const over = Math.max(winding - motor.limits.windingTemperature, shell - motor.limits.caseTemperature);
    expect(Math.abs(over)).toBeLessThan(0.5);
  });

  it('bears more on a cold day and in better cooling', () => {
    const cold = hotOf({ ...quad, airTemperature: quad.airTemperature - 30 }).hot[0]!;
    const cooled = hotOf(quad, { ...neutralLevers, coolingScale: 1.5 }).hot[0]!;
    for (const { bears } of [cold, cooled]) expect(bears).toBeGreaterThan(1.02 * first!.bears);
  });

  it('takes no moment from a light craft in hover, whose motors reach no further than twice it', () => {
    expect(first!.held).toBe('full hover control');
    expect(first!.share).toBeGreaterThan(0.99);
  });

  it('takes moments from a heavy one, as the attainable set says of that limit', () => {
    const heavy = hotOf(exampleQuad({ mass: 2 }));
    const one = heavy.hot[0]!;
    expect(one.share).toBeLessThan(0.9);
    expect(one.share).toBe(withMotorLimited(heavy.onBus.model, 0, one.bears, 0.015).share);
  });

  it('bears full throttle for good where heat is no limit', () => {
    const limits = { windingTemperature: 2000, caseTemperature: 2000 };
    const stations = quad.stations.map((each) => ({
      ...each,
      motor: { ...each.motor, limits: { ...each.motor.limits, ...limits }, resistance: 0.02 },
    }));
    for (const { bearsShare, share } of hotOf({ ...quad, stations }).hot) {
      expect(bearsShare).toBe(1);
      expect(share).toBeCloseTo(1, 9);
    }
  });

  it('bears nothing where it would burn idling', () => {
    const burnt = hotOf(quad, { ...neutralLevers, coolingScale: 0.005 }).hot[0]!;
    expect(burnt.bears).toBe(0);
    expect(burnt.held).toBe('only spinning fast');
  });
});

import { describe, expect, it } from 'vitest';
import { exactMeasures } from '../../src/assess/exactMeasures.ts';
import { flownMeasures } from '../../src/assess/flownMeasures.ts';
import { BALANCE_SPREAD } from '../../src/assess/levers.ts';
import type { Flight } from '../../src/assess/parts/types.ts';
import { contextOf, DEMOS, type Demo } from './parts/crafts.ts';

function flown(name: Demo, change: (flight: Flight) => Flight = (flight) => flight) {
  const { craft, brief, flight } = contextOf(name);
  const measures = flownMeasures(craft, brief, change(flight!));
  return (id: string) => {
    const [low, high] = measures.find((measure) => measure.id === id)!.band;
    return { low, high, width: high - low };
  };
}

describe('bands of the hover story', () => {
  // Full throttle was banded with the propeller's doubt in a hover, although it turns 2.4 times as fast there.
  it('a propeller measured below full throttle is less sure at it, and only there', () => {
    const whole = flown('first-freestyle/kittiwake');
    const hoverOnly = flown('first-freestyle/kittiwake', (flight) => {
      const { atFull, ...doubt } = flight.doubt;
      expect(atFull!.thrust).toBeGreaterThan(1.3 * doubt.thrust);
      return { ...flight, doubt };
    });
    for (const id of ['full-throttle-thrust', 'thrust-to-weight', 'full-throttle-pack-current']) {
      // Its point near tip Mach 0.4 tells of fast tips too: what is left is the Reynolds number and the rest of the way.
      expect(whole(id).width).toBeGreaterThan(1.02 * hoverOnly(id).width);
    }
    for (const id of ['hover-speed', 'hover-power', 'flown-time']) {
      expect(whole(id).width).toBe(hoverOnly(id).width);
    }
  });

  // A reviewer found 'measured' at full throttle, twice the Reynolds number of the only measured point.
  it('calls a propeller measured where it was measured, and inferred far from there', () => {
    const { craft, brief, flight } = contextOf('first-freestyle/kittiwake');
    const lift = (id: string) =>
      flownMeasures(craft, brief, flight!)
        .find((measure) => measure.id === id)!
        .leansOn.find(({ input }) => input.startsWith('propeller lift'))!;
    expect(lift('hover-speed').trust).toBe('measured');
    expect(lift('full-throttle-thrust').trust).toBe('inferred');
    expect(lift('full-throttle-thrust').input).toMatch(/reckoned on/);
  });

  it.each(DEMOS)('%s: its hardest-worked motor never works less than the mean', (name) => {
    expect(flown(name)('hardest-motor-load').low).toBeGreaterThanOrEqual(1);
  });

  it('the balance is banded by the spread that the motors are told', () => {
    const { craft } = contextOf('first-freestyle/kittiwake', {}, false);
    const balance = exactMeasures(craft, [], 'freestyle').find(({ id }) => id === 'balance-forward')!;
    // 10th to 90th percentile of a normal: 2 x 1.2816 standard deviations (any table of the normal).
    expect(balance.band[1] - balance.band[0]).toBeCloseTo(2 * 1.2816 * BALANCE_SPREAD, 5);
  });
});

import { describe, expect, it } from 'vitest';
import { legsFlown, usualMission } from '../../../src/assess/parts/mission.ts';
import type { FlightModel } from '../../../src/flight/types.ts';
import { contextOf } from './crafts.ts';

const whole = contextOf('first-freestyle/turnstone');

function onPack(change: Partial<FlightModel['pack']>) {
  const flight = whole.flight!;
  const model = { ...flight.model, pack: { ...flight.model.pack, ...change } };
  return { ...whole, flight: { ...flight, model } };
}

// Once told as "lands with 60 %": the charge that a pack at its cut-off cannot give.
describe('a usual flight that ends in the air', () => {
  const { measures, findings, data } = usualMission.run(
    onPack({ capacity: 0.3 * whole.flight!.model.pack.capacity }),
  );
  const ids = measures.map(({ id }) => id);

  it('is told as one, and not as one that lands', () => {
    expect(data!.mission!.end).not.toBe('landed');
    expect(ids).toEqual(['mission-ends-after', 'mission-charge-stranded', 'mission-winding-temperature']);
    expect(measures.find(({ id }) => id === 'mission-charge-stranded')!.better).toBe('less');
    const told = findings.find(({ id }) => id === 'flight-ends-in-air')!;
    expect(told.severity).toBe('risk');
    expect(told.says).toMatch(/ends in the air after .* no turn-back point/);
    expect(findings.map(({ id }) => id)).not.toContain('turn-back-short');
  });
});

describe('a usual flight that lands', () => {
  it('has its figures, the motors at their hottest among them', () => {
    const { measures, findings } = usualMission.run(whole);
    const value = (id: string) => measures.find((each) => each.id === id)!;
    const hot = value('mission-winding-temperature');
    expect(hot.band[0]).toBeLessThan(hot.value);
    expect(hot.band[1]).toBeGreaterThan(hot.value);
    expect(hot.value).toBeGreaterThan(whole.flight!.model.airTemperature + 20);
    expect(value('mission-charge-left').value).toBeGreaterThan(0.3);
    expect(findings.map(({ id }) => id)).not.toContain('flight-ends-in-air');
  });

  it('says so where its bursts are eased, and no lower voltage is better then', () => {
    const { measures, findings } = usualMission.run(
      onPack({ resistance: 4 * whole.flight!.model.pack.resistance }),
    );
    expect(findings.find(({ id }) => id === 'bursts-eased')!.says).toMatch(/eased to \d+\s%/);
    expect(measures.find(({ id }) => id === 'mission-cell-voltage')!.better).toBe('neither');
    expect(measures.find(({ id }) => id === 'mission-charge-left')!.how).toContain('Here bursts are.');
  });
});

describe('legs of one’s own', () => {
  it('have a band on every figure that is not the same in all states', () => {
    const { flight } = whole;
    const found = legsFlown({ ...whole, flight: flight! }, [
      { what: 'hover 60 s', leg: { kind: 'hover', duration: 60 } },
      { what: 'full 3 s', leg: { kind: 'full throttle', duration: 3 } },
    ]);
    if (!found.ok) throw new Error(found.reason);
    const widths = Object.fromEntries(
      found.value.measures.map(({ id, band: [low, high] }) => [id, high - low]),
    );
    expect(widths['mission-time']).toBe(0);
    for (const id of [
      'mission-charge-left',
      'mission-energy',
      'mission-cell-voltage',
      'mission-winding-temperature',
    ]) {
      expect(widths[id], id).toBeGreaterThan(0);
    }
  });
});

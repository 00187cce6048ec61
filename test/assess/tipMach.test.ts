import { expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { fastTip, fastTipFindings } from '../../src/assess/tipMach.ts';
import { exampleQuad } from '../flight/exampleModel.ts';

const air = standardAtmosphere({ height: 0 });
const exampleModel = exampleQuad();
const flight = { model: exampleModel, air };
/** [rad/s], one a motor: the last one's tip at a Mach number. */
const speedsAt = (mach: number): number[] => {
  const speeds = exampleModel.stations.map(() => 2000);
  const last = exampleModel.stations.at(-1)?.propDiameter ?? 0;
  speeds[speeds.length - 1] = (2 * mach * air.speedOfSound) / last;
  return speeds;
};

it('says where a map has ended and a tip goes on, by the fastest motor', () => {
  expect(fastTip(flight, 'At full throttle', speedsAt(0.8))).toBeUndefined();
  expect(fastTipFindings(flight, 'At full throttle', speedsAt(0.8))).toEqual([]);
  const [finding] = fastTipFindings(flight, 'At full throttle', speedsAt(0.97));
  expect(finding?.severity).toBe('risk');
  expect(finding?.number?.value).toBeCloseTo(0.97, 10);
  expect(finding?.says).toContain('Mach 0.97, beyond what is known (0.85)');
});

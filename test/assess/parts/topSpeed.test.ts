import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { dragOf } from '../../../src/assess/parts/dragOf.ts';
import { forwardOf } from '../../../src/assess/parts/speedStates.ts';
import { readBuild } from '../../../src/build/read/readBuild.ts';
import { forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { topSpeed } from '../../../src/flight/forward/speeds.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { shippedShelf } from '../../build/shippedShelf.ts';
import { contextFor, demoBrief } from './crafts.ts';

/**
 * A light craft on five blades of steep pitch. Nearly upright at 20 m/s its rotors would have to windmill to pull so little, which the
 * trim's first guess asked of them: told as the top speed, 19 m/s, with the advance ratio as what stands in the way. Leaning
 * 42 degrees it flies there with a third of its throttle, and on past 40 m/s.
 */
it('a light craft with steep propellers flies at every speed up to where power runs short', () => {
  const text = readFileSync('demo/first-freestyle/turnstone.yaml', 'utf8')
    .replace('spume-5130-3', 'spume-5040-5')
    .replace('samphire-1300-6s', 'samphire-550-6s')
    .replace(/^.*zawn.*\n/gm, '');
  const read = readBuild(text, 'light and steep');
  if (!read.ok) throw new Error('it does not read');
  const brief = demoBrief('first-freestyle/turnstone');
  const { flight, craft } = contextFor(read.value.build, brief, shippedShelf());
  const made = forwardOf(flight!, dragOf(craft), { levers: neutralLevers, balanceShift: 0 });
  const top = made.ok ? topSpeed(made.value, 0.9) : made;
  if (!made.ok || !top.ok) throw new Error(made.ok && !top.ok ? top.reason : 'it does not hover');
  expect(top.value.at.speed).toBeGreaterThan(38);
  expect(top.value.limit).toMatch(/full throttle/);
  let before = 0;
  for (let speed = 0; speed < top.value.at.speed; speed += 0.5) {
    const here = forwardPoint(made.value, speed, 0.9);
    expect(here.ok ? '' : here.reason, `${speed} m/s`).toBe('');
    if (!here.ok) continue;
    const { packVoltage, packCurrent } = here.value.point;
    if (before > 0) expect(Math.abs((packVoltage * packCurrent) / before - 1)).toBeLessThan(0.1);
    before = packVoltage * packCurrent;
  }
});

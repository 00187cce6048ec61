import { expect, it } from 'vitest';
import { demo, quadwright } from './fakeIo.ts';

const turnstone = `${demo}/turnstone.yaml`;

// Power, throttle and temperature over speed were once the most likely case alone, without a band.
it('ask speed bands every number of its curve and of its motors, in 80 columns', async () => {
  const { out } = await quadwright(['ask', 'speed', turnstone]);
  const [curve = '', , cruise = '', top = ''] = out.split('\n\n');
  for (const row of curve.split('\n').slice(3)) expect(row.match(/\d \(\S+ to \S+\)/g), row).toHaveLength(4);
  const rowsOf = (table: string) => table.split('\n').filter((row) => /^(front|rear)/.test(row));
  expect(rowsOf(cruise)).toHaveLength(4);
  for (const row of [...rowsOf(cruise), ...rowsOf(top)]) {
    expect(row.match(/\d \(\S+ to \S+\)/g)!.length, row).toBeGreaterThanOrEqual(3);
  }
  for (const line of [curve, cruise, top].join('\n').split('\n'))
    expect(line.length, line).toBeLessThanOrEqual(80);
  const { data } = JSON.parse((await quadwright(['ask', 'speed', turnstone, '--json'])).out);
  for (const { speed, craft } of data.bands.curve) {
    for (const name of ['power', 'packCurrent', 'hardestThrottle', 'hottestWinding']) {
      const { value, band } = craft[name];
      expect(band[0], `${name} at ${speed}`).toBeLessThan(value);
      expect(band[1], `${name} at ${speed}`).toBeGreaterThan(value);
      if (name === 'hardestThrottle') expect(band[1]).toBeLessThanOrEqual(1);
    }
  }
  expect(data.bands.top.motors).toHaveLength(4);
});

// Volts under load were once told to the hundredth at -5 degC, where nobody knows them to the half volt.
it('ask pack bands its volts, the wider the colder, narrow enough for 80 columns', async () => {
  const asked = [
    'ask',
    'pack',
    '--part',
    'samphire-1300-6s',
    '--current',
    '80 A',
    '--temperature',
    '25 degC,-5 degC',
  ];
  const { points } = JSON.parse((await quadwright([...asked, '--json'])).out);
  const width = (temperature: number) => {
    const { voltage, band } = points.find(
      (point: { temperature: number }) => point.temperature === temperature,
    );
    expect(band.voltage[0]).toBeLessThan(voltage);
    expect(band.voltage[1]).toBeGreaterThan(voltage);
    return band.voltage[1] - band.voltage[0];
  };
  expect(width(268.15)).toBeGreaterThan(2 * width(298.15));
  const { out } = await quadwright(asked);
  for (const line of out.split('\n\n')[0]!.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  expect(out).toMatch(/At rest \S+ \(\S+ to \S+\)/);
});

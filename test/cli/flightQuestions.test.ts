import { describe, expect, it } from 'vitest';
import { demo, quadwright } from './fakeIo.ts';

const turnstone = `${demo}/turnstone.yaml`;
const noTrace = (text: string) => expect(text).not.toMatch(/NaN|undefined|\[object|Infinity| {4}at /);

describe('assess in two tiers', () => {
  it('runs the quick tier by default and the parts of the full one with --full', async () => {
    const ids = async (...more: string[]) => {
      const { out } = await quadwright(['assess', turnstone, '--json', ...more]);
      const found = JSON.parse(out);
      return { data: found.data, ids: found.measures.map(({ id }: { id: string }) => id) };
    };
    const full = await ids('--full');
    const quick = await ids();
    for (const id of ['top-speed', 'wind-held', 'roll-moment', 'bus-peak-voltage', 'mission-time']) {
      expect(full.ids).toContain(id);
      expect(quick.ids).not.toContain(id);
    }
    expect(full.data.powerCurve.length).toBeGreaterThan(10);
    expect(quick.data).toBeUndefined();
    expect(quick.ids).toContain('hover-throttle');
  });
});

describe.each([
  ['speed', 'works hardest', ['top-speed', 'best-range']],
  ['wind', 'largest steady wind held', ['wind-held', 'gust-jolt']],
  ['reserve', 'motor out', ['roll-moment', 'motor-lag']],
  ['mission', 'out against the wind', ['mission-time', 'turn-back-distance']],
] as const)('ask %s', (verb, says, ids) => {
  it('has a table for people', async () => {
    const { code, out } = await quadwright(['ask', verb, turnstone]);
    expect(code).toBe(0);
    expect(out).toContain(says);
    noTrace(out);
  });

  it('has measures in SI as JSON', async () => {
    const { out } = await quadwright(['ask', verb, turnstone, '--json']);
    const found = JSON.parse(out);
    for (const id of ids) {
      const measure = found.measures.find((each: { id: string }) => each.id === id);
      expect(Number.isFinite(measure.value), id).toBe(true);
    }
    expect(Array.isArray(found.findings)).toBe(true);
    expect(found.data).toBeTypeOf('object');
  });

  it('says no in words where it does not fly', async () => {
    const { code, error } = await quadwright(['ask', verb, 'heavy.yaml'], {
      'heavy.yaml': `format: quadwright-build-1
name: too small propellers
frame: stint-2
motors: haar-2306-1720
propellers: lop-2014-4
controllers: groyne-45
flightController: daymark-30
pack: samphire-1300-6s
`,
    });
    expect(code).toBe(2);
    expect(error).toContain('no hover');
  });
});

describe('help', () => {
  it.each(['speed', 'wind', 'reserve', 'mission', 'motor', 'pack'])(
    'ask %s --help has an example',
    async (verb) => {
      const { code, out } = await quadwright(['ask', verb, '--help']);
      expect(code).toBe(0);
      expect(out).toMatch(/Examples?:\n {2}quadwright ask/);
    },
  );
});

describe('wind given', () => {
  it('more wind, more tilt and less way against it', async () => {
    const value = async (verb: string, id: string, wind: string) => {
      const { out } = await quadwright(['ask', verb, turnstone, '--wind', wind, '--json']);
      return JSON.parse(out).measures.find((each: { id: string }) => each.id === id).value;
    };
    expect(await value('wind', 'wind-tilt', '9 m/s')).toBeGreaterThan(
      await value('wind', 'wind-tilt', '4 m/s'),
    );
    expect(await value('speed', 'range-against-wind', '9 m/s')).toBeLessThan(
      await value('speed', 'range-against-wind', '4 m/s'),
    );
  });
});

describe('missions of legs', () => {
  const fly = (legs: string, ...more: string[]) =>
    quadwright(['ask', 'mission', turnstone, '--legs', legs, ...more]);

  it('flies every kind of leg, the charge falling from one to the next', async () => {
    const { code, out } = await fly(
      'idle 5 s; climb 20 m at 4 m/s; hover 20 s; pull 2 for 5 s; full 1 s; cruise 300 m at 15 m/s against 5 m/s; novice 30 s; cruise 300 m at 15 m/s with 5 m/s',
      '--json',
    );
    expect(code).toBe(0);
    const { mission, duration, chargeLeft, energy } = JSON.parse(out);
    const left = mission.legs.map((leg: { chargeLeft: number }) => leg.chargeLeft);
    expect(left).toEqual([...left].sort((a, b) => b - a));
    expect(left.at(-1)).toBe(chargeLeft);
    // 5 + 5 + 20 + 5 + 1 + 300/10 + 30 + 300/20 s.
    expect(duration).toBeCloseTo(111, 6);
    // Between what it would take to hover through and three times that.
    expect(energy / 3600).toBeGreaterThan(2);
    expect(energy / 3600).toBeLessThan(12);
  });

  it.each([
    ['cruse 300 m at 15 m/s', 'Did you mean "cruise"?'],
    ['cruise 300 m at 5 m/s against 6 m/s', 'makes no way'],
    ['climb 20 m', 'lacks "at"'],
    ['hover 20', 'has no unit'],
    ['pull two for 5 s', 'a number'],
    [';', 'there is no leg'],
    ['cruise 300 m at 95 m/s', 'cannot be flown'],
  ])('says what is wrong with "%s"', async (legs, says) => {
    const { code, error, out } = await fly(legs);
    expect(code).toBe(2);
    expect(error).toContain(says);
    expect(out).toBe('');
    noTrace(error);
  });
});

describe('ask motor', () => {
  it('tells a nameplate with bands', async () => {
    const { code, out } = await quadwright([
      'ask',
      'motor',
      '--stator',
      '2207',
      '--speed-constant',
      '1850 rpm/V',
      '--json',
    ]);
    expect(code).toBe(0);
    const { motor } = JSON.parse(out);
    expect(motor.speedConstant.value).toBeCloseTo((1850 * Math.PI) / 30, 9);
    expect(motor.resistance.band[0]).toBeLessThan(motor.resistance.value);
    expect(motor.resistance.trust).toBe('inferred');
  });

  it('balances energy at a point, by torque and by voltage alike', async () => {
    const words = ['ask', 'motor', '--part', 'haar-2306-1720', '--rpm', '24000', '--json'];
    const byTorque = JSON.parse((await quadwright([...words, '--torque', '120 mN m'])).out).point;
    expect(byTorque.voltage * byTorque.current).toBeCloseTo(
      byTorque.shaftPower + byTorque.copperLoss + byTorque.ironLoss,
      6,
    );
    const byVoltage = JSON.parse(
      (await quadwright([...words, '--voltage', `${byTorque.voltage} V`])).out,
    ).point;
    expect(byVoltage.torque).toBeCloseTo(0.12, 6);
  });

  const point = async (...words: readonly string[]) => {
    const { out } = await quadwright([
      'ask',
      'motor',
      '--part',
      'haar-2306-1720',
      '--rpm',
      '24000',
      ...words,
      '--json',
    ]);
    return JSON.parse(out).point;
  };

  it('bands what was not asked, and what was asked has none', async () => {
    const byTorque = await point('--torque', '120 mN m');
    for (const name of ['current', 'voltage', 'copperLoss', 'heat', 'efficiency']) {
      const [low, high] = byTorque.bands[name];
      expect(low).toBeLessThan(byTorque[name]);
      expect(high).toBeGreaterThan(byTorque[name]);
    }
    expect(byTorque.bands.torque).toBeUndefined();
    // A listed speed constant is true to 3 %: so are the volts of turning and, the other way, the amperes of a torque.
    const [low, high] = byTorque.bands.current;
    expect((high - low) / 2 / byTorque.current / 1.2816).toBeCloseTo(0.03, 2);
    const onVolts = await point('--voltage', '17 V');
    expect(onVolts.bands.voltage).toBeUndefined();
    expect(onVolts.bands.torque[0]).toBeLessThan(onVolts.torque);
  });

  it('says what it means that the propeller drives the motor', async () => {
    // A negative torque was refused, and an efficiency of 0 % told of a motor held on a low voltage.
    const braking = await point('--torque', '-60 mN m');
    expect(braking.current).toBeLessThan(0);
    expect(braking.bands.efficiency).toBeUndefined();
    expect(braking.driven).toContain('generator: a braking current flows back');
    const back = -braking.voltage * braking.current;
    expect(braking.driven).toContain(`${back.toFixed(0)} W go through the controller`);
    // Energy: what the air gives is what flows back and what turns to heat.
    expect(back + braking.heat).toBeCloseTo(0.06 * braking.angularSpeed, 6);
    expect((await point('--torque', '-2 mN m')).driven).toContain('still draws');
    expect((await point('--torque', '-2 N m')).driven).toContain('Even a shorted motor brakes less');
    expect((await point('--torque', '2 mN m')).driven).toBeUndefined();
  });

  it.each([
    [[], 'give --part'],
    [['--stator', '22', '--speed-constant', '1850 rpm/V'], '--stator'],
    [['--part', 'harr-2306-1720'], 'Did you mean "haar-2306-1720"?'],
    [['--part', 'haar-2306-1720', '--torque', '1 N m'], 'need a speed'],
    [['--part', 'haar-2306-1720', '--rpm', '2000'], 'one of --torque and --voltage'],
  ])('says what is missing: %j', async (words, says) => {
    const { code, error } = await quadwright(['ask', 'motor', ...words]);
    expect(code).toBe(2);
    expect(error).toContain(says);
  });
});

describe('ask pack', () => {
  it('sags by its resistance, more in the cold and when empty', async () => {
    const { code, out } = await quadwright([
      ...['ask', 'pack', '--cells', '6', '--capacity', '1300 mAh', '--rate', '120'],
      ...['--current', '0 A,80 A', '--charge', '90 %,20 %', '--temperature', '25 degC,-5 degC', '--json'],
    ]);
    expect(code).toBe(0);
    const { pack, points } = JSON.parse(out);
    expect(points).toHaveLength(8);
    const at = (current: number, charge: number, temperature: number) =>
      points.find(
        (each: { current: number; charge: number; temperature: number }) =>
          each.current === current &&
          Math.abs(each.charge - charge) < 1e-9 &&
          Math.abs(each.temperature - temperature) < 1e-6,
      );
    const warm = at(80, 0.9, 298.15);
    expect(warm.voltage).toBeCloseTo(warm.openCircuit - 80 * warm.resistance, 9);
    expect(at(0, 0.9, 298.15).voltage).toBeCloseTo(warm.openCircuit, 12);
    expect(at(80, 0.9, 268.15).voltage).toBeLessThan(warm.voltage);
    expect(at(80, 0.2, 298.15).voltage).toBeLessThan(warm.voltage);
    expect(pack.resistanceBand[0]).toBeLessThan(pack.resistance);
  });

  it('reads for people', async () => {
    const { out } = await quadwright([
      'ask',
      'pack',
      '--part',
      'samphire-1300-6s',
      '--current',
      '20 A,900 A',
    ]);
    expect(out).toContain('gives out');
    noTrace(out);
  });

  it('wants a label or a part', async () => {
    const { code, error } = await quadwright(['ask', 'pack', '--cells', '6']);
    expect(code).toBe(2);
    expect(error).toContain('--capacity');
  });
});

describe('ask fly', () => {
  it('has the closed form beside the simulated value, and the time trace as JSON', async () => {
    const { code, out } = await quadwright(['ask', 'fly', turnstone, '--scene', 'bank']);
    expect(code).toBe(0);
    expect(out).toMatch(/closed form +simulated/);
    expect(out).toContain('until it passes 90 degrees');
    noTrace(out);
    const { out: json } = await quadwright(['ask', 'fly', turnstone, '--scene', 'bank', '--json']);
    const found = JSON.parse(json);
    expect(found.motors).toHaveLength(4);
    expect(found.trace.throttle).toHaveLength(4);
    for (const of of [found.trace.roll, found.trace.packVoltage, found.trace.packCurrent]) {
      expect(of).toHaveLength(found.trace.time.length);
    }
  });

  it('says what is wrong with its options', async () => {
    const said = async (...more: string[]) => {
      const { code, error } = await quadwright(['ask', 'fly', turnstone, ...more]);
      expect(code).toBe(2);
      return error;
    };
    expect(await said('--scene', 'dsh')).toContain('Did you mean "dash"?');
    expect(await said('--scene', 'bank', '--lasts', '3 s')).toContain('--lasts');
    expect(await said('--scene', 'hover', '--lasts', '3 h')).toContain('1 s to 300 s');
    expect(await said('--scene', 'gust', '--wind', '0 m/s')).toContain('no wind');
    expect(await said('--seed', '-1')).toContain('--seed');
  });
});

it('tells where the law of the wind is stretched over rough ground, and not over grass', async () => {
  const words = ['ask', 'gusts', '--wind', '8 m/s', '--height', '100 m', '--roughness'];
  const suburb = await quadwright([...words, '1 m']);
  expect(suburb.out).toMatch(/^Mean wind at 100\sm: 16\s/);
  expect(suburb.out).toContain('a station among obstacles');
  expect((await quadwright([...words, '30 mm'])).out).not.toContain('the law of the wind');
});

// At 50 degC in the air a motor at its top speed was once told `0 degC, 0 to 50000 degC`, others `400 degC, 0 to 1700`.
describe('motors too hot to settle', () => {
  const build = `format: quadwright-build-1
name: too much propeller
frame: eider-hexa
motors: williwaw-23065-1720
propellers: neap-7142-3
controllers: groyne-45
flightController: daymark-30
pack: samphire-2200-6s
`;
  const brief = `format: quadwright-brief-1
name: hot day
purpose: freestyle
budget: 900 GBP
currency: GBP
region: UK
site: { height: 0 m, temperature: 50 degC, wind: 0.5 m/s }
reserve: 5 %
`;
  const files = { 'hot.yaml': build, 'day.yaml': brief };
  const ask = async (...words: string[]) =>
    (await quadwright(['ask', ...words, '--brief', 'day.yaml'], files)).out;

  it('are told in words, in every table', async () => {
    const speed = await ask('speed', 'hot.yaml');
    expect(speed).toMatch(/front windings, top speed held +burnt: over 240/);
    expect(speed).toMatch(/front right .* burnt: over 240/);
    expect(await ask('heat', 'hot.yaml')).toMatch(/held[\s\S]*front right +never settles/);
    expect(await ask('point', 'hot.yaml', '--throttle', '70 %')).toContain('never settles');
    expect(await ask('trim', 'hot.yaml', '--speed', '50 m/s')).toMatch(/burnt: over 240|never settles/);
  });

  it('and never colder than the air', async () => {
    const { measures } = JSON.parse(await ask('speed', 'hot.yaml', '--json'));
    const windings = measures.filter(({ quantity }: { quantity: string }) => quantity === 'temperature');
    expect(windings).toHaveLength(4);
    for (const { id, value, band } of windings) {
      expect(band[0], id).toBeGreaterThan(323);
      expect(Math.max(value, band[1]), id).toBeLessThanOrEqual(513.15);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { shipped, shippedShelf } from './shippedFiles.ts';

/*
 * Invented parts have to be plausible in today's trade. The windows below are common practice, no source,
 * unless a line says otherwise; they are wide, and catch slips of a digit or a unit.
 */

const rpmPerVolt = Math.PI / 30;
const inch = 0.0254;

/** Least-squares slope and scatter of ln y over ln x. */
function powerLaw(points: readonly (readonly [x: number, y: number])[]) {
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)] as const);
  const mean = (pick: 0 | 1) => logs.reduce((sum, point) => sum + point[pick], 0) / logs.length;
  const [mx, my] = [mean(0), mean(1)];
  const slope =
    logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) /
    logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  const worst = Math.max(...logs.map(([x, y]) => Math.abs(y - my - slope * (x - mx))));
  return { slope, worst };
}

describe('prices', () => {
  it('are above nothing, in pounds', () => {
    for (const { id, price } of shippedShelf.parts.values()) {
      expect(price.amount, id).toBeGreaterThan(0);
      expect(price.currency, id).toBe('GBP');
    }
  });
});

describe('motors', () => {
  const motors = shipped('motor');
  const volume = ({ stator }: (typeof motors)[number]) => stator.diameter ** 2 * stator.height;

  it('weigh in proportion to their stators, within 35 %', () => {
    const { slope, worst } = powerLaw(motors.map((motor) => [volume(motor), motor.mass.value]));
    expect(slope).toBeGreaterThan(0.85);
    expect(slope).toBeLessThan(1.15);
    expect(Math.exp(worst)).toBeLessThan(1.35);
  });

  it('turn slower the bigger they are', () => {
    const { slope } = powerLaw(motors.map((motor) => [motor.mass.value, motor.speedConstant.value]));
    expect(slope).toBeLessThan(-0.4);
  });

  it('have a motor constant that grows with size: K_T2/R in proportion to mass to the 1.5 or 2', () => {
    const told = motors.flatMap(({ mass, speedConstant, windingResistance }) =>
      windingResistance ? [[mass.value, speedConstant.value ** -2 / windingResistance.value] as const] : [],
    );
    expect(told.length).toBeGreaterThan(10);
    const { slope, worst } = powerLaw(told);
    expect(slope).toBeGreaterThan(1.5);
    expect(slope).toBeLessThan(2.1);
    expect(Math.exp(worst)).toBeLessThan(1.3);
  });

  it('are rated at 5 to 32 W per gram and keep to their cells', () => {
    for (const { id, mass, maxPower, maxCurrent, cells } of motors) {
      const perGram = (maxPower?.value ?? 0) / (1e3 * mass.value);
      expect(perGram, id).toBeGreaterThan(5);
      expect(perGram, id).toBeLessThan(32);
      expect(maxPower?.value, id).toBeLessThan((maxCurrent?.value ?? 0) * (cells?.max ?? 0) * 4.35);
    }
  });

  it('for 5 inch turn 2400 to 2700 rpm/V on 4S and 1650 to 1950 on 6S', () => {
    for (const { id, stator, speedConstant, cells } of motors) {
      if (stator.diameter < 0.022 || stator.diameter > 0.0245) continue;
      const kv = speedConstant.value / rpmPerVolt;
      if (cells?.max === 4) expect(kv >= 2399 && kv <= 2701, id).toBe(true);
      if (cells?.max === 6) expect(kv >= 1649 && kv <= 1951, id).toBe(true);
    }
  });

  it('take M2 on 9 and 12 mm circles and M3 on 16 and 19', () => {
    for (const { id, mountCircles, mountScrew } of motors) {
      const circle = Math.round((mountCircles?.[0] ?? 0) * 1e3);
      expect(mountScrew, id).toBe(circle <= 12 ? 'M2' : 'M3');
      expect([9, 12, 16, 19], id).toContain(circle);
    }
  });

  it("have thrust tables whose shaft runs below K_V times the table's volts", () => {
    const tables = motors.flatMap((motor) => motor.thrustTables.map((table) => ({ motor, table })));
    expect(tables.length).toBeGreaterThanOrEqual(3);
    for (const { motor, table } of tables) {
      for (const { angularSpeed, voltage, throttle, current, thrust } of table.points) {
        const unloaded = motor.speedConstant.value * (voltage?.value ?? 0) * (throttle ?? 1);
        const share = (angularSpeed?.value ?? 0) / unloaded;
        expect(share, motor.id).toBeGreaterThan(0.6);
        expect(share, motor.id).toBeLessThan(0.97);
        // Grams per watt at the supply: 1.2 to 6 (common practice, no source).
        const gramsPerWatt =
          ((thrust.value / 9.80665) * 1e3) / ((voltage?.value ?? 0) * (current?.value ?? 0));
        expect(gramsPerWatt, motor.id).toBeGreaterThan(1.2);
        expect(gramsPerWatt, motor.id).toBeLessThan(6);
      }
    }
  });
});

describe('packs', () => {
  const packs = shipped('pack');
  const nominal = { LiPo: 3.7, LiHV: 3.8, 'Li-ion': 3.6 };

  it('hold 100 to 150 Wh/kg as pouches and 190 to 260 as round cells', () => {
    for (const { id, chemistry, cells, parallel, capacity, mass } of packs) {
      expect(parallel, id).toBe(1);
      const wattHoursPerKilogram = (cells * nominal[chemistry] * capacity.value) / 3600 / mass.value;
      const round = chemistry === 'Li-ion';
      expect(wattHoursPerKilogram, id).toBeGreaterThan(round ? 190 : 100);
      expect(wattHoursPerKilogram, id).toBeLessThan(round ? 260 : 150);
    }
  });

  it('weigh as much as cells times charge', () => {
    const pouches = packs.filter(({ chemistry }) => chemistry !== 'Li-ion');
    const { slope, worst } = powerLaw(
      pouches.map(({ cells, capacity, mass }) => [cells * capacity.value, mass.value]),
    );
    expect(slope).toBeGreaterThan(0.9);
    expect(slope).toBeLessThan(1.05);
    expect(Math.exp(worst)).toBeLessThan(1.2);
  });

  it('are 1.3 to 2.8 kg a litre', () => {
    for (const { id, size, mass } of packs) {
      const volume = size ? size.length * size.width * size.height : Number.NaN;
      const density = mass.value / volume;
      expect(density, id).toBeGreaterThan(1300);
      expect(density, id).toBeLessThan(2800);
    }
  });

  it('have cells of 4 to 8 mohm Ah as pouches, 50 to 100 as round cells', () => {
    for (const { id, chemistry, capacity, cellResistance } of packs) {
      if (!cellResistance) continue;
      const product = cellResistance.value * (capacity.value / 3600) * 1e3;
      const round = chemistry === 'Li-ion';
      expect(product, id).toBeGreaterThan(round ? 50 : 4);
      expect(product, id).toBeLessThan(round ? 100 : 8);
    }
  });

  it('plug into a connector on the shelf', () => {
    const plugs = shipped('connector').map(({ plug }) => plug);
    for (const { id, connector } of packs) expect(plugs, id).toContain(connector);
  });
});

describe('propellers', () => {
  it('weigh 0.08 to 0.14 g times the root of their blades times diameter in inches squared', () => {
    for (const { id, size, mass } of shipped('propeller')) {
      const factor = (mass.value * 1e3) / (Math.sqrt(size.bladeCount) * (size.diameter / inch) ** 2);
      expect(factor, id).toBeGreaterThan(0.08);
      expect(factor, id).toBeLessThan(0.14);
    }
  });

  it('have pitches of 0.45 to 1.1 diameters', () => {
    for (const { id, size } of shipped('propeller')) {
      expect(size.pitch / size.diameter, id).toBeGreaterThan(0.45);
      expect(size.pitch / size.diameter, id).toBeLessThan(1.1);
    }
  });

  it('come with the bore and fixing that some motor has', () => {
    const shafts = new Set(
      shipped('motor').map(({ shaft }) => `${shaft?.fixing} ${((shaft?.diameter ?? 0) * 1e3).toFixed(1)}`),
    );
    for (const { id, bore, fixing } of shipped('propeller')) {
      expect([...shafts], id).toContain(`${fixing} ${((bore ?? 0) * 1e3).toFixed(1)}`);
    }
  });
});

describe('controllers', () => {
  it('weigh 0.15 to 0.25 g an ampere single, 0.04 to 0.12 four in one', () => {
    for (const { id, form, current, mass } of shipped('controller')) {
      const each = mass.value / (form === 'four in one' ? 4 : 1);
      const gramsPerAmpere = (each * 1e3) / current.value;
      expect(gramsPerAmpere, id).toBeGreaterThan(form === 'single' ? 0.15 : 0.04);
      expect(gramsPerAmpere, id).toBeLessThan(form === 'single' ? 0.25 : 0.12);
    }
  });

  it('stand on squares of 20, 25.5 or 30.5 mm', () => {
    for (const part of [...shipped('controller'), ...shipped('flightController')]) {
      if (part.kind === 'controller' && part.form === 'single') continue;
      expect([20, 25.5, 30.5], part.id).toContain(Math.round((part.pattern ?? 0) * 1e4) / 10);
    }
  });
});

describe('video and radio', () => {
  it('have goggles for every video system and a transmitter for the links that demos use', () => {
    const goggles = shipped('goggles').map(({ system }) => system);
    for (const { id, system } of [...shipped('videoLink'), ...shipped('camera')]) {
      if (system !== undefined) expect(goggles, id).toContain(system);
    }
    const links = shipped('transmitter').map(({ link }) => link);
    for (const link of ['Halyard 2.4', 'Halyard 868']) expect(links).toContain(link);
  });

  it('have an antenna for every plug', () => {
    const plugs = shipped('antenna').map(({ plug }) => plug);
    for (const { id, antennaPlug } of shipped('videoLink')) expect(plugs, id).toContain(antennaPlug);
  });
});

describe('wire', () => {
  it('weighs its copper and a coat of 0.3 to 1.5 times as much, the thinnest the most', () => {
    // Density of copper 8890 kg/m3 (IEC 60028); section of the gauge by the reader, tested with ASTM B258.
    for (const { id, area, mass } of shipped('wire')) {
      const copper = area * 8890;
      expect(mass.value / copper, id).toBeGreaterThan(1.3);
      expect(mass.value / copper, id).toBeLessThan(2.5);
    }
  });
});

import fc from 'fast-check';
import { controllerFromNameplate } from '../../src/drive/controller.ts';
import { motorFromNameplate } from '../../src/drive/motorFromNameplate.ts';
import { packFromNameplate } from '../../src/drive/packFromNameplate.ts';
import type { FlightModel, RotorRead, Station } from '../../src/flight/types.ts';
import { wireGaugeArea } from '../../src/units/wireArea.ts';

/** A propeller with constant static coefficients and thrust falling to zero at its pitch speed. */
export function idealRotor(
  diameter: number,
  pitch: number,
  thrustCoefficient = 0.13,
  powerCoefficient = 0.07,
): RotorRead {
  const density = 1.225;
  return (angularSpeed, axialSpeed, out) => {
    const n = angularSpeed / (2 * Math.PI);
    const loss = n > 0 ? Math.max(-0.5, 1 - axialSpeed / (1.2 * n * pitch)) : 1;
    out.thrust = thrustCoefficient * density * n * n * diameter ** 4 * loss;
    out.torque = ((powerCoefficient * density * n * n * diameter ** 5) / (2 * Math.PI)) * (0.3 + 0.7 * loss);
  };
}

const rpmPerVolt = Math.PI / 30;

/** An invented 5-inch 6S quad, true X, 0.7 kg; nothing in it is a real product. */
export function exampleQuad(change: Partial<FlightModel> = {}): FlightModel {
  const rotor = idealRotor(0.1295, 0.09);
  const motor = motorFromNameplate({
    statorDiameter: 0.022,
    statorHeight: 0.007,
    speedConstant: 1850 * rpmPerVolt,
    mass: 0.034,
  }).model;
  const controller = controllerFromNameplate({ continuousCurrent: 45, maximumVoltage: 25.2 });
  const arm = 0.08;
  const place = (name: string, x: number, y: number, spin: 1 | -1): Station => ({
    name,
    position: [x, y, -0.02],
    spin,
    rotor,
    propDiameter: 0.1295,
    downloadShare: 0.03,
    rotatingInertia: 6e-6,
    motor,
    controller,
    supplyLead: { area: wireGaugeArea(16), length: 0.02, temperature: 293.15 },
    motorLead: { area: wireGaugeArea(20), length: 0.16, temperature: 293.15 },
  });
  return {
    stations: [
      place('front left', arm, -arm, 1),
      place('front right', arm, arm, -1),
      place('rear right', -arm, arm, 1),
      place('rear left', -arm, -arm, -1),
    ],
    pack: packFromNameplate({
      chemistry: 'LiPo',
      series: 6,
      parallel: 1,
      capacity: 1.3 * 3600,
      labelRate: 100,
    }).model,
    packTemperature: 298.15,
    mainWire: { area: wireGaugeArea(12), length: 0.2, temperature: 293.15 },
    connectorResistance: 0.0005,
    avionicsPower: 12,
    mass: 0.7,
    centreOfGravity: [0, 0, 0],
    gravity: 9.80665,
    airDensity: 1.225,
    airTemperature: 288.15,
    landingReserve: 0.2,
    ...change,
  };
}

/** Stations of `count` motors on a circle, alternating spin. */
export function ringOf(model: FlightModel, count: number, radius: number, offset = 0.5): Station[] {
  const pattern = model.stations[0]!;
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + offset)) / count;
    return {
      ...pattern,
      name: `motor ${i + 1}`,
      position: [radius * Math.cos(angle), radius * Math.sin(angle), 0] as const,
      spin: i % 2 === 0 ? (1 as const) : (-1 as const),
    };
  });
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Random aircraft: sane to silly. */
export const anyModel = fc
  .record({
    diameter: between(0.05, 0.2),
    thrustCoefficient: between(0.05, 0.2),
    powerCoefficient: between(0.02, 0.15),
    speedConstant: between(300, 9000),
    statorDiameter: between(0.008, 0.03),
    statorHeight: between(0.003, 0.01),
    series: fc.integer({ min: 1, max: 8 }),
    ampHours: between(0.2, 6),
    labelRate: between(5, 150),
    chemistry: fc.constantFrom('LiPo' as const, 'LiHV' as const, 'Li-ion' as const),
    avionicsPower: between(0, 30),
    mass: between(0.03, 3),
    leads: between(0, 0.5),
    count: fc.constantFrom(3, 4, 6, 8),
    download: between(0, 0.2),
  })
  .map((r) => {
    const base = exampleQuad();
    const rotor = idealRotor(r.diameter, 0.7 * r.diameter, r.thrustCoefficient, r.powerCoefficient);
    const motor = motorFromNameplate({
      statorDiameter: r.statorDiameter,
      statorHeight: r.statorHeight,
      speedConstant: r.speedConstant * rpmPerVolt,
    }).model;
    const stations = ringOf(base, r.count, r.diameter).map((station) => ({
      ...station,
      rotor,
      motor,
      propDiameter: r.diameter,
      downloadShare: r.download,
      supplyLead: { ...station.supplyLead, length: r.leads },
      motorLead: { ...station.motorLead, length: r.leads },
    }));
    return exampleQuad({
      stations,
      pack: packFromNameplate({
        chemistry: r.chemistry,
        series: r.series,
        parallel: 1,
        capacity: r.ampHours * 3600,
        labelRate: r.labelRate,
      }).model,
      avionicsPower: r.avionicsPower,
      mass: r.mass,
    });
  });

import fc from 'fast-check';
import { type Air, standardAtmosphere } from '../../../src/air/standardAtmosphere.ts';
import { layoutMotors } from '../../../src/airframe/layout.ts';
import type { DragAreas, LayoutParameters } from '../../../src/airframe/types.ts';
import { obliqueOf } from '../../../src/assess/rotorsAtSpeed.ts';
import { controllerFromNameplate } from '../../../src/drive/controller.ts';
import { motorFromNameplate } from '../../../src/drive/motorFromNameplate.ts';
import { packFromNameplate } from '../../../src/drive/packFromNameplate.ts';
import { styles } from '../../../src/flight/styles.ts';
import type { FlightModel, RotorRead, Style } from '../../../src/flight/types.ts';
import type { Matrix3 } from '../../../src/numerics/vector3.ts';
import { bladeFromNameplate } from '../../../src/rotor/blade.ts';
import { buildEdgewiseMap } from '../../../src/rotor/edgewiseMap.ts';
import { guardEffect } from '../../../src/rotor/guard.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../../../src/rotor/rotorMap.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import type { EdgewiseMap, RotorMap } from '../../../src/rotor/types.ts';
import { wireGaugeArea } from '../../../src/units/wireArea.ts';

/** A random craft on a random day, with what is asked of it. */
export interface AnyBuild {
  readonly model: FlightModel;
  readonly inertia: Matrix3;
  readonly drag: DragAreas;
  readonly style: Style;
  readonly throttles: readonly number[];
  readonly charge: number;
  /** [m/s] */
  readonly climb: number;
  readonly speed: number;
}

/** Evenly; a random double of the library is mostly a denormal one. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const inch = 0.0254;
const sections = sectionTables();
const still = standardAtmosphere({ height: 0 });

/** Propellers of 1.2 to 10 inch, 2 to 8 blades, pitch from fan to racer; maps coarse, as a slider has them. */
export function rotorPool(count: number, seed: number): readonly EdgewiseMap[] {
  const plate = fc.record({
    diameter: between(1.2 * inch, 10 * inch),
    pitchRatio: between(0.3, 1.3),
    bladeCount: fc.integer({ min: 2, max: 8 }),
    chordScale: between(0.6, 1.6),
  });
  return fc.sample(plate, { numRuns: count, seed }).map((drawn) => {
    const { diameter, pitchRatio, bladeCount, chordScale } = drawn;
    const pitch = pitchRatio * diameter;
    const chordAt75 = 0.09 * diameter * chordScale;
    const map = buildRotorMap(
      bladeFromNameplate({ diameter, pitch, bladeCount, chordAt75 }),
      sections,
      still,
      'coarse',
    );
    if (!map.ok) throw new Error(`${map.reason}: ${JSON.stringify(drawn)}`);
    const edgewise = buildEdgewiseMap(map.value, sections);
    if (!edgewise.ok) throw new Error(`${edgewise.reason}: ${JSON.stringify(drawn)}`);
    return edgewise.value;
  });
}

const kinds = [
  'true X',
  'stretched X',
  'squashed X',
  'H',
  'dead cat',
  'plus',
  'tri',
  'hexa X',
  'octo',
  'Y6 coaxial',
  'X8 coaxial',
] as const;

/** A layout whose discs of `diameter` stand apart by the share `gap` of it. */
function layoutOf(kind: (typeof kinds)[number], diameter: number, gap: number): LayoutParameters {
  const side = diameter * (1 + gap);
  switch (kind) {
    case 'true X':
    case 'plus':
      return { kind, diagonal: Math.SQRT2 * side };
    case 'hexa X':
      return { kind, diagonal: 2 * side };
    case 'octo':
      return { kind, diagonal: 2.7 * side };
    case 'stretched X':
      return { kind, width: side, length: 1.2 * side };
    case 'squashed X':
      return { kind, width: 1.2 * side, length: side };
    case 'H':
      return { kind, width: side, length: 1.1 * side };
    case 'dead cat':
      return { kind, frontWidth: 1.35 * side, rearWidth: side, length: side };
    case 'tri':
      return { kind, frontWidth: side, length: side };
    case 'Y6 coaxial':
      return { kind, frontWidth: side, length: side, discSpacing: 0.3 * diameter };
    case 'X8 coaxial':
      return { kind, width: side, length: side, discSpacing: 0.3 * diameter };
  }
}

const rotorIn = (map: RotorMap, air: Air): RotorRead => {
  const reading = emptyReading();
  return (angularSpeed, axialSpeed, out) => {
    readRotorMap(map, angularSpeed, axialSpeed, air, reading);
    out.thrust = reading.thrust;
    out.torque = reading.torque;
  };
};

/**
 * Valid by every field, sane to silly together: motors of any size on propellers of any size, from a whoop's cell to twelve,
 * frost to desert, sea to 4000 m, balance off by up to a third of an arm.
 */
export function anyBuild(pool: readonly EdgewiseMap[]): fc.Arbitrary<AnyBuild> {
  return fc
    .record({
      map: fc.constantFrom(...pool),
      kind: fc.constantFrom(...kinds),
      gap: between(0.02, 0.6),
      height: between(0, 4000),
      temperatureOffset: between(-40, 30),
      stator: fc.record({ diameter: between(0.1, 0.3), height: between(0.03, 0.09) }),
      tipSpeedAtFull: between(40, 400),
      series: fc.integer({ min: 1, max: 12 }),
      packShare: between(0.1, 0.5),
      labelRate: between(10, 150),
      chemistry: fc.constantFrom('LiPo' as const, 'LiHV' as const, 'Li-ion' as const),
      rating: between(5, 80),
      discLoading: between(10, 400),
      download: between(0, 0.3),
      leads: between(0, 0.4),
      avionics: between(0, 40),
      reserve: between(0, 0.5),
      off: fc.tuple(between(-0.33, 0.33), between(-0.2, 0.2), between(-0.4, 0.4)),
      cant: between(-0.1, 0.1),
      guarded: fc.boolean(),
    })
    .chain((drawn) =>
      fc.record({
        drawn: fc.constant(drawn),
        style: fc.constantFrom(...Object.values(styles)),
        throttles: fc.array(between(0, 1), { minLength: 8, maxLength: 8 }),
        charge: between(0, 1),
        climb: between(-4, 25),
        speed: between(0, 70),
        area: between(0.2, 3),
      }),
    )
    .map(({ drawn, ...asked }) => assemble(drawn, asked));
}

interface Drawn {
  readonly map: EdgewiseMap;
  readonly kind: (typeof kinds)[number];
  readonly gap: number;
  readonly height: number;
  readonly temperatureOffset: number;
  readonly stator: { readonly diameter: number; readonly height: number };
  readonly tipSpeedAtFull: number;
  readonly series: number;
  /** Of the pack in the mass. */
  readonly packShare: number;
  readonly labelRate: number;
  readonly chemistry: 'LiPo' | 'LiHV' | 'Li-ion';
  readonly rating: number;
  readonly discLoading: number;
  readonly download: number;
  readonly leads: number;
  readonly avionics: number;
  readonly reserve: number;
  readonly off: readonly [number, number, number];
  readonly cant: number;
  readonly guarded: boolean;
}

function assemble(
  drawn: Drawn,
  asked: Omit<AnyBuild, 'model' | 'inertia' | 'drag'> & { readonly area: number },
): AnyBuild {
  const { map, series, off } = drawn;
  const air = standardAtmosphere({ height: drawn.height, temperatureOffset: drawn.temperatureOffset });
  const { diameter } = map.axial.blade;
  const layout = layoutMotors(layoutOf(drawn.kind, diameter, drawn.gap));
  const disc = (Math.PI / 4) * diameter ** 2;
  const mass = (drawn.discLoading * disc * layout.motors.length) / 9.80665;
  const motor = motorFromNameplate({
    statorDiameter: Math.min(Math.max(drawn.stator.diameter * diameter, 0.006), 0.05),
    statorHeight: Math.min(Math.max(drawn.stator.height * diameter, 0.002), 0.02),
    // Free tip speed on a nominal pack.
    speedConstant: Math.min(Math.max((2 * drawn.tipSpeedAtFull) / (diameter * 3.7 * series), 6), 4900),
  }).model;
  const controller = controllerFromNameplate({
    continuousCurrent: drawn.rating,
    maximumVoltage: 4.35 * series,
  });
  const wire = { area: wireGaugeArea(18), length: drawn.leads, temperature: air.temperature };
  const rotor = rotorIn(map.axial, air);
  const oblique = obliqueOf(map, air);
  const guard = guardEffect(
    {
      tipGap: 0.02 * diameter,
      lipRadius: 0.04 * diameter,
      expansionRatio: 1,
      depth: 0.2 * diameter,
      blockedArea: 0.02 * disc,
    },
    diameter / 2,
  );
  const names = layout.motors.map(({ name }) => name);
  const model: FlightModel = {
    stations: layout.motors.map((place) => {
      const above = place.propSide === 'below' ? names.indexOf(place.coaxialWith ?? '') : -1;
      const [x, y, z] = place.position;
      const outward = Math.sign(y) * drawn.cant;
      return {
        name: place.name,
        position: [x, y, z - 0.02] as const,
        spin: place.spin,
        thrustAxis: [0, Math.sin(outward), -Math.cos(outward)] as const,
        rotor,
        oblique,
        propDiameter: diameter,
        downloadShare: drawn.download,
        rotatingInertia: 2 * diameter ** 5,
        motor,
        controller,
        supplyLead: wire,
        motorLead: wire,
        ...(above >= 0 ? { inWakeOf: above } : {}),
        ...(place.tilts && drawn.kind === 'tri' ? { servoTilt: 0.6 } : {}),
        ...(drawn.guarded ? { guard } : {}),
      };
    }),
    pack: packFromNameplate({
      chemistry: drawn.chemistry,
      series,
      parallel: 1,
      // At 150 Wh/kg.
      capacity: Math.min(Math.max((150 * drawn.packShare * mass) / (3.7 * series), 0.05), 30) * 3600,
      labelRate: drawn.labelRate,
    }).model,
    packTemperature: air.temperature,
    mainWire: { area: wireGaugeArea(14), length: drawn.leads, temperature: air.temperature },
    connectorResistance: 0.0006,
    avionicsPower: drawn.avionics,
    mass,
    centreOfGravity: [off[0] * diameter, off[1] * diameter, off[2] * diameter],
    gravity: 9.80665,
    airDensity: air.density,
    airTemperature: air.temperature,
    landingReserve: drawn.reserve,
  };
  const size = mass * (0.4 * diameter) ** 2;
  const area = asked.area * 0.35 * disc;
  return {
    ...asked,
    model,
    inertia: [
      [size, 0, 0],
      [0, 1.2 * size, 0],
      [0, 0, 2 * size],
    ],
    drag: {
      front: { area, coefficient: 1.1 },
      side: { area, coefficient: 1.1 },
      top: { area: 2 * area, coefficient: 1.1 },
    },
    throttles: asked.throttles.slice(0, layout.motors.length),
  };
}

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { itemMass } from '../../src/airframe/massProperties.ts';
import type { Craft } from '../../src/build/craft.ts';
import { fileErrorText } from '../../src/build/read/fileError.ts';
import { readBuild } from '../../src/build/read/readBuild.ts';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { flightModelOf } from '../../src/build/resolve/flightModelOf.ts';
import { resolveBuild } from '../../src/build/resolve/resolveBuild.ts';
import { EMPTY_SHELF } from '../../src/build/shelf.ts';
import { BUILD, SHELF } from './files.ts';

function resolve(build = BUILD, shelfText = SHELF) {
  const shelf = readShelf(shelfText, 'shelf.yaml');
  if (!shelf.ok) throw new Error(shelf.errors.map(fileErrorText).join('\n'));
  const read = readBuild(build, 'first.yaml');
  if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
  return resolveBuild(read.value.build, shelf.value, read.value);
}

function craftOf(build?: string, shelf?: string): Craft {
  const craft = resolve(build, shelf);
  if (!craft.ok) throw new Error(craft.errors.map(fileErrorText).join('\n'));
  return craft.value;
}

const errorsOf = (build: string, shelf?: string) => {
  const craft = resolve(build, shelf);
  return craft.ok ? [] : craft.errors;
};

describe('a build resolved from listings alone', () => {
  const craft = craftOf();

  test('weighs the sum of its parts and a fiftieth for solder, ties, tape and small screws', () => {
    // By hand from the shelf: 110 + 4 x 33 + 4 x 4.2 + 205 + 14 + 8 + 9 g, and the inferred pack lead.
    const lead = craft.massItems
      .filter(({ part }) => part === 'wiring')
      .reduce((sum, item) => sum + itemMass(item), 0);
    expect(craft.massProperties.mass / 1.02 - lead).toBeCloseTo(0.4948, 9);
    expect(craft.sundryMass).toBeCloseTo(0.02 * (0.4948 + lead), 9);
    expect(lead).toBeGreaterThan(0);
    expect(lead).toBeLessThan(0.01);
  });

  test('the frame weighs what its part says, whatever its solids', () => {
    const frame = craft.massItems
      .filter(({ part }) => part === 'frame')
      .reduce((sum, item) => sum + itemMass(item), 0);
    expect(frame).toBeCloseTo(0.11, 9);
  });

  test('is even from left to right and all numbers are finite', () => {
    const { centreOfGravity, inertia } = craft.massProperties;
    expect(centreOfGravity[1]).toBeCloseTo(0, 9);
    expect([...centreOfGravity, ...inertia.flat()].every(Number.isFinite)).toBe(true);
    expect(inertia[2][2]).toBeGreaterThan(Math.max(inertia[0][0], inertia[1][1]));
  });

  test('what is inferred is told, and its doubt is larger than a told value has', () => {
    expect(craft.inferred).toContain('motors: winding resistance');
    expect(craft.inferred).toContain('motors: circle of its holes');
    const resistance = craft.unknowns.find(({ lever }) => lever === 'windingResistanceScale');
    expect(resistance).toMatchObject({ trust: 'inferred', deviation: 0.3 });
    const told = craftOf(
      BUILD,
      SHELF.replace('stator: 2207', 'stator: 2207\n    windingResistance: 55 mohm'),
    );
    const known = told.unknowns.find(({ lever }) => lever === 'windingResistanceScale');
    expect(known).toMatchObject({ trust: 'maker', deviation: 0.12 });
    expect(told.motors[0]?.model.resistance).toBeCloseTo(0.055, 12);
  });

  test('a propeller with a measured point is matched to it', () => {
    // A plausible stand reading, from memory: what matters is that the fit is used and said.
    const measured = '{ angularSpeed: 20000 rpm, thrust: 800 gf, power: 140 W }';
    const anchored = craftOf(
      BUILD,
      SHELF.replace('size: 5.1 x 3.6 x 3', `size: 5.1 x 3.6 x 3, measured: [${measured}]`),
    );
    expect(anchored.rotors[0]?.blade.anchored).toBe(true);
  });

  test('a rotor made before is taken as it is', () => {
    const shelf = readShelf(SHELF, 'shelf.yaml');
    const rotor = craft.rotors[0];
    if (!shelf.ok || !rotor) throw new Error('no shelf');
    const again = resolveBuild(craft.build, shelf.value, undefined, new Map([[rotor.partId, rotor]]));
    expect(again.ok && again.value.rotors[0]).toBe(rotor);
  });

  test('the pack moved forward moves the balance by its share of the mass', () => {
    const moved = craftOf(BUILD.replace('offset: 4 mm', 'offset: 14 mm'));
    const shift = moved.massProperties.centreOfGravity[0] - craft.massProperties.centreOfGravity[0];
    expect(shift).toBeCloseTo((0.01 * 0.205) / (craft.massProperties.mass / 1.02), 9);
  });

  test('a scale overrides the sum', () => {
    const weighed = craftOf(`${BUILD}measured: { mass: { value: 512 g, spread: 1 g } }\n`);
    expect(weighed.massProperties.mass).toBeCloseTo(0.512, 12);
    const mass = weighed.unknowns.find(({ lever }) => lever === 'massScale');
    expect(mass?.deviation).toBeCloseTo(1 / 512, 9);
    // Whatever ties and solder weigh was on the scale too.
    expect(weighed.sundryMass).toBe(0);
    expect(weighed.unknowns.filter(({ lever }) => lever === 'massScale')).toHaveLength(1);
  });

  // A misplaced point once passed, and thrust to weight came out as 69.
  test.each(['72 g', '7.2 kg'])(
    'a scale that reads %s is one error at its field, with both numbers',
    (said) => {
      const errors = errorsOf(`${BUILD}measured: { mass: ${said} }\n`);
      expect(errors).toHaveLength(1);
      const [error] = errors;
      expect(error?.path).toBe('measured.mass');
      expect(error?.says).toMatch(/the listed parts weigh 499\u00a0g/);
      expect(error?.found.startsWith(said.slice(0, 1))).toBe(true);
    },
  );

  test('a motor that differs is known by its name', () => {
    const other = SHELF.replace(
      '  - { id: gannet-pack,',
      '  - { id: heavy, basedOn: gannet-motor, mass: 40 g }\n  - { id: gannet-pack,',
    );
    const mixed = craftOf(
      BUILD.replace(
        'motors: gannet-motor',
        'motors: { part: gannet-motor, except: [{ at: rear left, part: heavy }] }',
      ),
      other,
    );
    expect(mixed.motors.map(({ place, partId }) => (partId === 'heavy' ? place.name : ''))).toContain(
      'rear left',
    );
    expect(mixed.massProperties.centreOfGravity[1]).toBeLessThan(0);
  });

  test('gives a flight model with a station for every motor', () => {
    const air = standardAtmosphere({ height: 0 });
    const model = flightModelOf(
      craft,
      [(_speed, _axial, out) => Object.assign(out, { thrust: 1, torque: 0.01 })],
      air,
      0.2,
    );
    expect(model.stations.map(({ name }) => name)).toEqual(craft.layout.motors.map(({ name }) => name));
    expect(model.mass).toBe(craft.massProperties.mass);
    expect(model.stations.every(({ downloadShare }) => downloadShare > 0.01 && downloadShare < 0.1)).toBe(
      true,
    );
    expect(() => flightModelOf(craft, [], air, 0.2)).toThrow(/readers must be 1/);
  });
});

describe('what leaves no aircraft', () => {
  test('ids that are not on the shelf, all at once, with the nearest', () => {
    const broken = BUILD.replace('motors: gannet-motor', 'motors: ganet-motor').replace(
      'part: gannet-pack',
      'part: gannet-pak',
    );
    expect(errorsOf(broken).map(({ line, column, path, remedy }) => [line, column, path, remedy])).toEqual([
      [4, 9, 'motors.part', 'Did you mean "gannet-motor"?'],
      [8, 15, 'pack.part', 'Did you mean "gannet-pack"?'],
    ]);
  });

  test('a part of a wrong kind', () => {
    expect(errorsOf(BUILD.replace('motors: gannet-motor', 'motors: gannet-pack'))).toEqual([
      expect.objectContaining({ says: '"gannet-pack" is a pack, not a motor' }),
    ]);
  });

  test('no motor controllers anywhere', () => {
    expect(errorsOf(BUILD.replace('controllers: gannet-controller\n', ''))).toEqual([
      expect.objectContaining({ path: 'controllers', remedy: expect.stringContaining('Add the field') }),
    ]);
  });

  test('a layout that contradicts itself is an error at its field', () => {
    const layout = '{ kind: stretched X, width: 200 mm, length: 150 mm }';
    const broken = BUILD.replace('frame: gannet-frame', `frame: { part: gannet-frame, layout: ${layout} }`);
    expect(errorsOf(broken)).toEqual([
      expect.objectContaining({
        line: 3,
        path: 'frame.layout',
        says: expect.stringContaining('longer than its width'),
      }),
    ]);
  });

  test('a motor inside the body', () => {
    const broken = BUILD.replace(
      'frame: gannet-frame',
      'frame: { part: gannet-frame, layout: { kind: true X, diagonal: 40 mm } }',
    );
    expect(errorsOf(broken)).toEqual([
      expect.objectContaining({ says: expect.stringContaining('inside the body') }),
    ]);
  });
});

test.each([
  '{ kind: plus, diagonal: 226 mm }',
  '{ kind: dead cat, frontWidth: 200 mm, rearWidth: 160 mm, length: 150 mm }',
  '{ kind: tri, frontWidth: 200 mm, length: 180 mm }',
  '{ kind: hexa X, diagonal: 320 mm }',
  '{ kind: octo, diagonal: 420 mm }',
  '{ kind: X8 coaxial, width: 160 mm, length: 160 mm, discSpacing: 40 mm }',
  '{ kind: Y6 coaxial, frontWidth: 200 mm, length: 180 mm, discSpacing: 40 mm }',
])('the layout %s resolves with a motor and a propeller at every place', (layout) => {
  const craft = craftOf(
    BUILD.replace('frame: gannet-frame', `frame: { part: gannet-frame, layout: ${layout} }`),
  );
  expect(craft.motors.length).toBe(craft.layout.motors.length);
  expect(craft.parts.propellers.length).toBe(craft.motors.length);
  expect(Number.isFinite(craft.massProperties.mass)).toBe(true);
});

describe('a recording camera on the nose', () => {
  /** Corners in the side view, of a block pitched nose up. */
  type Side = readonly (readonly [x: number, z: number])[];
  const side = (place: readonly number[], length: number, height: number, pitch = 0): Side => {
    const [c, s] = [Math.cos(pitch), Math.sin(pitch)];
    return [
      [1, 1],
      [1, -1],
      [-1, -1],
      [-1, 1],
    ].map(([a, b]) => {
      const [along, up] = [(a! * length) / 2, (b! * height) / 2];
      return [place[0]! + along * c - up * s, place[2]! - along * s - up * c] as const;
    });
  };
  /** Convex shapes lie apart exactly when some edge of either parts them (the separating axis theorem). */
  const apart = (one: Side, other: Side): boolean =>
    [one, other].some((shape) =>
      shape.some(([x, z], i) => {
        const [nextX, nextZ] = shape[(i + 1) % 4]!;
        const spans = [one, other].map((corners) => {
          const along = corners.map(([cx, cz]) => cx * (nextZ - z) - cz * (nextX - x));
          return [Math.min(...along), Math.max(...along)] as const;
        });
        return spans[0]![1] < spans[1]![0] || spans[1]![1] < spans[0]![0];
      }),
    );

  // The story: its tilted block stood inside the pack in the side view, and sank into the top plate; pushed
  // forward of the pack it then hung over the nose and filled a fifth of the flying camera's picture.
  test('touches neither pack nor plates nor the other camera, whatever its tilt, and hangs over little', () => {
    const shelf = readdirSync('shelf')
      .filter((each) => each.endsWith('.yaml'))
      .reduce((under, name) => {
        const read = readShelf(readFileSync(`shelf/${name}`, 'utf8'), name, under);
        if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
        return read.value;
      }, EMPTY_SHELF);
    let seen = 0;
    const folders = ['first-freestyle', 'cruiser', 'guarded', 'micro'];
    const files = folders.flatMap((folder) =>
      readdirSync(`demo/${folder}`).map((name) => `${folder}/${name}`),
    );
    for (const name of files) {
      if (name.endsWith('brief.yaml')) continue;
      const read = readBuild(readFileSync(`demo/${name}`, 'utf8'), name);
      if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
      const { build } = read.value;
      for (const tilt of [-0.2, 0, 0.1, 0.35, 0.9]) {
        const tilted = {
          ...build,
          cameras: build.cameras.map((each) => (each.role === 'recording' ? { ...each, tilt } : each)),
        };
        const craft = resolveBuild(tilted, shelf);
        if (!craft.ok) throw new Error(craft.errors.map(fileErrorText).join('\n'));
        const { cameras, pack, frame } = craft.value;
        const recording = cameras.find(({ role }) => role === 'recording');
        const flying = cameras.find(({ role }) => role === 'flying');
        if (!recording || !flying) continue;
        seen++;
        const own = side(recording.place, recording.size.length, recording.size.height, tilt);
        const others = [
          side(pack.place, pack.size.length, pack.size.height),
          side(flying.place, flying.size.length, flying.size.height, flying.camera.pitch),
          ...frame.plates.map(({ outline, z, thickness }) => {
            const xs = outline.map(([x]) => x);
            const [rear, front] = [Math.min(...xs), Math.max(...xs)];
            return side([(rear + front) / 2, 0, z], front - rear, thickness);
          }),
        ];
        for (const [i, other] of others.entries())
          expect(apart(own, other), `${name} ${tilt} ${i}`).toBe(true);
        const foremost = Math.max(...own.map(([x]) => x));
        const nose = Math.max(...frame.plates.flatMap(({ outline }) => outline.map(([x]) => x)));
        const usual = nose + foremost - recording.place[0] - recording.size.length / 2;
        expect(foremost).toBeLessThan(Math.max(flying.camera.position[0], nose, usual) + 0.009);
      }
    }
    expect(seen).toBeGreaterThan(30);
  });
});

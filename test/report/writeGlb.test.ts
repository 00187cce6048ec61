import { validateBytes } from 'gltf-validator';
import { Box3, type Mesh } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { describe, expect, it } from 'vitest';
import { solidsOf } from '../../src/report/solids/solidsOf.ts';
import { writeGlb } from '../../src/report/solids/writeGlb.ts';
import { craftOf, DEMOS, demoBuild } from '../assess/parts/crafts.ts';

describe('the glTF file', () => {
  // The Khronos Group's own checker of the standard (gltf-validator).
  it.each(DEMOS)('%s passes the standard without an error or a warning', async (name) => {
    const bytes = writeGlb(solidsOf(craftOf(demoBuild(name))));
    const { issues, info } = await validateBytes(bytes);
    expect(issues.messages.filter(({ severity }) => severity <= 1)).toEqual([]);
    expect(info.totalTriangleCount).toBeGreaterThan(1000);
  });

  it('comes back from another reader with every part by name, in metres, nose along +Z and up +Y', async () => {
    const made = solidsOf(craftOf(demoBuild('first-freestyle/turnstone')));
    const bytes = writeGlb(made);
    const { scene } = await new GLTFLoader().parseAsync(bytes.buffer, '');
    const found = new Map<string, Mesh>();
    scene.traverse((node) => {
      if ((node as Mesh).isMesh)
        found.set((node.userData.name as string | undefined) ?? node.name, node as Mesh);
    });
    for (const { name } of made.solids) expect([...found.keys()]).toContain(name);
    const whole = new Box3().setFromObject(found.get('front left motor')!);
    const motor = made.discs.find(({ name }) => name === 'front left')!;
    // Ahead of the middle, and on its left, which is +X when +Y is up and +Z ahead.
    expect((whole.min.z + whole.max.z) / 2).toBeCloseTo(motor.centre[0], 6);
    expect((whole.min.x + whole.max.x) / 2).toBeCloseTo(-motor.centre[1], 6);
    expect(whole.min.y).toBeGreaterThan(0);
  });
});

import { validateBytes } from 'gltf-validator';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { demo, quadwright } from './fakeIo.ts';

const turnstone = `${demo}/turnstone.yaml`;

describe('draw', () => {
  it('writes the aircraft in the round as glTF that the Khronos checker passes, a node a part', async () => {
    const written = new Map<string, string | Uint8Array>();
    const { code, out } = await quadwright(['draw', turnstone, '--glb', 'a.glb'], {}, written);
    expect(code).toBe(0);
    expect(out).toBe('a.glb: Turnstone, true X, in the round, in metres\n');
    const bytes = written.get('a.glb');
    if (!(bytes instanceof Uint8Array)) throw new Error('no bytes were written');
    const { issues, info } = await validateBytes(bytes);
    expect(issues.messages.filter(({ severity }) => severity <= 1)).toEqual([]);
    expect(info.drawCallCount).toBeGreaterThan(20);
  });

  it('writes plan and side as SVG whose lengths are millimetres of the aircraft', async () => {
    const written = new Map<string, string | Uint8Array>();
    const { code } = await quadwright(['draw', turnstone, '--plan', 'p.svg', '--side', 's.svg'], {}, written);
    expect(code).toBe(0);
    for (const path of ['p.svg', 's.svg']) {
      const svg = parseHTML(`<body>${written.get(path)}</body>`).document.querySelector('svg');
      expect(svg?.querySelector('title')?.textContent).toContain('Turnstone, true X');
      const [, , width = 0] = (svg?.getAttribute('viewBox') ?? '').split(' ').map(Number);
      // 230 mm between motors on the diagonal and 130 mm propellers: 293 mm over the discs, margins on top.
      expect(width).toBeGreaterThan(293);
      expect(width).toBeLessThan(293 * 1.35);
    }
  });

  it('says what it may draw when nothing is asked for, and where it cannot write', async () => {
    const none = await quadwright(['draw', turnstone]);
    expect(none.code).toBe(2);
    expect(none.error).toContain('--plan FILE, --side FILE or --glb FILE');
    const nowhere = await quadwright(['draw', turnstone, '--plan', 'p.svg']);
    expect(nowhere.code).toBe(2);
    expect(nowhere.error).toContain('nowhere to write');
  });
});

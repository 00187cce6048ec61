import { describe, expect, it } from 'vitest';
import { latestWins } from '../../src/web/worker/latestWins.ts';

const rest = () => new Promise((done) => setTimeout(done, 2));

describe('latestWins', () => {
  it('answers the first and the last of a burst, never two at once', async () => {
    const delivered: (readonly [string, number])[] = [];
    let atOnce = 0;
    const ask = latestWins(
      async (n: number) => {
        atOnce += 1;
        expect(atOnce).toBe(1);
        await rest();
        atOnce -= 1;
        return n * 10;
      },
      (key, answer) => delivered.push([key, answer.status === 'fulfilled' ? answer.value : -1]),
    );
    for (const n of [1, 2, 3, 4]) ask('pack', n);
    ask('other', 7);
    ask('hurried', 8, 'first');
    await expect.poll(() => delivered.length).toBe(4);
    expect(delivered).toEqual([
      ['pack', 10],
      ['hurried', 80],
      ['pack', 40],
      ['other', 70],
    ]);
  });

  it('goes on after a request that fails', async () => {
    const delivered: string[] = [];
    const ask = latestWins(
      async (n: number) => {
        if (n === 1) throw new Error('first fails');
        return n;
      },
      (_, answer) => delivered.push(answer.status),
    );
    ask('a', 1);
    ask('b', 2);
    await expect.poll(() => delivered.length).toBe(2);
    expect(delivered).toEqual(['rejected', 'fulfilled']);
  });
});

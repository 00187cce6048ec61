import fc from 'fast-check';
import { anyBuild, rotorPool } from '../test/flight/fuzz/anyBuild.ts';
import { askAll } from '../test/flight/fuzz/ask.ts';

/**
 * Random valid builds, each asked for its hover story, a point at random throttles, level flight, top speed and agility:
 * nothing may be other than solved or refused in words. `npm run bench -- fuzz`; BUILDS=1000 SEED=3 for less. In parts, one after
 * the other or side by side: FROM=50000 goes on at that build of the same run, so that counts may be summed.
 */
const from = Number(process.env.FROM ?? 0);
const builds = Number(process.env.BUILDS ?? 100_000);
const seed = Number(process.env.SEED ?? 1);
const BATCH = 1000;

const start = performance.now();
const pool = rotorPool(300, seed);
const seconds = (): string => ((performance.now() - start) / 1000).toFixed(0);
console.log(`${pool.length} rotor maps after ${seconds()} s`);
const tally = new Map<string, number>();
const count = (key: string): void => {
  tally.set(key, (tally.get(key) ?? 0) + 1);
};
let faults = 0;
const arbitrary = anyBuild(pool);
for (let done = from; done < from + builds; done += BATCH) {
  const batch = fc.sample(arbitrary, { numRuns: Math.min(BATCH, from + builds - done), seed: seed + done });
  batch.forEach((build, i) => {
    for (const [question, answer] of askAll(build)) {
      if (answer === 'solved') count(`${question}: solved`);
      else if ('whyNot' in answer)
        count(`${question}: ${answer.whyNot.replace(/-?\d+(\.\d+)?/g, '#').slice(0, 90)}`);
      else {
        faults++;
        if (faults <= 20)
          console.error(`build ${i} of the batch seeded ${seed + done}, ${question}: ${answer.fault}`);
      }
    }
  });
  if ((done / BATCH) % 10 === 9) {
    console.log(`${done + BATCH - from} builds after ${seconds()} s, ${faults} faults`);
  }
}
for (const [key, times] of [...tally].sort()) console.log(`${String(times).padStart(8)}  ${key}`);
console.log(`${builds} builds, ${faults} faults, ${seconds()} s`);
process.exitCode = faults > 0 ? 1 : 0;

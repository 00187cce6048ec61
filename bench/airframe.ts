import { Bench } from 'tinybench';
import { type FrameQuestion, frameStructure, type HubQuestion } from '../src/airframe/askFrame.ts';
import { frameModes } from '../src/airframe/frameModes.ts';
import { ort } from '../test/airframe/materials.ts';

// Frame modes under 15 ms (issue 4): a dead cat with two kinds of arm on a rigid hub, and a one-piece plate.

const body = {
  mass: 0.35,
  centreOfGravity: [0, 0, -0.01],
  inertia: [
    [1e-4, 0, 0],
    [0, 2.3e-4, 0],
    [0, 0, 2.3e-4],
  ],
} as const;

const frame = (hub: HubQuestion, angles: readonly number[], reach: readonly number[]): FrameQuestion => ({
  hub,
  arms: angles.map((degrees, i) => {
    const yaw = (degrees * Math.PI) / 180;
    return {
      name: `arm at ${degrees}`,
      root: [0.03 * Math.cos(yaw), 0.03 * Math.sin(yaw), 0],
      yaw,
      arm: {
        length: (reach[i] ?? 0.12) - 0.03,
        outline: [
          { at: 0, width: 0.014 },
          { at: 1, width: 0.011 },
        ],
        thickness: 0.005,
        moduli: ort,
        density: 1550,
        grip: { kind: hub.kind === 'rigid' ? 'between plates' : 'one piece' },
        tipBody: { mass: 0.035, height: 0.012, inertia: [2.9e-6, 2.9e-6, 3.4e-6] },
      },
    };
  }),
});

const rigid = frame({ kind: 'rigid', body }, [60, 140, 220, 300], [0.13, 0.12, 0.12, 0.13]);
const plate = frame(
  {
    kind: 'one plate',
    body,
    outline: [
      [0.03, 0.03],
      [-0.03, 0.03],
      [-0.03, -0.03],
      [0.03, -0.03],
    ],
    heldRadius: 0.014,
    thickness: 0.005,
    moduli: ort,
    fibreYaw: 0,
    density: 1550,
  },
  [0, 90, 180, 270],
  [0.12, 0.12, 0.12, 0.12],
);

const ring = (question: FrameQuestion): void => {
  const structure = frameStructure(question);
  if (!structure.ok) throw new Error(structure.reason);
  const modes = frameModes(structure.value.model, 10);
  if (!modes.ok) throw new Error(modes.reason);
};

const bench = new Bench({ time: 1500, warmupTime: 800 });
bench.add('frame modes, rigid hub, two kinds of arm', () => ring(rigid));
bench.add('frame modes, one plate', () => ring(plate));
await bench.run();
for (const task of bench.tasks) {
  const result = task.result;
  if (!('latency' in result)) throw new Error(`${task.name} did not run`);
  const median = result.latency.p50;
  console.log(
    `${task.name}: median ${median.toFixed(2)} ms (to reach: 15 ms)${median < 15 ? '' : '  MISSED'}`,
  );
}

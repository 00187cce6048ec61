import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ArmQuestion, askArm } from '../../src/airframe/askArm.ts';
import { placedArm } from './sampleFrame.ts';

const question: ArmQuestion = placedArm(0).arm;
const answerTo = (asked: ArmQuestion) => {
  const answer = askArm(asked);
  if (!answer.ok) throw new Error(answer.reason);
  return answer.value;
};

describe('ask arm', () => {
  it('scales as theory has it: all lengths by s, frequencies by 1/s, stiffness by s', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2, noNaN: true }), (s) => {
        const { mass, height, inertia } = question.tipBody!;
        const scaled: ArmQuestion = {
          ...question,
          length: question.length * s,
          outline: question.outline.map(({ at, width }) => ({ at, width: width * s })),
          thickness: question.thickness * s,
          tipBody: {
            mass: mass * s ** 3,
            height: height * s,
            inertia: [inertia[0] * s ** 5, inertia[1] * s ** 5, inertia[2] * s ** 5],
          },
        };
        const [a, b] = [answerTo(question), answerTo(scaled)];
        for (const [i, { frequency }] of b.frequencies.entries()) {
          expect((frequency * s) / a.frequencies[i]!.frequency).toBeCloseTo(1, 5);
        }
        expect(b.tipStiffness.z / s / a.tipStiffness.z).toBeCloseTo(1, 9);
      }),
      { numRuns: 15 },
    );
  });

  it('is the stiffer the harder its root is held', () => {
    const kinds = ['between plates', 'one piece', 'plain', 'held face'] as const;
    const [loosest, , plain, hardest] = kinds.map(
      (kind) => answerTo({ ...question, grip: { kind } }).tipStiffness.y,
    );
    expect(loosest!).toBeLessThan(plain!);
    expect(plain!).toBeLessThan(hardest!);
    const slack = answerTo({ ...question, grip: { kind: 'between plates', extraInPlane: 0.003 } });
    expect(slack.tipStiffness.y).toBeLessThan(loosest!);
  });

  it('deflects as its stiffness says, up for a push up', () => {
    const pushed = answerTo({
      ...question,
      load: { force: [0, 0, 7] },
      stressAt: { along: 0.02, across: 0, up: 0.0025 },
    });
    expect(pushed.deflection![2] * pushed.tipStiffness.z).toBeCloseTo(7, 9);
    expect(pushed.stress!.alongArm).toBeLessThan(0);
  });

  it('names what it cannot take', () => {
    expect(() => askArm({ ...question, length: -1 })).toThrow(/length/);
    expect(() => askArm({ ...question, outline: [] })).toThrow(/outline/);
    expect(() =>
      askArm({ ...question, load: { force: [1, 0, 0] }, stressAt: { along: 0.01, across: 1, up: 0 } }),
    ).toThrow(/outside/);
  });
});

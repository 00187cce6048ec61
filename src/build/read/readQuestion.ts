import type { z } from 'zod';
import type { ArmQuestion } from '../../airframe/askArm.ts';
import type { FrameQuestion } from '../../airframe/askFrame.ts';
import { armFile, armQuestion } from '../schema/armFile.ts';
import { frameFile, frameQuestionOf } from '../schema/frameFile.ts';
import { check } from './check.ts';
import { failed, type Reading } from './fileError.ts';
import { readKind } from './readKind.ts';

/** Reads the file of `ask arm`. */
export function readArmQuestion(text: string, file: string): Reading<ArmQuestion> {
  return readAs(armFile, 'an arm', text, file, (value) => armQuestion(value, value.length, value.modes));
}

/** Reads the file of `ask frame`. */
export function readFrameQuestion(text: string, file: string): Reading<FrameQuestion> {
  return readAs(frameFile, 'a frame', text, file, frameQuestionOf);
}

/** Fields that contradict each other are an error of the file, told in the words of the one who noticed. */
function readAs<S extends z.ZodType, T>(
  schema: S,
  what: string,
  text: string,
  file: string,
  make: (value: z.output<S>) => T,
): Reading<T> {
  const parsed = readKind(text, file, what);
  if (!parsed.ok) return parsed;
  const { value, errors } = check(schema, parsed.value.data, parsed.value, file);
  if (value === undefined) return failed(errors);
  try {
    return { ok: true, value: make(value) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return failed([
      {
        file,
        line: 1,
        column: 1,
        path: '',
        says: error.message,
        found: 'fields that do not go together',
        allowed: 'what `--help` shows',
        remedy: 'Compare with the example of `--help`.',
      },
    ]);
  }
}

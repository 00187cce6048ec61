import { type FileError, fileErrorText, type Reading } from '../build/read/fileError.ts';
import { BadInput } from './io.ts';

/** The value of a reading, or all of its errors at once as bad input. */
export function mustRead<T>(reading: Reading<T>): T {
  if (reading.ok) return reading.value;
  throw new BadInput(errorsText(reading.errors));
}

export function errorsText(errors: readonly FileError[]): string {
  return errors.map(fileErrorText).join('\n');
}

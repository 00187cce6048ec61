import type { CrashLog } from '../../knocks/types.ts';
import type { Money } from '../../units/parseMoney.ts';
import { crashLogOf } from '../crashLogOf.ts';
import { type CrashNotes, crashLogFile } from '../schema/crashLogFile.ts';
import { check } from './check.ts';
import { failed, type Reading } from './fileError.ts';
import { readKind } from './readKind.ts';

/** Reads a pilot's crash log from YAML or JSON text. */
export function readCrashLog(
  text: string,
  file: string,
  inCurrency: (money: Money) => number | undefined,
): Reading<CrashLog> {
  const notes = readCrashNotes(text, file);
  return notes.ok ? { ok: true, value: crashLogOf(notes.value, inCurrency) } : notes;
}

/** The same as it was written, the money in its own currency. */
export function readCrashNotes(text: string, file: string): Reading<CrashNotes> {
  const parsed = readKind(text, file, 'a crash log');
  if (!parsed.ok) return parsed;
  const { value, errors } = check(crashLogFile, parsed.value.data, parsed.value, file);
  return value === undefined ? failed(errors) : { ok: true, value };
}

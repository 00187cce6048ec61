import { BRIEF_FORMAT, type Brief, brief } from '../schema/brief.ts';
import { BUILD_FORMAT, type Build, build } from '../schema/build.ts';
import { check } from './check.ts';
import { failed, type Reading } from './fileError.ts';
import type { Located } from './plainData.ts';
import { readKind } from './readKind.ts';

/** A build with the places of its fields, so that later errors can name them too. */
export interface BuildFile {
  readonly build: Build;
  readonly file: string;
  readonly placeOf: Located['placeOf'];
}

/** Reads a build from YAML or JSON text. Pure: `file` is only for messages. */
export function readBuild(text: string, file: string): Reading<BuildFile> {
  const parsed = readKind(text, file, BUILD_FORMAT);
  if (!parsed.ok) return parsed;
  const { value, errors } = check(build, parsed.value.data, parsed.value, file);
  if (value === undefined) return failed(errors);
  return { ok: true, value: { build: value, file, placeOf: parsed.value.placeOf } };
}

/** Reads a build from plain data in the form of a file, for a face that edits it field by field. */
export function readBuildData(data: unknown, file: string): Reading<BuildFile> {
  const placeOf = () => ({ line: 1, column: 1 });
  const { value, errors } = check(build, data, { placeOf }, file);
  if (value === undefined) return failed(errors);
  return { ok: true, value: { build: value, file, placeOf } };
}

/** Reads a brief from YAML or JSON text. */
export function readBrief(text: string, file: string): Reading<Brief> {
  const parsed = readKind(text, file, BRIEF_FORMAT);
  if (!parsed.ok) return parsed;
  const { value, errors } = check(brief, parsed.value.data, parsed.value, file);
  return value === undefined ? failed(errors) : { ok: true, value };
}

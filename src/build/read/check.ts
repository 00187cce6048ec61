import type { z } from 'zod';
import { type FileError, type Path, pathText } from './fileError.ts';
import { wordsOf } from './issueWords.ts';
import type { Located } from './plainData.ts';

/**
 * Holds plain data against a schema. Errors are placed in the file; `prefix` is where the data stands
 * in it.
 */
export function check<S extends z.ZodType>(
  schema: S,
  data: unknown,
  located: Pick<Located, 'placeOf'>,
  file: string,
  prefix: Path = [],
): { readonly value: z.output<S> | undefined; readonly errors: readonly FileError[] } {
  // zod hands its own words' maker the schema at fault, and only there: what it allows is noted here.
  const instances = new Map<string, z.core.$ZodType>();
  const result = schema.safeParse(data, {
    error: (issue) => {
      if (issue.inst) instances.set(noteKey(issue.code, issue.path ?? []), issue.inst as z.core.$ZodType);
      return undefined;
    },
  });
  if (result.success) return { value: result.data, errors: [] };
  const errors = result.error.issues.flatMap((issue) => {
    const own = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
    const instance = instances.get(noteKey(issue.code, issue.path));
    return wordsOf(issue, own, data, instance).map(({ path, onKey, ...words }): FileError => {
      const whole = [...prefix, ...path];
      return { file, ...located.placeOf(whole, onKey ? 'key' : 'value'), path: pathText(whole), ...words };
    });
  });
  return { value: undefined, errors };
}

const noteKey = (code: string, path: readonly PropertyKey[]) => `${code} ${path.map(String).join('/')}`;

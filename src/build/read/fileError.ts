/** What is wrong at one place of a file, and what to do about it. */
export interface FileError {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1. */
  readonly column: number;
  /** The field: `motors.part`, `cameras[0].tilt`; empty for the file as a whole. */
  readonly path: string;
  /** What is the matter, without place and remedy. */
  readonly says: string;
  readonly found: string;
  readonly allowed: string;
  readonly remedy: string;
}

/** The contents of a file, or everything that is wrong with it, in the order of the lines. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly errors: readonly FileError[] };

/** One error as text for a terminal or a log, two lines. */
export function fileErrorText(error: FileError): string {
  const field = error.path === '' ? '' : `${error.path}: `;
  const place = `${error.file}:${error.line}:${error.column}`;
  return `${place} ${field}${error.says}\n  Found ${error.found}; allowed: ${error.allowed}. ${error.remedy}`;
}

/** More than this many errors are cut off, since the first ones usually cause the rest. */
export const MOST_ERRORS = 50;

export function failed(errors: readonly FileError[]): {
  readonly ok: false;
  readonly errors: readonly FileError[];
} {
  const sorted = [...errors].sort((a, b) => a.line - b.line || a.column - b.column);
  return { ok: false, errors: sorted.slice(0, MOST_ERRORS) };
}

export type Path = readonly (string | number)[];

/** `cameras[0].tilt` */
export function pathText(path: Path): string {
  const text = path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? step : `${text}.${step}`;
  }, '');
  return text.length > 120 ? `${text.slice(0, 120)}...` : text;
}

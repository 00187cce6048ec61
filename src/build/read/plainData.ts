import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type LineCounter,
  type Node,
  type YAMLMap,
} from 'yaml';
import { type FileError, failed, type Path, pathText, type Reading } from './fileError.ts';

/** Where a field stands in its file, from 1. */
export interface FilePlace {
  readonly line: number;
  readonly column: number;
}

/** Plain data with the place of every field. */
export interface Located {
  readonly data: unknown;
  /** Place of a field's value, of its name (`key`), or of the nearest group around it that exists. */
  readonly placeOf: (path: Path, what?: 'value' | 'key') => FilePlace;
}

/** Fields and list entries, after aliases are written out; a shelf of 1000 parts has about 30000. */
const MOST_NODES = 100_000;
const MOST_ALIASES = 200;
/** Names that would reach into JavaScript's own machinery. */
const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

export function plainData(document: Document.Parsed, counter: LineCounter, file: string): Reading<Located> {
  const places = new Map<string, FilePlace>();
  const errors: FileError[] = [];
  const open = new Set<unknown>();
  let nodes = 0;
  let aliases = 0;

  const at = (offset: number | undefined): FilePlace => {
    const { line, col } = counter.linePos(offset ?? 0);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const complain = (node: Node, path: Path, words: Omit<FileError, 'file' | 'line' | 'column' | 'path'>) =>
    errors.push({ file, ...at(node.range?.[0]), path: pathText(path), ...words });

  const convert = (node: unknown, path: Path): unknown => {
    nodes++;
    if (errors.length > 0 && nodes > MOST_NODES) return undefined;
    if (isAlias(node)) {
      aliases++;
      const target = node.resolve(document);
      if (target && aliases <= MOST_ALIASES && !open.has(target)) return convert(target, path);
      const found = `*${node.source.slice(0, 40)}`;
      const allowed = `up to ${MOST_ALIASES} references, each to an anchor above it`;
      complain(node, path, {
        says: 'too many references, or one to nowhere or to what it stands in',
        found,
        allowed,
        remedy: 'Write it out.',
      });
      return undefined;
    }
    if (!isMap(node) && !isSeq(node) && !isScalar(node)) return null;
    places.set(keyOf(path, 'value'), at(node.range?.[0]));
    if (nodes > MOST_NODES) {
      const found = `more than ${MOST_NODES} fields`;
      const allowed = `up to ${MOST_NODES} fields`;
      complain(node, path, { says: 'the file holds too much', found, allowed, remedy: 'Split it.' });
      return undefined;
    }
    if (node.tag !== undefined) {
      const allowed = 'plain text, numbers, lists and fields';
      complain(node, path, {
        says: 'tags are not read',
        found: node.tag,
        allowed,
        remedy: 'Take the tag out.',
      });
      return undefined;
    }
    if (isScalar(node)) return node.value;
    open.add(node);
    const value = isSeq(node)
      ? node.items.map((item, index) => convert(item, [...path, index]))
      : group(node, path);
    open.delete(node);
    return value;
  };

  const group = (node: YAMLMap, path: Path): Readonly<Record<string, unknown>> => {
    const record: Record<string, unknown> = {};
    for (const { key, value } of node.items) {
      const name = isScalar(key) ? String(key.value) : '';
      const inner = [...path, name];
      if (FORBIDDEN_KEYS.has(name)) {
        const allowed = 'the fields of the format';
        complain(isScalar(key) ? key : node, inner, {
          says: `"${name}" cannot be a field`,
          found: `"${name}"`,
          allowed,
          remedy: 'Take it out.',
        });
        continue;
      }
      if (Object.hasOwn(record, name)) {
        const { line } = places.get(keyOf(inner, 'key')) ?? { line: 0 };
        const says = `"${name.slice(0, 40)}" is given twice, first in line ${line}`;
        const words = {
          says,
          found: `"${name.slice(0, 40)}"`,
          allowed: 'each field once',
          remedy: 'Take one out.',
        };
        complain(isScalar(key) ? key : node, inner, words);
        continue;
      }
      if (isScalar(key)) places.set(keyOf(inner, 'key'), at(key.range?.[0]));
      record[name] = convert(value, inner);
    }
    return record;
  };

  const data = convert(document.contents, []);
  if (errors.length > 0) return failed(errors);
  const placeOf = (path: Path, what: 'value' | 'key' = 'value'): FilePlace => {
    const own = places.get(keyOf(path, what)) ?? places.get(keyOf(path, 'key'));
    if (own) return own;
    return path.length === 0 ? { line: 1, column: 1 } : placeOf(path.slice(0, -1));
  };
  return { ok: true, value: { data, placeOf } };
}

const keyOf = (path: Path, what: 'value' | 'key'): string => `${what} ${JSON.stringify(path)}`;

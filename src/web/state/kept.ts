import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import { briefData } from '../../build/write/briefData.ts';
import { buildData } from '../../build/write/buildData.ts';
import { crashLogData } from '../../build/write/crashLogData.ts';
import type { Want } from '../../choose/wants.ts';
import type { KeptBuild, KeptFiles } from '../worker/protocol.ts';
import type { DeskState } from './desk.ts';
import type { Snapshot } from './snapshots.ts';

/** The desk as the browser keeps it: files as texts, and how they lay. */
export interface KeptDesk {
  readonly version: 1;
  readonly files: KeptFiles;
  readonly wants: readonly Want[];
  readonly open: string;
  readonly aside: readonly string[];
  readonly snapshots: readonly KeptSnapshot[];
}

export interface KeptSnapshot {
  readonly name: string;
  readonly files: KeptFiles;
}

const buildText = (build: Build): string => JSON.stringify(buildData(build));
const briefText = (brief: Brief): string => JSON.stringify(briefData(brief));

export function filesOf(
  { builds, came, logs }: Pick<DeskState, 'builds' | 'came' | 'logs'>,
  brief: Brief,
): KeptFiles {
  return {
    brief: briefText(brief),
    builds: Object.entries(builds).map(([id, build]): KeptBuild => {
      const text = buildText(build);
      const first = came[id] ?? build;
      const log = logs[id];
      return {
        id,
        text,
        came: first === build ? text : buildText(first),
        ...(log === undefined ? {} : { log: JSON.stringify(crashLogData(log)) }),
      };
    }),
  };
}

export function keptDesk(
  desk: DeskState & { readonly brief: Brief },
  snapshots: readonly Snapshot[],
  shelf: string | undefined,
): KeptDesk {
  return {
    version: 1,
    files: { ...filesOf(desk, desk.brief), ...(shelf === undefined ? {} : { shelf }) },
    wants: desk.wants,
    open: desk.open,
    aside: desk.aside,
    snapshots: snapshots.map(({ name, files }) => ({ name, files })),
  };
}

/** What the store gave back, when it is what we put there; its files are read and checked by the worker. */
export function asKeptDesk(raw: unknown): KeptDesk | undefined {
  if (!isRecord(raw) || raw.version !== 1 || !isFiles(raw.files)) return undefined;
  const wants = listOf(raw.wants, isWant);
  const aside = listOf(raw.aside, (each): each is string => typeof each === 'string');
  const snapshots = listOf(raw.snapshots, isSnapshot);
  if (!wants || !aside || !snapshots || typeof raw.open !== 'string') return undefined;
  return { version: 1, files: raw.files, wants, aside, open: raw.open, snapshots };
}

const isRecord = (raw: unknown): raw is Readonly<Record<string, unknown>> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

const isFiles = (raw: unknown): raw is KeptFiles =>
  isRecord(raw) &&
  typeof raw.brief === 'string' &&
  (raw.shelf === undefined || typeof raw.shelf === 'string') &&
  Array.isArray(raw.builds) &&
  raw.builds.every(
    (each) =>
      isRecord(each) &&
      typeof each.id === 'string' &&
      typeof each.text === 'string' &&
      typeof each.came === 'string' &&
      (each.log === undefined || typeof each.log === 'string'),
  );

const isWant = (raw: unknown): raw is Want =>
  isRecord(raw) && typeof raw.measure === 'string' && typeof raw.weight === 'number';

const isSnapshot = (raw: unknown): raw is KeptSnapshot =>
  isRecord(raw) && typeof raw.name === 'string' && isFiles(raw.files);

const listOf = <T>(raw: unknown, is: (each: unknown) => each is T): readonly T[] | undefined =>
  Array.isArray(raw) && raw.every(is) ? raw : undefined;

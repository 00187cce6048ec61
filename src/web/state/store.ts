import { type IDBPDatabase, openDB } from 'idb';

const NAME = 'quadwright';
const STORE = 'desk';
/** The desk as it is, as it was at the last start, and what could not be read; a search under way; columns of lists. */
type Key = 'now' | 'before' | 'unread' | 'search' | 'columns';

let opening: Promise<IDBPDatabase> | undefined;

function database(): Promise<IDBPDatabase> {
  opening ??= openDB(NAME, 1, { upgrade: (db) => void db.createObjectStore(STORE) });
  return opening;
}

export const readStore = async (key: Key): Promise<unknown> => await (await database()).get(STORE, key);

export const writeStore = async (key: Key, value: unknown): Promise<void> =>
  void (await (await database()).put(STORE, value, key));

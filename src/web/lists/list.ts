import { create } from 'zustand';
import type { ColumnsFile } from '../../build/lists/columns.ts';
import type { SameChoice } from '../../build/lists/ontoShelf.ts';
import type { ListWishes } from '../../build/lists/readList.ts';
import { useDeskOpen } from '../desk/deskOpen.ts';
import { useAnswers } from '../state/answers.ts';
import { tell } from '../state/notices.ts';
import { readStore, writeStore } from '../state/store.ts';
import { takeShelf, theWorkers } from '../state/work.ts';
import type { PartsListView } from '../worker/partsListProtocol.ts';

interface OpenList {
  readonly file: string;
  readonly text: string;
  readonly wishes: ListWishes;
  readonly same?: SameChoice;
  /** Take the rows that read and leave the others. */
  readonly goodRows: boolean;
  readonly view?: PartsListView;
  readonly refused: readonly string[];
}

/** The list of parts that lies open, and what was said of it. Nothing of it is kept until it is laid on the shelf. */
export const useList = create<{ readonly list?: OpenList }>()(() => ({}));

export function openList(file: string, text: string): void {
  useDeskOpen.setState({ open: false });
  useList.setState({ list: { file, text, wishes: {}, goodRows: false, refused: [] } }, true);
  void look();
}

export const closeList = (): void => useList.setState({}, true);

/** Says something of the list, and reads it anew. */
export function say(change: Partial<Pick<OpenList, 'wishes' | 'same' | 'goodRows'>>): void {
  const { list } = useList.getState();
  if (list === undefined) return;
  useList.setState({ list: { ...list, ...change } });
  void look();
}

/** Says what one column is; an empty field leaves it out. */
export function sayColumn(name: string, field: string, unit: string): void {
  const wishes = useList.getState().list?.wishes;
  if (wishes !== undefined)
    say({ wishes: { ...wishes, columns: { ...wishes.columns, [name]: columnText(field, unit) } } });
}

const columnText = (field: string, unit: string): string =>
  field === '' || unit === '' ? field : `${field} in ${unit}`;

async function look(): Promise<void> {
  const { list } = useList.getState();
  if (list === undefined) return;
  const { text, file, wishes, same } = list;
  const { ownShelf } = useAnswers.getState();
  const view = await theWorkers().quick.partsList({
    text,
    file,
    wishes,
    memory: await columnsKept(),
    ownShelf,
    same,
  });
  const now = useList.getState().list;
  // Something else has been said of it meanwhile: that answer is on its way.
  if (now === undefined || now.text !== text || now.wishes !== wishes || now.same !== same) return;
  useList.setState({ list: { ...now, view } });
}

/** Lays what reads onto the user's shelf, and remembers the columns. */
export async function keepList(): Promise<void> {
  const { list } = useList.getState();
  const ready = list?.view?.ready;
  if (list === undefined || ready === undefined) return;
  const refused = await takeShelf(ready.shelf);
  if (refused.length > 0) {
    useList.setState({ list: { ...list, refused } });
    return;
  }
  await writeStore('columns', ready.memory).catch(() => undefined);
  tell('imported', `On your shelf now: ${list.view?.taken} from ${list.file}.`);
  closeList();
}

async function columnsKept(): Promise<ColumnsFile | undefined> {
  const raw = await readStore('columns').catch(() => undefined);
  return isColumns(raw) ? raw : undefined;
}

const isColumns = (raw: unknown): raw is ColumnsFile =>
  typeof raw === 'object' && raw !== null && 'lists' in raw && Array.isArray(raw.lists);

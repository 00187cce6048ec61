import { create } from 'zustand';

/** Something the page has to say of itself, not of an aircraft. */
export interface Notice {
  readonly id: string;
  readonly says: string;
  readonly more?: readonly string[];
}

export const useNotices = create<{ readonly notices: readonly Notice[] }>()(() => ({ notices: [] }));

/** Says it once: the same id replaces what was said before. */
export const tell = (id: string, says: string, more: readonly string[] = []): void =>
  useNotices.setState(({ notices }) => ({
    notices: [...notices.filter((each) => each.id !== id), { id, says, more }],
  }));

export const hush = (id: string): void => {
  const { notices } = useNotices.getState();
  if (notices.some((each) => each.id === id))
    useNotices.setState({ notices: notices.filter((each) => each.id !== id) });
};

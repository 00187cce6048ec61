import { create } from 'zustand';

/** Whether the desk's dialog is open: the command search opens it too. */
export const useDeskOpen = create<{ readonly open: boolean }>()(() => ({ open: false }));

import { expose } from 'comlink';
import { openDesk } from './openDesk.ts';
import type { Desk } from './protocol.ts';

let desk: Desk | undefined;

/** Opened at the first call, so that a fault in a file reaches the page as that call's error. */
function opened(): Desk {
  desk ??= openDesk();
  return desk;
}

const door: Desk = {
  open: async () => await opened().open(),
  assess: async (build) => await opened().assess(build),
};
expose(door);

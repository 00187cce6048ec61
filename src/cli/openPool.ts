import type { Machine } from './io.ts';

/** Workers beside the program file. The pool is loaded only when a search asks for it: no other verb waits for it. */
export const openPool: Machine['openPool'] = async (workers, start) => {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: new URL('./searchWorker.mjs', import.meta.url).href,
    minThreads: workers,
    maxThreads: workers,
    workerData: start,
  });
  return { ask: (job) => pool.run(job), close: () => pool.destroy() };
};

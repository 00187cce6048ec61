/** As long as a test of the page waits for anything [ms]: a machine may be many times slower, and a pass never takes it. */
export const PATIENCE = 90_000;

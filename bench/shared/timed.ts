/** Of one process [ms]: on a machine that others use the processor's time is the fair one, and the least the fairest. */
interface Timed {
  readonly clock: number;
  readonly processor: number;
  readonly least: number;
}

/** Medians of many runs after one that is not counted; `each` where a run is of several. */
function timed(times: number, work: () => void, each: number): Timed {
  work();
  const clock: number[] = [];
  const processor: number[] = [];
  for (let i = 0; i < times; i++) {
    const [start, used] = [performance.now(), process.cpuUsage()];
    work();
    const { user, system } = process.cpuUsage(used);
    clock.push((performance.now() - start) / each);
    processor.push((user + system) / 1000 / each);
  }
  const middle = (list: number[]) => list.sort((a, b) => a - b)[times >> 1] ?? Number.NaN;
  return { clock: middle(clock), processor: middle(processor), least: clock[0] ?? Number.NaN };
}

/** One line of a benchmark: what, how long, what is aimed at. */
export function row(what: string, times: number, aim: string, work: () => void, each = 1): Timed {
  const found = timed(times, work, each);
  const ms = (value: number) => `${value.toFixed(2)} ms`.padStart(11);
  console.log(
    `${what.padEnd(46)}${ms(found.clock)}   processor${ms(found.processor)}   least${ms(found.least)}   ${aim}`,
  );
  return found;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** [us] */
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string };
}

/** Slices of a task in which script runs. */
const SCRIPT = new Set([
  'EvaluateScript',
  'FunctionCall',
  'RunMicrotasks',
  'EventDispatch',
  'FireAnimationFrame',
  'TimerFire',
]);

/** Script in every task of the pages' main threads [ms], from a trace of Chromium's. */
export function scriptOfTasks({ traceEvents }: { readonly traceEvents: readonly TraceEvent[] }): number[] {
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const whole = traceEvents.filter(({ ph, pid, tid }) => ph === 'X' && main.has(`${pid} ${tid}`));
  const scripts = whole.filter(({ name }) => SCRIPT.has(name)).toSorted((a, b) => a.ts - b.ts);
  return whole
    .filter(({ name }) => name === 'RunTask' || name === 'ThreadControllerImpl::RunTask')
    .map((task) => {
      const end = task.ts + (task.dur ?? 0);
      let [sum, until] = [0, task.ts];
      for (const { ts, dur = 0, pid } of scripts) {
        if (pid !== task.pid || ts < task.ts || ts >= end || ts + dur <= until) continue;
        // Slices lie inside one another: only what reaches beyond the last counts.
        sum += ts + dur - Math.max(ts, until);
        until = ts + dur;
      }
      return sum / 1000;
    });
}

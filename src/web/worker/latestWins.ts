/**
 * Runs one request at a time and, of those that arrive for the same key meanwhile, only the last:
 * a slider dragged across fifty places asks for the place it ends at. Keys wait their turn, and one
 * asked for with `first` goes to the head.
 */
export function latestWins<Request, Answer>(
  run: (request: Request) => Promise<Answer>,
  deliver: (key: string, answer: PromiseSettledResult<Answer>, stillWaiting: boolean) => void,
): (key: string, request: Request, place?: 'first' | 'last') => void {
  let waiting: { readonly key: string; readonly request: Request }[] = [];
  let busy = false;

  async function work(): Promise<void> {
    busy = true;
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const { key, request } = next;
      const [answer] = await Promise.allSettled([run(request)]);
      deliver(
        key,
        answer,
        waiting.some((other) => other.key === key),
      );
    }
    busy = false;
  }

  return (key, request, place = 'last') => {
    const others = waiting.filter((other) => other.key !== key);
    waiting = place === 'first' ? [{ key, request }, ...others] : [...others, { key, request }];
    if (!busy) void work();
  };
}

/**
 * Asks one question at a time: of those that come while one is under way only the newest is asked, once that has its answer. So whoever
 * types asks as often as answers come, not at every key, and nothing has to wait for a clock. The questions in between get the answer
 * of the newest; who asks has to throw it away.
 */
export function oneAtATime<Answer>(read: (of: string) => Promise<Answer>): (of: string) => Promise<Answer> {
  let underWay = 0;
  let newest = '';
  let last: Promise<unknown> = Promise.resolve();
  let next: Promise<Answer> | null = null;
  async function ask(of: string): Promise<Answer> {
    underWay += 1;
    try {
      return await read(of);
    } finally {
      underWay -= 1;
    }
  }
  return (of) => {
    newest = of;
    if (next !== null) return next;
    if (underWay === 0) {
      const answer = ask(of);
      last = answer.catch(ignore);
      return answer;
    }
    const answer = last.then(() => {
      next = null;
      return ask(newest);
    });
    next = answer;
    last = answer.catch(ignore);
    return answer;
  };
}

const ignore = (): void => undefined;

import { describe, expect, it } from 'vitest';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { MinutesDue } from '../../../../../backend/src/connections/history-store/influx/minutes-due';

const hourMs = 3_600_000;
const startMs = Date.UTC(2025, 5, 1);

/** Notes for which hours minutes were made and marks taken away. */
function server(failsFor: readonly number[] = []) {
  const made: number[] = [];
  const unmarked: number[] = [];
  return {
    made,
    unmarked,
    write: () => Promise.resolve({ leftOut: 0, refused: null }),
    query: ([statement = '']: readonly string[]) => {
      const hour = Number(/time >?= (\d+)ms/.exec(statement)?.[1]);
      if (statement.includes(' INTO ')) {
        if (failsFor.includes(hour)) return Promise.reject(new CodedError('HISTORY_MAINTAIN_FAILED', 'no room'));
        made.push(hour);
      } else if (statement.startsWith('DELETE')) unmarked.push(hour);
      return Promise.resolve([[]]);
    },
  };
}

describe('the hours whose minutes are to be made', () => {
  it('waits with an hour whose rows are on their way, so that its minutes lack none of them', async () => {
    const asked = server();
    const due = await MinutesDue.load(asked);
    await due.whileWriting(new Set([startMs, startMs + hourMs]), async () => {
      await due.whileWriting(new Set([startMs]), () => due.settle(startMs + 9 * hourMs));
      await due.settle(startMs + 9 * hourMs);
      expect(asked.made).toEqual([]);
    });
    expect([...due.hours]).toEqual([startMs, startMs + hourMs]);
    await due.settle(startMs + 9 * hourMs);
    expect(asked.made).toEqual([startMs, startMs + hourMs]);
    expect(asked.unmarked).toEqual(asked.made);
    expect(due.hours.size).toBe(0);
  });

  it('waits no longer for rows that could not be written', async () => {
    const asked = server();
    const due = await MinutesDue.load(asked);
    const write = due.whileWriting(new Set([startMs]), () => Promise.reject(new Error('cut off')));
    await expect(write).rejects.toThrow('cut off');
    await due.settle(startMs + 9 * hourMs);
    expect(asked.made).toEqual([startMs]);
  });

  it('makes those of every other hour where one fails, which stays due, and tells its fault', async () => {
    const asked = server([startMs + hourMs]);
    const due = await MinutesDue.load(asked);
    const hours = [0, 1, 2].map((hour) => startMs + hour * hourMs);
    await due.whileWriting(new Set(hours), () => Promise.resolve());
    await expect(due.settle(startMs + 9 * hourMs)).rejects.toMatchObject({ code: 'HISTORY_MAINTAIN_FAILED' });
    expect(asked.made).toEqual([startMs, startMs + 2 * hourMs]);
    expect([...due.hours]).toEqual([startMs + hourMs]);
  });
});

import { describe, expect, it } from 'vitest';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { WriteSender } from '../../../../../backend/src/connections/history-store/write-sender';
import { pressures, startMs } from '../../../../contract/history-samples';

const rows = (count: number) => pressures(startMs, count, (index) => index);
const codes = { againAfter: ['DIED'], hopeless: ['NEVER'] };

describe('the sender of history rows', () => {
  it('hands batches on one at a time, in order, and counts what waits', async () => {
    const sent: number[] = [];
    let running = 0;
    const sender = new WriteSender({
      ...codes,
      async send(batch) {
        expect(++running).toBe(1);
        await Promise.resolve();
        running--;
        sent.push(batch.count);
      },
    });
    const writes = [1, 2, 3].map((count) => sender.write(rows(count)));
    expect(sender.rowsQueued).toBe(6);
    await Promise.all(writes);
    expect([sent, sender.rowsQueued, sender.well]).toEqual([[1, 2, 3], 0, true]);
  });

  it('sends a row that is written in the very turn in which the one before is confirmed', async () => {
    const sender = new WriteSender({ ...codes, send: () => Promise.resolve() });
    await sender.write(rows(1)).then(() => sender.write(rows(1)));
    expect(sender.rowsQueued).toBe(0);
  });

  it('keeps a refused batch and commits it with the next call', async () => {
    let refuse = true;
    const sender = new WriteSender({
      ...codes,
      send: () => (refuse ? Promise.reject(new CodedError('DISK', 'full')) : Promise.resolve()),
    });
    const write = sender.write(rows(2));
    await sender.flush();
    expect([sender.well, sender.rowsQueued, sender.troubles]).toEqual([false, 2, ['DISK: full']]);
    refuse = false;
    await sender.flush();
    await write;
    expect([sender.well, sender.rowsQueued, sender.troubles]).toEqual([true, 0, []]);
  });

  it.each([
    ['three deaths of the receiver', 'DIED', 3],
    ['one fault that nothing mends', 'NEVER', 1],
  ])('gives a batch up after %s, and counts its rows', async (_what, code, tries) => {
    let sends = 0;
    const sender = new WriteSender({ ...codes, send: () => Promise.reject(new CodedError(code, `no ${++sends}`)) });
    await expect(sender.write(rows(2))).rejects.toMatchObject({ code });
    expect([sends, sender.troubles]).toEqual([tries, ['2 rows lost since the start']]);
  });

  it('gives up what waits when it is closed, aloud', async () => {
    const sender = new WriteSender({ ...codes, send: () => Promise.reject(new CodedError('DISK', 'full')) });
    const write = expect(sender.write(rows(1))).rejects.toMatchObject({ code: 'HISTORY_CLOSED' });
    await sender.close();
    await write;
    await expect(sender.write(rows(1))).rejects.toMatchObject({ code: 'HISTORY_CLOSED' });
  });
});

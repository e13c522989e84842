import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SiteReader } from '../../../../../backend/src/connections/site-files/site-reader';

const worker = (source: string): URL =>
  new URL(
    `data:text/javascript,${encodeURIComponent(`import { parentPort, workerData } from 'node:worker_threads';${source}`)}`,
  );
const echo = 'parentPort.postMessage({ accepted: true, summary: workerData.text ?? null, faults: [], warnings: [] });';
const endless = 'for (;;);';
const greedy = 'const kept = []; for (;;) kept.push(new Array(10_000).fill({}));';
const broken = "throw new Error('a fault of the worker');";

const limits = { timeMs: 25_000, memoryMb: 1536 };
const reader = (source: string, more: Partial<typeof limits> = {}): SiteReader => {
  const both = { ...limits, ...more };
  return new SiteReader(worker(source), { check: both, read: both, try: both });
};

describe('a site file that is read in a worker', () => {
  it('is judged by what the worker says', async () => {
    expect(await reader(echo).check('site: {}')).toMatchObject({ ok: true, value: { summary: 'site: {}' } });
  });

  it('is told to need too much memory', async () => {
    const said = await reader(greedy, { memoryMb: 24 }).check('');
    expect(said.ok && said.value.faults.map(({ message }) => message)).toEqual([
      expect.stringMatching(/more than 24 MB and was ended; divide the file/),
    ]);
    expect(await reader(greedy, { memoryMb: 24 }).read('a.yaml', 'known')).toMatchObject({
      contentHash: null,
      result: { ok: false },
    });
  });

  it('brings the fault of the worker itself to whoever asked', async () => {
    await expect(reader(broken).check('')).rejects.toThrow('a fault of the worker');
    await expect(reader(broken).read('a.yaml', 'known')).rejects.toThrow('a fault of the worker');
  });

  it('is ended with the program', async () => {
    const one = reader(endless);
    const asked = one.read('a.yaml', 'known');
    await one.stop();
    expect(await asked).toMatchObject({ contentHash: null });
  });

  describe('and takes without end', () => {
    beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
    afterEach(() => void vi.useRealTimers());

    it('is ended at the limit, with what to do, and the next is judged', async () => {
      const one = reader(endless);
      const asked = one.check('');
      const next = one.check('again');
      await vi.advanceTimersByTimeAsync(limits.timeMs);
      const said = await asked;
      expect(said.ok && said.value.faults.map(({ message }) => message)).toEqual([
        expect.stringMatching(/longer than 25 s and was ended; divide the file/),
      ]);
      await vi.advanceTimersByTimeAsync(limits.timeMs);
      expect((await next).ok).toBe(true);
    });

    it('lets only the newest wait', async () => {
      const one = reader(endless);
      const asked = [one.check('a'), one.check('b'), one.check('c')];
      expect(await asked[1]).toMatchObject({ ok: false, fault: { code: 'SITE_CHECK_OVERTAKEN' } });
      await one.stop();
      await asked[0];
      await one.stop();
    });
  });
});

import { describe, expect, it } from 'vitest';
import { fail, ok } from '@ebbline/shared/errors/result';
import type { SiteReading } from '../../../../backend/src/connections/site-files/read-site-file';
import type { CompiledSite } from '../../../../backend/src/evaluation/site/compiled-site';
import { SiteReload } from '../../../../backend/src/main/site-reload';

/** All that a reload itself looks at. */
const site = (more: object = {}): CompiledSite =>
  ({ id: 'small', demo: false, maximumPayloadBytes: 1000, units: [], ...more }) as unknown as CompiledSite;

const sound = (contentHash: string, more: object = {}): SiteReading => ({
  contentHash,
  result: ok({ site: site(more), warnings: [] }),
});
const faulty = (contentHash: string | null): SiteReading => ({
  contentHash,
  result: fail([{ line: 7, key: 'units.m1.hall', message: 'expected a hall' }]),
});

function bench() {
  const disk = { reading: sound('a'), reads: 0, fault: null as Error | null, held: Promise.resolve() };
  const replaced: CompiledSite[] = [];
  const said: string[] = [];
  const state = { nowMs: 1000, fault: null as Error | null };
  const reload = new SiteReload(
    { site: site(), contentHash: 'a', warnings: [] },
    {
      file: 'site.yaml',
      read: async (knownHash) => {
        disk.reads += 1;
        const { reading, fault } = disk;
        await disk.held;
        if (fault !== null) throw fault;
        return reading.contentHash === knownHash ? 'unchanged' : reading;
      },
      replace: (next) => {
        if (state.fault !== null) return Promise.reject(state.fault);
        replaced.push(next);
        return Promise.resolve();
      },
      wallMs: () => state.nowMs,
      say: (line) => said.push(line),
    },
  );
  return { reload, disk, replaced, said, state };
}

describe('a new content of the site file', () => {
  it('is put in force where it is sound, once', async () => {
    const { reload, disk, replaced, state } = bench();
    disk.reading = sound('b');
    state.nowMs = 2000;
    await reload.reload();
    const now = await reload.reload();
    expect(replaced).toHaveLength(1);
    expect(now).toMatchObject({ contentHash: 'b', loadedAt: '1970-01-01T00:00:02.000Z', refused: null });
  });

  it('changes nothing where it equals the one in force', async () => {
    const { reload, replaced, said } = bench();
    await reload.reload();
    expect([replaced, said]).toEqual([[], []]);
  });

  it('is refused whole with line and key, told once, and dated from the first refusal', async () => {
    const { reload, disk, replaced, said, state } = bench();
    disk.reading = faulty('b');
    state.nowMs = 2000;
    await reload.reload();
    const lines = said.length;
    state.nowMs = 3000;
    const now = await reload.reload();
    expect(replaced).toEqual([]);
    expect(said).toHaveLength(lines);
    expect(now.contentHash).toBe('a');
    expect(now.refused).toEqual({
      since: '1970-01-01T00:00:02.000Z',
      faults: [{ line: 7, key: 'units.m1.hall', message: 'expected a hall' }],
    });
    expect(reload.reasons().map(({ code }) => code)).toEqual(['SITE_FILE_REFUSED']);
  });

  it('takes the refusal away when the content in force comes back', async () => {
    const { reload, disk } = bench();
    disk.reading = faulty('b');
    await reload.reload();
    disk.reading = sound('a');
    expect((await reload.reload()).refused).toBeNull();
    expect(reload.reasons()).toEqual([]);
  });

  it.each([
    ['site.id', { id: 'other' }],
    ['site.demo', { demo: true }],
    ['intake.maximumPayloadBytes', { maximumPayloadBytes: 1001 }],
  ])('is refused where it changes %s', async (key, more) => {
    const { reload, disk, replaced } = bench();
    disk.reading = sound('b', more);
    const { refused } = await reload.reload();
    expect(refused?.faults.map((fault) => fault.key)).toEqual([key]);
    expect(replaced).toEqual([]);
  });

  it('may ask for less room than was taken', async () => {
    const { reload, disk } = bench();
    disk.reading = sound('b', { maximumPayloadBytes: 999 });
    expect((await reload.reload()).refused).toBeNull();
  });

  it('is tried again where it could not be put in force', async () => {
    const { reload, disk, state, replaced } = bench();
    disk.reading = sound('b');
    state.fault = new Error('disk full');
    const { refused } = await reload.reload();
    expect(refused?.faults[0]?.message).toBe('could not be put in force now: disk full');
    expect(reload.reasons()[0]?.message).toMatch(/disk full.*Read it again, in Setup or by POST/);
    state.fault = null;
    expect((await reload.reload()).contentHash).toBe('b');
    expect(replaced).toHaveLength(1);
  });

  it('is read once more for all who asked while it was being read, as it stands then', async () => {
    const { reload, disk, replaced } = bench();
    let go = (): void => undefined;
    disk.held = new Promise((resolve) => (go = resolve));
    disk.reading = sound('b');
    const first = reload.reload();
    const more = [reload.reload(), reload.reload(), reload.reload()];
    disk.reading = sound('c');
    go();
    expect((await first).contentHash).toBe('b');
    for (const one of more) expect((await one).contentHash).toBe('c');
    expect([disk.reads, replaced.length]).toEqual([2, 2]);
    await reload.reload();
    expect(disk.reads).toBe(3);
  });

  it('is refused where reading it fails, and tried again', async () => {
    const { reload, disk, replaced } = bench();
    disk.reading = sound('b');
    disk.fault = new Error('no thread to be had');
    const { refused, contentHash } = await reload.reload();
    expect(contentHash).toBe('a');
    expect(refused?.faults[0]?.message).toBe('could not be read now: no thread to be had');
    disk.fault = null;
    expect((await reload.reload()).contentHash).toBe('b');
    expect(replaced).toHaveLength(1);
  });
});

import { mkdirSync, renameSync, rmSync, watch, writeFileSync, type FSWatcher } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SiteWatch } from '../../../../../backend/src/connections/site-files/site-watch';
import { temporaryFolder, type TemporaryFolder } from '../../../../helpers/temporary-folder';

const quietMs = 200;
const lookMs = 5000;
/** A turn of the event loop; timers are driven by the test. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('a site file that is watched', () => {
  let folder: TemporaryFolder;
  let file: string;
  let told: number;
  let site: SiteWatch;
  let own: FSWatcher;
  let heard: (string | null)[];

  beforeEach(async () => {
    folder = await temporaryFolder();
    file = join(folder.path, 'site.yaml');
    writeFileSync(file, 'one');
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
    told = 0;
    site = new SiteWatch(file, () => (told += 1));
    await site.start();
    heard = [];
    own = watch(folder.path, { persistent: false }, (_, name) => heard.push(name));
  });
  afterEach(async () => {
    site.stop();
    own.close();
    vi.useRealTimers();
    await folder.stop();
  });

  /** The system has told of it to whoever watches, in the order in which they began. */
  async function afterHearing(name: string, change: () => void): Promise<void> {
    heard.length = 0;
    change();
    while (!heard.includes(name)) await turn();
    await turn();
  }
  const pass = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms);

  it('is told of once it is quiet, not while it is still written', async () => {
    for (const text of ['tw', 'two', 'two!']) {
      await afterHearing('site.yaml', () => writeFileSync(file, text));
      await pass(quietMs - 1);
      expect(told).toBe(0);
    }
    await pass(1);
    expect(told).toBe(1);
  });

  it('is told of where another file takes its place, as editors do, again and again', async () => {
    for (const round of [1, 2]) {
      const fresh = `${file}~`;
      writeFileSync(fresh, `round ${round}`);
      await afterHearing('site.yaml', () => renameSync(fresh, file));
      await pass(quietMs);
      expect(told).toBe(round);
    }
  });

  it.each([
    ['racks.yaml', 1],
    ['racks.yml', 1],
    ['..data', 1],
    ['notes.txt', 0],
    ['site.yaml.swp', 0],
  ])('hears of %s beside it: %i', async (name, times) => {
    await afterHearing(name, () => writeFileSync(join(folder.path, name), 'x'));
    await pass(quietMs);
    expect(told).toBe(times);
  });

  it('is told of no more once the watch has ended', async () => {
    await afterHearing('site.yaml', () => writeFileSync(file, 'two'));
    site.stop();
    await afterHearing('site.yaml', () => writeFileSync(file, 'three'));
    await pass(3 * lookMs);
    expect(told).toBe(0);
  });
});

describe('a site file in a folder that tells of no changes', () => {
  it('is looked at every five seconds, and told of where it is another one', async () => {
    const folder = await temporaryFolder();
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
    try {
      const away = join(folder.path, 'mounted');
      const file = join(away, 'site.yaml');
      let told = 0;
      const site = new SiteWatch(file, () => (told += 1));
      await site.start();
      mkdirSync(away);
      writeFileSync(file, 'one');
      await vi.advanceTimersByTimeAsync(lookMs);
      while (vi.getTimerCount() < 2) await turn();
      await vi.advanceTimersByTimeAsync(quietMs);
      expect(told).toBe(1);
      site.stop();
    } finally {
      vi.useRealTimers();
      rmSync(folder.path, { recursive: true });
    }
  });
});

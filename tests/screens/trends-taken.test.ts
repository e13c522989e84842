import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { drawn } from './fixtures/fake-chart';
import type { Page } from './fixtures/mount-page';
import { showTrends } from './fixtures/trends-page';

vi.mock('uplot', async () => ({ default: (await import('./fixtures/fake-chart')).FakeChart }));
const taken = vi.hoisted(() => ({ notes: [] as readonly string[], files: [] as { name: string; blob: Blob }[] }));
vi.mock('../../frontend/src/charts/trend-picture', () => ({
  trendPicture({ notes }: { readonly notes: readonly string[] }) {
    taken.notes = notes;
    return Promise.resolve(null);
  },
}));
vi.mock('../../frontend/src/components/save-file', () => ({
  saveFile: (blob: Blob, name: string) => taken.files.push({ name, blob }),
}));

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
  drawn.length = 0;
  [taken.notes, taken.files] = [[], []];
});
const show = async (...how: Parameters<typeof showTrends>): Promise<Page> => (opened = await showTrends(...how));
const buttons = ({ page }: Page) => page.findAll<HTMLButtonElement>('.trends-export button');
const shut = (shown: Page): boolean[] => buttons(shown).map(({ element }) => element.disabled);
const said = ({ page }: Page): string => page.get('.trends-export [role=status]').text();
async function press(shown: Page, text: string): Promise<void> {
  await buttons(shown)
    .find((one) => one.text() === text)
    ?.trigger('click');
  await vi.dynamicImportSettled();
  await flushPromises();
}
const settle = async (): Promise<void> => {
  await vi.advanceTimersByTimeAsync(200);
  await flushPromises();
};

describe('what is taken along from the Trends screen', () => {
  it('waits until the history of the period that is shown was read, and says so', async () => {
    const shown = await show('/trends?points=e7:heatRemoved');
    expect([shut(shown), said(shown)]).toEqual([[false, false], '']);
    await shown.router.push('/trends?points=e7:heatRemoved&last=86400');
    await flushPromises();
    expect([shut(shown), said(shown)]).toEqual([[true, true], 'This period is still being read…']);
    await settle();
    expect([shut(shown), said(shown)]).toEqual([[false, false], '']);
  });

  it('does not wait where what is shown is only read anew as time goes by', async () => {
    const shown = await show('/trends?points=e7:heatRemoved');
    const reads = (): number => shown.asked.filter(({ path }) => path.startsWith('/api/history?')).length;
    const before = reads();
    vi.stubGlobal('fetch', (path: string) => {
      (shown.asked as { path: string; body: unknown }[]).push({ path, body: undefined });
      return new Promise(() => undefined);
    });
    await vi.advanceTimersByTimeAsync(18_000);
    expect(reads()).toBeGreaterThan(before);
    expect(shut(shown)).toEqual([false, false]);
  });

  it('says of each line that its history could not be read, beside it or of its own', async () => {
    const address = '/trends?points=e7:heatRemoved,e7:chipPower&earlier=86400';
    const shown = await show(address, { '/api/history': { columns: 7 } });
    await press(shown, 'picture (PNG)');
    const lines = ['E7 Heat removed', 'E7 Heat removed, 24 h earlier', 'E7 Chip power', 'E7 Chip power, 24 h earlier'];
    expect(taken.notes.map((note) => note.replaceAll('\u00a0', ' ').split(' could not be read: ')[0])).toEqual(lines);
    expect(taken.notes[0]).toContain('could not be read: The server answered in a form this screen does not know.');
    await press(shown, 'table (CSV)');
    const header = (await taken.files[0]?.blob.text())?.replaceAll('\u00a0', ' ') ?? '';
    for (const line of lines) expect(header).toContain(`"${line}, could not be read, kW, mean"`);
  });
});

import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { noon } from './fixtures/builders';
import { drawn } from './fixtures/fake-chart';
import type { Page } from './fixtures/mount-page';
import { historyAsked, showTrends } from './fixtures/trends-page';

vi.mock('uplot', async () => ({ default: (await import('./fixtures/fake-chart')).FakeChart }));
const pictured = vi.hoisted(() => ({
  notes: [] as readonly string[],
  spans: [] as readonly { readonly words: string }[],
  written: [] as readonly { readonly words: string }[],
  isLost: false,
}));
vi.mock('../../frontend/src/charts/trend-picture', () => ({
  trendPicture: ({ notes, spans, written }: typeof pictured) => {
    if (pictured.isLost) return Promise.reject(new TypeError('a part of the page did not come'));
    Object.assign(pictured, { notes, spans, written });
    return Promise.resolve(null);
  },
}));

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
  drawn.length = 0;
});
const show = async (...how: Parameters<typeof showTrends>): ReturnType<typeof showTrends> => {
  const shown = await showTrends(...how);
  opened = shown;
  return shown;
};

async function takePicture(page: Page['page']): Promise<void> {
  await page
    .findAll('.trends-export button')
    .find((one) => one.text() === 'picture (PNG)')
    ?.trigger('click');
  await vi.dynamicImportSettled();
  await flushPromises();
}

describe('what the Trends screen shows beside the lines', () => {
  it('shows alarms of the hall among those of its units, and names the hall', async () => {
    const hot = {
      alarm: 'east:AMB-1',
      unit: null,
      hall: 'east',
      entry: 'AMB-1',
      title: 'Barometers differ',
      priority: 3,
    };
    const more = { from: '2026-03-01T11:20:00.000Z', to: null, acknowledged: null, where: null, foldedUnder: null };
    const told = { from: noon, to: noon, searchableFrom: null, readTo: null, spans: [{ ...hot, ...more }] };
    const { page } = await show('/trends?points=e7:heatRemoved', { '/api/alarms/spans': told });
    expect(page.get('.alarm-span').text()).toContain('Barometers differ (East hall)');
    await takePicture(page);
    expect(pictured.spans[0]?.words).toContain('Barometers differ (East hall)');
  });

  it('says so where the picture can not be drawn, and can be asked again', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved');
    pictured.isLost = true;
    await takePicture(page);
    expect(page.get('.trends-export [role=status]').text()).toContain('could not be drawn');
    pictured.isLost = false;
    await takePicture(page);
    expect(page.get('.trends-export [role=status]').text()).toContain('This browser could not draw');
  });

  it('shows when which alarm stood, with priority in shape and word, the way into the journal, and what it cannot know', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved');
    const spans = page.findAll('.alarm-span');
    expect(spans.map((one) => one.classes().filter((name) => /^(priority|follows|goes-on)/.test(name)))).toEqual([
      ['priority-1'],
      ['priority-3', 'goes-on', 'follows'],
    ]);
    const [first, second] = spans.map((one) => one.text().replace(/\s+/g, ' '));
    expect(first).toContain('Priority 1, act now: Air is being drawn in; raised 2026-03-01 12:20:00, cleared');
    expect(first).toContain('after 10 min; not acknowledged');
    expect(second).toContain('still stands; acknowledged 2026-03-01 12:26:00; followed from e7:AIR-1');
    expect(page.get('[data-testid=alarms-over-time]').text()).toContain('The journal begins 2026-03-01 12:10:00');
    const way = new URL(spans[0]?.attributes('href') ?? '', 'http://test');
    expect([way.pathname, Object.fromEntries(way.searchParams)]).toEqual([
      '/alarms/journal',
      { alarm: 'e7:AIR-1', from: '2026-03-01T12:19:00', to: '2026-03-01T12:31:00' },
    ]);
  });

  it('lets the keyboard go from alarm to alarm with one stop of the tab key, and says each under them', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved');
    const stops = () => page.findAll('.alarm-span').map((one) => one.attributes('tabindex'));
    expect(stops()).toEqual(['0', '-1']);
    await page.get('.over-time-rows').trigger('keydown', { key: 'ArrowRight' });
    await flushPromises();
    expect(stops()).toEqual(['-1', '0']);
    await page.findAll('.alarm-span')[1]?.trigger('focus');
    expect(page.get('[data-testid=alarms-over-time] .over-time-said').text()).toContain(
      'Priority 3, look into it: Flow low',
    );
  });

  it('asks for neither alarms nor notes where they are not wanted', async () => {
    const { asked, page } = await show('/trends?points=e7:heatRemoved&alarms=no&notes=no');
    expect(page.findAll('.over-time')).toEqual([]);
    expect(asked.filter(({ path }) => /alarms\/spans|notes/.test(path))).toEqual([]);
  });

  it('says that none stood, and that they could not be read', async () => {
    const none = { from: noon, to: noon, searchableFrom: null, readTo: null, spans: [] };
    const calm = await show('/trends?points=e7:heatRemoved', { '/api/alarms/spans': none });
    const said = (page: Page['page']) => page.get('[data-testid=alarms-over-time] .over-time-said').text();
    expect(said(calm.page)).toBe('No alarm stood in this period.');
    calm.page.unmount();
    const broken = await show('/trends?points=e7:heatRemoved', { '/api/alarms/spans': { spans: 7 } });
    expect(said(broken.page)).toMatch(/^Alarms could not be read: /);
  });

  it('says nothing of a period from what was read of another, on the screen nor on a picture that is taken along', async () => {
    const { page, router } = await show('/trends?points=e7:heatRemoved');
    const said = (): string[] => page.findAll('.over-time-said').map((one) => one.text());
    const take = () => takePicture(page);
    expect(said()[0]).toContain('Alarms of this period: 1 of priority 1');
    await take();
    expect([pictured.spans.length, pictured.notes]).toEqual([2, []]);
    let answerLate = (): void => undefined;
    const late = new Promise<void>((done) => (answerLate = done));
    const answer = fetch;
    vi.stubGlobal('fetch', async (path: string) => {
      if (/alarms\/spans|notes/.test(path)) await late;
      return answer(path);
    });
    expect(pictured.written.map(({ words }) => words)).toEqual([
      '2026-03-01 12:40:00, E7, Ines: Hose of rack 4 changed',
    ]);
    await router.push('/trends?points=e7:heatRemoved&from=2026-02-01T00:00:00.000Z&to=2026-02-01T01:00:00.000Z');
    await flushPromises();
    await vi.advanceTimersByTimeAsync(200);
    await flushPromises();
    expect(said()).toEqual(['Reading the alarms of this period…', 'Reading the notes of this period…']);
    await take();
    expect([pictured.spans.length, pictured.notes]).toEqual([
      0,
      [
        'Alarms of this period had not been read when this was drawn.',
        'Notes of this period had not been read when this was drawn.',
      ],
    ]);
    expect(pictured.written).toEqual([]);
    answerLate();
    await vi.advanceTimersByTimeAsync(200);
    await flushPromises();
    expect(said()[0]).toContain('Alarms of this period: ');
  });

  it('marks notes that stand on the time axis, and shows the text of the one that is pressed', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved');
    const marks = page.findAll('.note-mark');
    expect(marks.map((one) => one.attributes('aria-label'))).toEqual([
      'Note: 2026-03-01 12:40:00, Ines: Hose of rack 4 changed',
    ]);
    await marks[0]?.trigger('click');
    expect(page.get('.notes-open').text()).toContain('Hose of rack 4 changed');
    expect(marks[0]?.attributes('aria-pressed')).toBe('true');
  });

  it('holds an earlier period and another unit beside each line, and keeps both in the address', async () => {
    const shown = await show('/trends?points=e7:heatRemoved');
    await shown.page.get('[name=earlier]').setValue('86400');
    await flushPromises();
    await shown.page.get('[name=beside]').setValue('e1');
    await vi.advanceTimersByTimeAsync(200);
    await flushPromises();
    expect(shown.router.currentRoute.value.query).toMatchObject({ earlier: '86400', beside: 'e1' });
    const rows = shown.page.findAll('.trends-key tbody tr').map((row) => row.get('th').text().replace(/\s+/g, ' '));
    expect(rows).toEqual(['aE7 · Heat removed', 'a′E7 · Heat removed, 24 h earlier', 'a″E1 · Heat removed, of E1']);
    const asked = historyAsked(shown).map((one) => `${one.get('unit') ?? ''} ${one.get('from') ?? ''}`);
    expect(asked).toContain('e1 2026-03-01T11:00:00.000Z');
    expect(asked).toContain('e7 2026-02-28T11:00:00.000Z');
    expect(shown.page.findAll('.line-mark')).toHaveLength(2);
  });

  it('draws the uncertainty of the past where it is asked for, and names the points of which it is not known', async () => {
    const off = await show('/trends?points=e7:heatRemoved,e7:chipPower');
    expect(off.asked.some(({ path }) => path.startsWith('/api/history/uncertainty'))).toBe(false);
    off.page.unmount();
    drawn.length = 0;
    const { page } = await show('/trends?points=e7:heatRemoved,e7:chipPower&uncertainty=yes');
    // The lines come first.
    await vi.advanceTimersByTimeAsync(200);
    await vi.dynamicImportSettled();
    await flushPromises();
    // 160 kW ± 3 kW.
    expect(
      drawn
        .at(-1)
        ?.data.slice(4, 6)
        .map((column) => column[0]),
    ).toEqual([163, 157]);
    expect(page.get('.lanes').text()).toContain('Not known of E7 Chip power in this period');
  });

  it('tells the capture of the period from its sums, over which period, and how old the newest part is', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved,e7:chipPower');
    const figure = page.get('[data-testid=heat-against-power]').text();
    expect(figure).toContain('100.0 % of it over the period');
    expect(figure).toContain('from 2026-03-01 12:00:00 to 2026-03-01 13:00:00');
    expect(figure).toContain('the newest ended 59');
  });
});

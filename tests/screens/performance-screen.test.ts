import type { AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aReport } from './fixtures/alarm-management';
import { anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function show(address: string, report: unknown = aReport()): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, { '/api/alarms/performance': report });
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const askedFor = (page: Page): Record<string, string> => {
  const last = page.asked.filter(({ path }) => path.startsWith('/api/alarms/performance')).at(-1)?.path ?? '';
  return Object.fromEntries(new URL(last, 'http://test').searchParams);
};
const figure = (verdict: AlarmPerformance['figures'][number]['verdict'], value: number | null) => ({
  id: verdict,
  title: `A figure that is ${verdict}`,
  value,
  unit: '%',
  acceptable: verdict === 'noTarget' ? null : 1,
  limit: verdict === 'noTarget' ? null : 5,
  verdict,
  source: 'ANSI/ISA-18.2-2016',
});
const named = { alarm: 'e7:MARGIN-1', entry: 'MARGIN-1', title: 'Vacuum margin small', unit: 'e7' };

describe('the Performance screen', () => {
  it('says of every figure how it stands to its target, in words and by a shape', async () => {
    const figures = [
      figure('within', 0.4),
      figure('between', 3),
      figure('beyond', 9),
      figure('noTarget', 2),
      figure('nothing', null),
    ];
    const { page } = await show('/performance', aReport({ figures }));
    const row = (id: string) => plain(page.get(`[data-testid=figure-${id}]`).text());
    for (const part of ['0.40 %', 'within what is acceptable', '1 acceptable, at most 5 %'])
      expect(row('within')).toContain(part);
    expect(row('between')).toContain('more than acceptable, within the limit');
    expect(row('beyond')).toContain('9 %beyond the limit');
    expect(row('noTarget')).toContain('no target');
    expect(row('nothing')).toContain('no valuenothing to reckon it from');
    const shapes = figures.map(({ id }) => page.get(`[data-testid=figure-${id}] .verdict-mark`).html());
    // The two without a verdict share a dash.
    expect(new Set(shapes).size).toBe(4);
  });

  it('asks for thirty days of the whole site, or for what its address names', async () => {
    expect(askedFor(await show('/performance'))).toEqual({
      from: '2026-01-30T12:00:00.000Z',
      to: '2026-03-01T12:00:00.000Z',
    });
    opened?.page.unmount();
    expect(askedFor(await show('/performance?hall=east&from=2026-02-01T00:00:00Z&to=2026-02-02T00:00:00Z'))).toEqual({
      hall: 'east',
      from: '2026-02-01T00:00:00.000Z',
      to: '2026-02-02T00:00:00.000Z',
    });
  });

  it('puts another hall and another period into the address', async () => {
    const { page, router } = await show('/performance');
    await page.get('[name=hall]').setValue('west');
    await flushPromises();
    const week = page.findAll('button').find((one) => plain(one.text()) === '7 d');
    await week?.trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ hall: 'west', days: '7' });
  });

  it('warns of a period that is too short for a statement', async () => {
    const { page } = await show('/performance?days=7', aReport({ days: 7, enough: false }));
    expect(page.get('[data-testid=too-short]').text()).toContain('Too short for a statement');
    page.unmount();
    const long = await show('/performance');
    expect(long.page.find('[data-testid=too-short]').exists()).toBe(false);
  });

  it('leads from a proposal to the trial with its values, unit and period', async () => {
    const chattering = [
      {
        ...named,
        annunciations: 40,
        times: 6,
        proposal: { set: { deadband: 1500 }, unit_of_measure: 'Pa', why: 'The value swings by 1.4 kPa.' },
      },
      { ...named, alarm: 'e7:AIR-1', entry: 'AIR-1', annunciations: 9, times: 2, proposal: null },
    ];
    const { page } = await show('/performance', aReport({ chattering }));
    const row = page.get('[data-testid="chattering-e7:MARGIN-1"]');
    expect(plain(row.text())).toContain('6 times three or more within a minute, 40 told in all');
    expect(plain(row.text())).toContain('deadband 1.5 kPa: The value swings by 1.4 kPa.');
    const link = new URL(row.get('a.as-button').attributes('href') ?? '', 'http://test');
    expect(link.pathname).toBe('/limits/MARGIN-1');
    expect(Object.fromEntries(link.searchParams)).toEqual({
      unit: 'e7',
      propose: 'deadband:1500',
      from: '2026-01-30T12:00:00.000Z',
      to: '2026-03-01T12:00:00.000Z',
    });
    expect(page.get('[data-testid="chattering-e7:AIR-1"]').find('a.as-button').exists()).toBe(false);
  });

  it('says how the priorities share what was told, and what is aimed at', async () => {
    const { page } = await show('/performance');
    for (const part of ['act soon', '17 %', '15 told; aimed at 15 %'])
      expect(plain(page.get('[data-testid=mix-2]').text())).toContain(part);
    // The outline is 15 % of 240 px, the filling 16.7 % of it.
    expect(Number(page.get('[data-testid=mix-2] .mix-target').attributes('width'))).toBeCloseTo(36, 6);
    expect(Number(page.get('[data-testid=mix-2] .mix-share').attributes('width'))).toBeCloseTo(40.08, 6);
  });

  it('says a flood as one event with what came first in it', async () => {
    const floods = [
      {
        from: '2026-02-20T08:00:00.000Z',
        to: '2026-02-20T08:25:00.000Z',
        annunciations: 23,
        mostInTenMinutes: 15,
        firstOuts: [{ ...named, entry: 'FAC-1', title: 'Facility water flow lost' }],
      },
    ];
    const { page } = await show('/performance', aReport({ floods }));
    const text = plain(page.get('.floods').text());
    expect(text).toContain('for 25 min: 23 told, 15 within ten minutes at most.');
    expect(text).toContain('E7 Facility water flow lost');
  });

  it('draws a line a day with a stroke for each hour, and says it in numbers too', async () => {
    const perHour = [
      { from: '2026-02-20T08:00:00.000Z', annunciations: 4 },
      { from: '2026-02-20T09:00:00.000Z', annunciations: 35 },
    ];
    const { page } = await show('/performance', aReport({ perHour }));
    expect(page.findAll('.hours-label')).toHaveLength(31);
    expect(page.findAll('.hours-stroke')).toHaveLength(1);
    expect(page.findAll('.hours-over')).toHaveLength(1);
    expect(plain(page.get('.hours table tbody').text())).toBe('2026-02-20 39 2 35'.replaceAll(' ', ''));
  });

  it('says how fast alarms were seen and gone, by priority', async () => {
    const spread = [{ priority: 1 as const, count: 5, medianSeconds: 40, p90Seconds: 95 }];
    const { page } = await show('/performance', aReport({ acknowledging: spread }));
    const rows = page.findAll('.response-times tbody tr').map((row) => plain(row.text()));
    expect(rows[0]).toContain('40 s half of them, 95 s nine of ten of 5');
    expect(rows[1]).toContain('nonenone');
  });

  it('can be taken along for the period and place that it shows', async () => {
    const { page } = await show('/performance?hall=east&from=2026-02-01T00:00:00Z&to=2026-02-02T00:00:00Z');
    const links = page.findAll('.export-links a').map((one) => new URL(one.attributes('href') ?? '', 'http://test'));
    expect(links.map(({ pathname }) => pathname)).toEqual(new Array(2).fill('/api/alarms/performance/export'));
    expect(links.map(({ searchParams }) => Object.fromEntries(searchParams))).toEqual(
      ['csv', 'json'].map((format) => ({
        from: '2026-02-01T00:00:00.000Z',
        to: '2026-02-02T00:00:00.000Z',
        hall: 'east',
        format,
      })),
    );
  });

  it('says so where nothing was told, and where the server does not answer', async () => {
    const { page } = await show('/performance', aReport({ annunciations: 0 }));
    expect(page.text()).toContain('Nothing was told in this time.');
    page.unmount();
    const broken = await show('/performance', { not: 'a report' });
    expect(broken.page.get('[role=alert]').text()).toContain('can’t be read');
  });
});

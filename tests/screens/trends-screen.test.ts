import type { TrendsFrame } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import { flushPromises } from '@vue/test-utils';
import type uPlot from 'uplot';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aHallFrame, aReading, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

// The chart library wants a canvas, which these tests have not. What it is given to draw is held.
const drawn: { options: uPlot.Options; data: uPlot.AlignedData }[] = [];
vi.mock('uplot', () => ({
  default: class {
    readonly height = 1;
    constructor(options: uPlot.Options, data: uPlot.AlignedData) {
      drawn.push({ options, data });
    }
    setData(data: uPlot.AlignedData): void {
      const last = drawn.at(-1);
      if (last !== undefined) last.data = data;
    }
    setSize(): void {
      return;
    }
    redraw(): void {
      return;
    }
    destroy(): void {
      return;
    }
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

const points = ['heatRemoved', 'chipPower', 'capture', 'vacuumMargin', 'vacuumMarginWorst', 'lowerWallMargin'];
const noChipPower = aReading('chipPower', null, 'W', { reasons: ['notApplicable'] });
const history = (path: string) => {
  const asked = new URL(path, 'http://test').searchParams;
  return {
    unit: asked.get('unit'),
    point: asked.get('point'),
    unit_of_measure: 'W',
    bucketMs: 10_000,
    resolution: 'second',
    start: [asked.get('from')],
    min: [150_000],
    mean: [160_000],
    max: [170_000],
    count: [10],
  };
};
const aNote = (id: string, about: string, more: object) => ({
  ...{ id, text: 'Hose of rack 4 changed', by: 'Ines', station: 's', writtenAt: about, about },
  ...{ hall: null, unit: null, alarm: null, corrects: null, why: null, correctedBy: null, withdrawn: null },
  ...more,
});
const unitOf = (id: string, worstPriority: 1 | 2 | 3 | null, standingAlarms: number) => ({
  id,
  hall: 'east',
  name: id.toUpperCase(),
  mode: 'running',
  modeKnown: true,
  worstPriority,
  standingAlarms,
  age: 1,
});
const answers = {
  '/api/history': history,
  '/api/units/e1/points': {
    unit: 'e1',
    time: noon,
    mode: 'running',
    points: points.map((id) => (id === 'chipPower' ? noChipPower : aReading(id, 1, '1'))),
  },
  '/api/units/e7/points': { unit: 'e7', time: noon, mode: 'running', points: points.map((id) => aReading(id, 1, '1')) },
  '/api/units': { units: [unitOf('e1', null, 0), unitOf('e7', 2, 1), unitOf('w1', 3, 4)] },
  '/api/units/e7/limits': { unit: 'e7', limits: [] },
  '/api/alarms/spans': (path: string) => {
    const asked = new URL(path, 'http://test').searchParams;
    const of = { unit: 'e7', acknowledged: null, where: null, foldedUnder: null };
    return {
      from: asked.get('from'),
      to: asked.get('to'),
      searchableFrom: '2026-03-01T11:10:00.000Z',
      readTo: null,
      spans: [
        {
          ...of,
          ...{ alarm: 'e7:AIR-1', entry: 'AIR-1', title: 'Air is being drawn in', priority: 1 },
          ...{ from: '2026-03-01T11:20:00.000Z', to: '2026-03-01T11:30:00.000Z' },
        },
        {
          ...of,
          ...{ alarm: 'e7:FLOW-1', entry: 'FLOW-1', title: 'Flow low', priority: 3, foldedUnder: 'e7:AIR-1' },
          ...{ from: '2026-03-01T11:25:00.000Z', to: null, acknowledged: '2026-03-01T11:26:00.000Z' },
        },
      ],
    };
  },
  '/api/notes': (path: string) => ({
    time: noon,
    more: false,
    notes: [
      aNote('n1', '2026-03-01T11:40:00.000Z', { unit: new URL(path, 'http://test').searchParams.get('unit') }),
      aNote('n2', '2026-03-01T11:50:00.000Z', { correctedBy: 'n3' }),
    ],
  }),
  '/api/history/uncertainty': (path: string) => {
    const asked = new URL(path, 'http://test').searchParams;
    const points = (asked.get('points') ?? '').split(',');
    return {
      unit: asked.get('unit'),
      moments: [asked.get('from'), noon],
      pending: 0,
      points: points.map((point) => ({
        point,
        unit_of_measure: 'W',
        expandedUncertainty: point === 'chipPower' ? [null, null] : [3000, 3000],
      })),
      minutesBefore: null,
    };
  },
};
const frameOf = (readings: readonly { unit: string; reading: Reading }[]): TrendsFrame => {
  const { sequence, time, clock, broker, standing } = aHallFrame([]);
  return { sequence, time, clock, broker, standing, screen: 'trends', readings };
};

async function show(address: string, changed: object = {}): Promise<Page & { readonly server: FakeServer }> {
  const server = new FakeServer();
  opened = await openPage(server, address, { ...answers, ...changed });
  server.connect();
  await flushPromises();
  server.send(
    frameOf([{ unit: 'e7', reading: aReading('heatRemoved', 161_000, 'W', { expandedUncertainty: 4_000 }) }]),
  );
  await flushPromises();
  await vi.advanceTimersByTimeAsync(200);
  await flushPromises();
  return { ...opened, server };
}
const historyAsked = (page: Page): URLSearchParams[] =>
  page.asked
    .filter(({ path }) => path.startsWith('/api/history'))
    .map(({ path }) => new URL(path, 'http://test').searchParams);

describe('the Trends screen', () => {
  it('shows what its address names: asks the feed and the history for it, over the last hour', async () => {
    const shown = await show('/trends?points=e7:heatRemoved,e7:chipPower');
    expect(shown.server.asked.at(-1)).toEqual({
      screen: 'trends',
      points: [
        { unit: 'e7', point: 'heatRemoved' },
        { unit: 'e7', point: 'chipPower' },
      ],
    });
    const [first] = historyAsked(shown);
    expect(first?.get('point')).toBe('heatRemoved');
    expect(Date.parse(first?.get('to') ?? '') - Date.parse(first?.get('from') ?? '')).toBe(3_600_000);
    expect(shown.page.findAll('.lane-title')[0]?.text()).toBe('power, kW');
  });

  it('draws mean, least and most in the unit of the axis, on the period that is shown', async () => {
    await show('/trends?points=e7:heatRemoved');
    await vi.dynamicImportSettled();
    await flushPromises();
    const { options, data } = drawn.at(-1) ?? { options: null, data: [] };
    expect(data.slice(1, 4).map((column) => column?.[0])).toEqual([170, 160, 150]);
    const range = options?.scales?.['x']?.range as (() => readonly number[]) | undefined;
    expect(range?.()).toEqual([Date.parse(noon) / 1000 - 3600, Date.parse(noon) / 1000]);
  });

  it('asks for exactly the period that its address names', async () => {
    const shown = await show('/trends?points=e7:heatRemoved&from=2026-03-01T06:00:00.000Z&to=2026-03-01T08:00:00.000Z');
    const [first] = historyAsked(shown);
    expect([first?.get('from'), first?.get('to')]).toEqual(['2026-03-01T06:00:00.000Z', '2026-03-01T08:00:00.000Z']);
    expect(shown.page.get('.trends-period').text()).toContain('stands still');
  });

  it('says every line in words: the newest value with unit, uncertainty and age, and its extremes', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved');
    const row = page.get('[data-testid="key-e7:heatRemoved"]').text().replaceAll('\u00a0', ' ').replace(/\s+/g, ' ');
    for (const part of ['E7', 'Heat removed', '161 ± 4 kW', '< 3 s', '150.0 kW to 170.0 kW'])
      expect(row).toContain(part);
  });

  it('follows the feed: a newer reading is the newest value', async () => {
    const { page, server } = await show('/trends?points=e7:heatRemoved');
    const later = aReading('heatRemoved', 190_000, 'W', { time: '2026-03-01T12:00:02.000Z' });
    server.send(frameOf([{ unit: 'e7', reading: later }]));
    await flushPromises();
    expect(page.get('[data-testid="key-e7:heatRemoved"]').text()).toContain('190');
  });

  it('keeps every change in the address', async () => {
    const { page, router } = await show('/trends?points=e7:heatRemoved');
    const press = async (name: string): Promise<void> => {
      const button = page.findAll('button').find((one) => one.text().endsWith(name));
      await button?.trigger('click');
      await flushPromises();
    };
    await press('6 h');
    expect(router.currentRoute.value.query['last']).toBe('21600');
    await press('Earlier');
    expect(router.currentRoute.value.query['to']).toBe('2026-03-01T10:30:00.000Z');
    await page.get('[name=limits]').setValue(false);
    await flushPromises();
    expect(router.currentRoute.value.query['limits']).toBe('no');
    await page.get('.take-away').trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query['points']).toBeUndefined();
    expect(page.text()).toContain('Choose a unit');
  });

  it('begins with the margins and the heat of the unit that needs a person most', async () => {
    const { router } = await show('/trends');
    const { points: shown } = router.currentRoute.value.query;
    expect(shown).toBe('e7:vacuumMargin,e7:lowerWallMargin,e7:heatRemoved,e7:chipPower');
  });

  it('begins with the unit that the person came from, and only with what that has', async () => {
    const { page, router } = await show('/trends?unit=e1');
    expect(router.currentRoute.value.query).toEqual({ points: 'e1:vacuumMargin,e1:lowerWallMargin,e1:heatRemoved' });
    const unit = page.get('.trends-choice select').element;
    expect(unit instanceof HTMLSelectElement ? unit.value : null).toBe('e1');
  });

  it('follows the newest values again, over as long as is shown, by the End key and by a button', async () => {
    const fixed = '/trends?points=e7:heatRemoved&from=2026-03-01T06:00:00.000Z&to=2026-03-01T08:00:00.000Z';
    const first = await show(fixed);
    await first.page.get('.lanes').trigger('keydown', { key: 'End' });
    await flushPromises();
    expect(first.router.currentRoute.value.query).toEqual({ points: 'e7:heatRemoved', last: '7200' });
    first.page.unmount();
    const { page, router } = await show(fixed);
    await page
      .findAll('button')
      .find((one) => one.text() === 'Follow on')
      ?.trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ points: 'e7:heatRemoved', last: '7200' });
  });

  it('is moved by the keyboard', async () => {
    const { page, router } = await show('/trends?points=e7:heatRemoved');
    await page.get('.lanes').trigger('keydown', { key: '+' });
    await flushPromises();
    const { from, to } = router.currentRoute.value.query;
    expect(Date.parse(String(to)) - Date.parse(String(from))).toBe(1_800_000);
  });

  it('finds a point by parts of its name and takes it by Enter', async () => {
    const { page, router } = await show('/trends?points=e7:heatRemoved');
    const input = page.get('[role=combobox]');
    await input.setValue('worst marg');
    expect(page.findAll('[role=option]').map((one) => one.text())[0]).toContain('Vacuum margin, worst');
    expect(input.attributes('aria-activedescendant')).toBe(page.get('[aria-selected=true]').attributes('id'));
    await input.trigger('keydown', { key: 'Enter' });
    await flushPromises();
    expect(router.currentRoute.value.query['points']).toBe('e7:heatRemoved,e7:vacuumMarginWorst');
  });

  it('holds heat against chip power in one press', async () => {
    const { page, router } = await show('/trends?points=e7:vacuumMargin');
    const button = page.findAll('button').find((one) => one.text() === 'Heat against chip power');
    await button?.trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query['points']).toBe('e7:heatRemoved,e7:chipPower,e7:capture');
  });

  it('shows when which alarm stood, with priority in shape and word, the way into the journal, and what it cannot know', async () => {
    const { page } = await show('/trends?points=e7:heatRemoved');
    const spans = page.findAll('.alarm-span');
    expect(spans.map((one) => one.classes().filter((name) => /^(priority|follows|goes-on)/.test(name)))).toEqual([
      ['priority-1'],
      ['priority-3', 'goes-on', 'follows'],
    ]);
    const [first, second] = spans.map((one) => one.attributes('aria-label'));
    expect(first).toContain('Priority 1, act now: Air is being drawn in; raised 2026-03-01 12:20:00, cleared');
    expect(first).toContain('after 10\u00a0min; not acknowledged');
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

import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aReading, noon } from './fixtures/builders';
import { drawn } from './fixtures/fake-chart';
import type { Page } from './fixtures/mount-page';
import { frameOf, historyAsked, showTrends } from './fixtures/trends-page';

vi.mock('uplot', async () => ({ default: (await import('./fixtures/fake-chart')).FakeChart }));

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

  it('reads a period that reaches beyond now again as time goes by, and one that is over only once', async () => {
    const reads = async (to: string): Promise<number> => {
      const shown = await show(`/trends?points=e7:heatRemoved&from=2026-03-01T11:00:00.000Z&to=${to}`);
      await vi.advanceTimersByTimeAsync(60_000);
      await flushPromises();
      const asked = shown.asked.filter(({ path }) => path.startsWith('/api/history?')).length;
      shown.page.unmount();
      return asked;
    };
    expect(await reads('2026-03-01T11:50:00.000Z')).toBe(1);
    expect(await reads('2026-03-01T13:00:00.000Z')).toBeGreaterThan(1);
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
});

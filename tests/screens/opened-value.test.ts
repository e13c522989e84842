import type { Explanation } from '@ebbline/shared/contract/explanation';
import { explanationSchema } from '@ebbline/shared/contract/explanation';
import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aHallFrame, aLine, aLoopFrame, anAlarm, aReading, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

// The chart library wants a canvas, which these tests have not.
vi.mock('uplot', () => ({
  default: class {
    readonly height = 1;
    setData(): void {
      return;
    }
    setSize(): void {
      return;
    }
    destroy(): void {
      return;
    }
  },
}));

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const derived = { kind: 'derived' } as const;
const heat = aReading('heatRemoved', 208_000, 'W', { ...derived, expandedUncertainty: 4_200 });

const anExplanation = (more: Partial<Explanation> = {}): Explanation =>
  explanationSchema.parse({
    unit: 'e7',
    reading: heat,
    formula: 'Q = ṁ · c_p · (T_return − T_supply)',
    source: 'own rule',
    inputs: [
      aReading('massFlow', 5.6, 'kg/s', { ...derived, expandedUncertainty: 0.06 }),
      aReading('return.temperature', 44, 'Cel', { age: 9, quality: 'uncertain', reasons: ['stale'] }),
    ],
    siteFigures: [
      { name: 'volumes.water', value: 0.85, unitOfMeasure: 'm3' },
      { name: 'elevations.accuracy', value: 0.02, unitOfMeasure: 'm' },
    ],
    budget: [
      { from: 'massFlow', contribution: 1_110, share: 0.28 },
      { from: 'return.temperature', contribution: 1_880, share: 0.8 },
      { from: 'supply.temperature, return.temperature', contribution: -594, share: -0.08 },
    ],
    standardUncertainty: 2_100,
    coverageFactor: 2,
    degreesOfFreedom: null,
    ...more,
  });
const path = '/api/units/e7/points/heatRemoved/explanation';

async function show(
  address: string,
  answers: Record<string, unknown> = { [path]: anExplanation() },
  frame: LoopFrame = aLoopFrame({ points: [heat] }),
): Promise<Page & { readonly server: FakeServer }> {
  const server = new FakeServer();
  opened = await openPage(server, address, answers);
  server.connect();
  server.send(frame);
  // The sheet is fetched when it is first opened.
  await vi.dynamicImportSettled();
  await flushPromises();
  return { ...opened, server };
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ');
const sheet = (page: VueWrapper) => page.get('[data-testid=value-sheet]');
const part = (page: VueWrapper, name: string): string => plain(page.get(`[data-testid=value-${name}]`).text());

describe('a value that is opened', () => {
  it('shows equation, source, inputs with age and quality, figures of the site file, and the time it is of', async () => {
    const { page } = await show('/units/e7?value=heatRemoved');
    expect(part(page, 'equation')).toBe('Q = ṁ · c_p · (T_return − T_supply)');
    expect(part(page, 'source')).toBe('Source: own rule');
    const inputs = part(page, 'inputs');
    for (const said of ['Mass flow', '5.60 ± 0.06 kg/s', 'worked out', '44.0 °C', 'measured, old, 9 s', 'no new value'])
      expect(inputs).toContain(said);
    expect(part(page, 'site-figures')).toContain('Water in the loopvolumes.water850 L');
    expect(part(page, 'site-figures')).toContain('Accuracy of the heightselevations.accuracy20 mm');
    expect(plain(sheet(page).text())).toContain('as of 13:00:00');
    expect(plain(sheet(page).text())).toContain('208 ± 4 kW');
  });

  it('shows what brings how much of its uncertainty, the largest first, and what takes some away', async () => {
    const { page } = await show('/units/e7?value=heatRemoved');
    const rows = page.findAll('[data-testid=value-budget] li').map((row) => plain(row.text()));
    expect(rows[0]).toContain('1.9 kW · 80 %');
    expect(rows[1]).toBe('Mass flow1.1 kW · 28 %');
    expect(rows[2]).toContain('−0.59 kW · −8 %');
    expect(page.findAll('[data-testid=value-budget] .fill').map((bar) => bar.attributes('width'))).toEqual([
      '80',
      '28',
    ]);
    expect(part(page, 'uncertainty')).toBe('Standard uncertainty 2.1 kW; with k = 2 expanded ± 4.2 kW.');
  });

  it('says in words that it has no uncertainty where all that goes into it stands at nought', async () => {
    const none = anExplanation({
      reading: { ...heat, value: 0, expandedUncertainty: 0 },
      budget: [],
      standardUncertainty: 0,
    });
    const { page } = await show('/units/e7?value=heatRemoved', { [path]: none });
    expect(part(page, 'uncertainty')).toContain('stands at nought');
  });

  it('says that its uncertainty is not stated where an input has no accuracy', async () => {
    const none = anExplanation({
      reading: { ...heat, expandedUncertainty: null },
      budget: [{ from: 'loop.flow', contribution: null, share: null }],
      standardUncertainty: null,
      coverageFactor: null,
    });
    const { page } = await show('/units/e7?value=heatRemoved', { [path]: none });
    expect(part(page, 'budget')).toContain('no accuracy stated');
    expect(part(page, 'uncertainty')).toContain('Not stated');
  });

  it('says that it can’t be told, and why, in place of a value', async () => {
    const reading = aReading('capture', null, '1', { ...derived, reasons: ['undefined'] });
    const { page } = await show('/units/e7?value=heatRemoved', { [path]: anExplanation({ reading, budget: [] }) });
    expect(page.get('.value-now').text()).toContain('can’t be told');
    expect(plain(sheet(page).text())).toContain('smaller than its uncertainty');
  });

  it('is opened from the chapters, the figures and the table, and its address keeps it', async () => {
    const { page, router } = await show('/units/e7');
    const address = '/units/e7?value=heatRemoved';
    expect(page.get('[data-testid=point-heatRemoved] .value a').attributes('href')).toBe(address);
    expect(
      page
        .get('.figures')
        .findAll('a')
        .map((link) => link.attributes('href')),
    ).toContain(address);
    await page.get('[data-testid=point-heatRemoved] .value a').trigger('click');
    await vi.dynamicImportSettled();
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ value: 'heatRemoved' });
    expect(document.activeElement?.textContent).toBe('Heat removed');
  });

  it('gives the keyboard back to where it came from, and its address up, when it is closed', async () => {
    const { page, router } = await show('/units/e7');
    const link = page.get('[data-testid=point-heatRemoved] .value a');
    (link.element as HTMLElement).focus();
    await link.trigger('click');
    await vi.dynamicImportSettled();
    await flushPromises();
    await sheet(page).trigger('keydown', { key: 'Escape' });
    await flushPromises();
    expect(page.find('[data-testid=value-sheet]').exists()).toBe(false);
    expect(router.currentRoute.value.query).toEqual({});
    expect(document.activeElement).toBe(link.element);
  });

  it('opens its inputs in turn', async () => {
    const { page, router, asked } = await show('/units/e7?value=heatRemoved');
    await page.get('[data-testid=value-inputs] a').trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ value: 'e7:massFlow' });
    expect(asked.at(-1)?.path).toBe('/api/units/e7/points/massFlow/explanation');
    expect(page.get('#value-title').text()).toBe('Mass flow');
    expect(page.find('[data-testid=value-equation]').exists()).toBe(false);
  });

  it('is asked for again while it is open, and marked old where no answer comes', async () => {
    let answers = true;
    const { page, server, asked } = await show('/units/e7?value=heatRemoved', {
      [path]: () => (answers ? anExplanation() : { reply: 'none' }),
    });
    const times = (): number => asked.filter((one) => one.path === path).length;
    const before = times();
    answers = false;
    for (let second = 0; second < 6; second += 1) {
      server.nowMs += 1000;
      server.send(aLoopFrame({ points: [heat], sequence: second + 2 }));
      vi.advanceTimersByTime(1000);
      await flushPromises();
    }
    expect(times()).toBeGreaterThan(before + 1);
    expect(plain(sheet(page).text())).toContain('old, as of 13:00:00');
    expect(sheet(page).classes()).toContain('is-old');
    expect(sheet(page).get('[role=alert]').text()).toContain('asked for again every 2 s');
  });

  it('says what to do where the server does not know it', async () => {
    const { page } = await show('/units/e7?value=heatRemoved', {});
    expect(page.find('[data-testid=value-equation]').exists()).toBe(false);
    expect(sheet(page).get('[role=alert]').text()).toContain('look at Setup');
  });

  it('of a unit is opened on the Trends screen too', async () => {
    const { page } = await show(`/trends?points=e7:heatRemoved&value=e7:heatRemoved`, {
      [path]: anExplanation(),
      '/api/units/e7/points': { unit: 'e7', time: noon, mode: 'running', points: [heat] },
    });
    expect(part(page, 'equation')).toContain('ṁ');
  });

  it('covers no alarm: it says by shape and word what stands, and what stands on this unit', async () => {
    const alarms = [anAlarm('a1', { priority: 1, title: 'Vacuum margin gone' }), anAlarm('a2')];
    const frame = aLoopFrame({ points: [heat], alarms, standing: { 1: 1, 2: 2, 3: 0 } });
    const { page } = await show('/units/e7?value=heatRemoved', { [path]: anExplanation() }, frame);
    const strip = page.get('[data-testid=sheet-alarms]');
    expect(plain(strip.text())).toContain('1 act now');
    expect(plain(strip.text())).toContain('2 act soon');
    expect(plain(strip.text())).toContain('here: Vacuum margin gone, act now, and 1 more');
    expect(strip.findAll('svg').map((mark) => mark.attributes('aria-label'))).toContain('priority 1, act now');
  });

  it('keeps a standing priority-1 alarm in sight on a screen that has no alarms of its own, and loses it with the data', async () => {
    const { page, server } = await show('/units/e7?value=heatRemoved');
    expect(plain(page.get('[data-testid=sheet-alarms]').text())).toBe('No alarm stands.');
    const gone = anAlarm('a1', { priority: 1, title: 'Air into the loop' });
    server.send(aLoopFrame({ points: [heat], alarms: [gone], standing: { 1: 1, 2: 0, 3: 0 }, sequence: 2 }));
    await flushPromises();
    const strip = page.get('[data-testid=sheet-alarms]');
    expect(strip.attributes('role')).toBe('status');
    expect(plain(strip.text())).toContain('1 act now');
    expect(plain(strip.get('.sheet-worst.priority-1').text())).toBe('1here: Air into the loop, act now');
    expect(strip.get('.sheet-worst svg').attributes('aria-label')).toBe('priority 1, act now');
    expect(strip.get('a').attributes('href')).toBe('/alarms');
    const over = { ...gone, state: 'returnedUnacknowledged' as const };
    server.send(aLoopFrame({ points: [heat], alarms: [over], standing: { 1: 1, 2: 0, 3: 0 }, sequence: 3 }));
    await flushPromises();
    expect(plain(strip.text())).toContain('here: Air into the loop, act now, condition gone');
    server.nowMs += 3000;
    vi.advanceTimersByTime(1000);
    await flushPromises();
    expect(plain(strip.text())).toBe('No new data: alarms are not known. Look at the plant.');
  });

  it('covers neither the state of the connection nor the clock, and has no clock in what is read aloud', async () => {
    const { page } = await show('/units/e7?value=heatRemoved');
    const shown = sheet(page);
    expect(shown.get('[data-testid=connection]').text()).toContain('live since');
    expect(shown.get('[data-testid=clock]').text()).toContain('13:00:00');
    expect(shown.get('[data-testid=sheet-alarms]').find('[data-testid=clock]').exists()).toBe(false);
  });

  it('of a hall is a sum whose inputs are the values of its units, each with its own link', async () => {
    const sum = anExplanation({
      unit: 'east',
      reading: aReading('heatRemoved', 400_000, 'W', { ...derived, expandedUncertainty: 10_000 }),
      inputs: ['e1', 'e7'].map((ofUnit) => ({ ...heat, ofUnit })),
      siteFigures: [],
      budget: [{ from: 'e7:heatRemoved', contribution: 5000, share: 1 }],
      standardUncertainty: 5000,
    });
    const server = new FakeServer();
    opened = await openPage(server, '/halls/east?value=halls/east:heatRemoved', {
      '/api/halls/east/points/heatRemoved/explanation': sum,
    });
    server.connect();
    server.send(aHallFrame([aLine('e1'), aLine('e7')]));
    await vi.dynamicImportSettled();
    await flushPromises();
    const { page } = opened;
    expect(part(page, 'inputs')).toContain('E7, heat removed');
    expect(part(page, 'budget')).toContain('E7, heat removed');
    expect(page.findAll('[data-testid=value-inputs] a').map((link) => link.attributes('href'))).toEqual([
      '/halls/east?value=e1:heatRemoved',
      '/halls/east?value=e7:heatRemoved',
    ]);
    const opens = page.findAll('.figures a').map((link) => link.attributes('href'));
    for (const point of ['heatRemoved', 'chipPower', 'capture', 'dewPoint', 'hall.temperature', 'ambient.pressure'])
      expect(opens).toContain(`/halls/east?value=halls/east:${point}`);
  });

  it('says how many degrees of freedom stand behind a coverage factor above 2', async () => {
    const few = anExplanation({ coverageFactor: 2.26, degreesOfFreedom: 9.7 });
    const { page } = await show('/units/e7?value=heatRemoved', { [path]: few });
    expect(part(page, 'uncertainty')).toContain('with k = 2.26 expanded');
    expect(part(page, 'uncertainty')).toContain(', 9 effective degrees of freedom.');
  });
});

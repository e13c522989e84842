import type { TightnessList } from '@ebbline/shared/contract/tightness-test';
import { endTightnessRequestSchema, startTightnessRequestSchema } from '@ebbline/shared/contract/tightness-test';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import {
  aList,
  aTest,
  endedTest as ended,
  litre,
  tightnessCautions as cautions,
  tightnessPath as path,
} from './fixtures/tightness-answers';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

async function show(list: TightnessList, answers: Record<string, unknown> = {}): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7', { [path]: list, ...answers });
  server.connect();
  server.send(aLoopFrame());
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const button = (page: VueWrapper, name: string) => {
  const found = page.findAll('button').find((one) => one.text() === name);
  if (found === undefined) throw new Error(`no button named ${name}`);
  return found;
};

describe('the pressure-rise test', () => {
  it('shows its cautions first and nothing to fill in before they are read', async () => {
    const { page } = await show(aList());
    await button(page, 'Pressure-rise test…').trigger('click');
    for (const caution of cautions) expect(page.get('.tightness-cautions').text()).toContain(caution);
    expect(page.find('[name=minutes]').exists()).toBe(false);
    await page.get('[name=read]').setValue(true);
    expect(page.find('[name=minutes]').exists()).toBe(true);
  });

  it('is started with limit, length and name in the units of the contract', async () => {
    let started = false;
    const { page, asked } = await show(aList(), {
      [path]: (_path: string, body: unknown) => {
        if (body === undefined) return started ? aList({ tests: [aTest()] }) : aList();
        started = true;
        return aTest();
      },
    });
    await button(page, 'Pressure-rise test…').trigger('click');
    await page.get('[name=read]').setValue(true);
    const send = (): string | undefined => page.get('.tightness-form button[type=submit]').attributes('disabled');
    expect(send()).toBeDefined();
    await page.get('[name=limitLitres]').setValue(0.5);
    expect(send()).toBeUndefined();
    await page.get('.tightness-form').trigger('submit');
    await flushPromises();
    const body = asked.find((one) => one.body !== undefined)?.body;
    const wish = startTightnessRequestSchema.parse(body);
    expect(wish.acceptanceLimit).toBeCloseTo(0.5 * litre, 12);
    expect(wish).toMatchObject({ plannedMinutes: 30, dry: false, sourceIsolated: false, gasVolume: null });
    expect(page.get('[data-testid=tightness-running]').text()).toContain('A pressure-rise test runs');
  });

  it('says what is in the way where it can’t be started, and offers nothing', async () => {
    const refusals = [{ code: 'TIGHTNESS_SOURCE_RUNS', message: 'the vacuum source runs; isolate it first' }];
    const { page } = await show(aList({ refusals }));
    expect(page.get('.tightness-refusals').text()).toContain('the vacuum source runs');
    expect(page.findAll('button').some((one) => one.text() === 'Pressure-rise test…')).toBe(false);
  });

  it('shows while it runs how far it is, whether the rise is steady, and the interval', async () => {
    const { page } = await show(aList({ tests: [aTest()] }));
    const said = plain(page.get('[data-testid=tightness-running]').text());
    for (const part of ['10 min of 30 min', '0.30 ± 0.04 L/min free air', '0.26 to 0.34 L/min', 'the rise is steady'])
      expect(said).toContain(part);
    expect(said).not.toMatch(/passes|fails/);
  });

  it('says that a rise that slows down is no leak rate', async () => {
    const { page } = await show(aList({ tests: [aTest({ steadiness: 'falling' })] }));
    expect(page.get('[data-testid=tightness-steadiness]').text()).toContain('no leak rate');
  });

  it('is ended by name, and said to be ended once the server has confirmed it', async () => {
    let running = true;
    const { page, asked } = await show(aList({ tests: [aTest()] }), {
      [path]: () => aList({ tests: [running ? aTest() : ended] }),
      [`${path}/t1/end`]: () => {
        running = false;
        return ended;
      },
    });
    await button(page, 'End the test…').trigger('click');
    await page.get('[data-testid=tightness-running] form').trigger('submit');
    await flushPromises();
    const body = asked.find((one) => one.path.endsWith('/end'))?.body;
    expect(endTightnessRequestSchema.parse(body)).toEqual({ operator: 'A. Example', comment: '' });
    expect(page.get('.confirmed').text()).toContain('Confirmed by the server: passes');
    expect(page.get('.tightness-past a').attributes('href')).toBe('/units/e7/tightness-tests/t1');
  });
});

describe('the record of a pressure-rise test', () => {
  it('tells verdict, figures, how it was done, what was to be minded, and how sure it is, on one sheet', async () => {
    const server = new FakeServer();
    opened = await openPage(server, '/units/e7/tightness-tests/t1', { [`${path}/t1`]: ended });
    server.connect();
    server.send(anAlarmsFrame([]));
    await vi.dynamicImportSettled();
    await flushPromises();
    const said = plain(opened.page.get('.record').text());
    for (const part of [
      'passes',
      '0.30 ± 0.04 L/min free air',
      '2026-03-01 12:50:00 Europe/Oslo by A. Example, from console',
      'the planned time is over',
      'k = 2.15 for 95.45 %, 17 effective degrees of freedom',
      'Scatter about the line',
      'Separator pressure, drift',
      'Vacuum vessels',
      'Record t1',
    ])
      expect(said).toContain(part);
    expect(said).not.toContain('separator.pressure');
  });

  it('says so where there is no such test', async () => {
    const server = new FakeServer();
    opened = await openPage(server, '/units/e7/tightness-tests/t9');
    server.connect();
    await vi.dynamicImportSettled();
    await flushPromises();
    expect(opened.page.get('.record [role=alert]').text()).toContain('can’t be read');
  });
});

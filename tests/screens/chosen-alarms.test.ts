import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { anAlarm, anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
let server: FakeServer;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const first = anAlarm('a', { title: 'First', annunciatedAt: '2026-03-01T11:48:10.000Z' });
const second = anAlarm('b', { title: 'Second', priority: 3 });
const anew: Alarm = { ...first, annunciatedAt: '2026-03-01T15:00:00.000Z', stateSince: '2026-03-01T15:00:00.000Z' };

async function next(...alarms: readonly Alarm[]): Promise<void> {
  server.send(anAlarmsFrame(alarms));
  await flushPromises();
}
const tick = (page: VueWrapper, id: string) =>
  page.find<HTMLInputElement>(`[data-testid=alarm-${id}] .alarm-pick input`);
const count = (page: VueWrapper): string => page.get('.several-open').text();

/** The list with two alarms, both ticked. */
async function ticked(): Promise<VueWrapper> {
  server = new FakeServer();
  opened = await openPage(server, '/alarms');
  const { page } = opened;
  server.connect();
  await next(first, second);
  await vi.waitFor(() => expect(page.find('.alarm-groups').exists()).toBe(true), { timeout: 60_000 });
  for (const id of ['a', 'b']) await tick(page, id).setValue(true);
  expect(count(page)).toBe('Acknowledge 2…');
  return page;
}
const onlySecond = (page: VueWrapper): void => {
  expect(tick(page, 'a').element.checked).toBe(false);
  expect(tick(page, 'b').element.checked).toBe(true);
  expect(count(page)).toBe('Acknowledge 1…');
};

describe('an alarm that is ticked', () => {
  it('is ticked no longer where it was acknowledged, went, and is told anew', async () => {
    const page = await ticked();
    await next({ ...first, state: 'acknowledged', acknowledgedBy: 'B. Other' }, second);
    await next(second);
    await next(anew, second);
    onlySecond(page);
  });

  it('is ticked no longer where it was acknowledged and waits again from the same beginning', async () => {
    const page = await ticked();
    await next({ ...first, state: 'acknowledged', acknowledgedBy: 'B. Other' }, second);
    await next(first, second);
    onlySecond(page);
  });

  it('is ticked no longer where it is told anew while no frame came', async () => {
    const page = await ticked();
    const slept = Date.now() + 60_000;
    vi.spyOn(Date, 'now').mockReturnValue(slept);
    await next(anew, second);
    onlySecond(page);
  });

  it('stays ticked where it comes back before anybody acknowledged it, as one that chatters does', async () => {
    const page = await ticked();
    await next({ ...first, state: 'returnedUnacknowledged', stateSince: '2026-03-01T11:58:00.000Z' }, second);
    await next(anew, second);
    expect(tick(page, 'a').element.checked).toBe(true);
    expect(count(page)).toBe('Acknowledge 2…');
  });

  it('stays ticked where its condition goes and it still waits, and can be ticked anew', async () => {
    const page = await ticked();
    await next({ ...first, state: 'returnedUnacknowledged', stateSince: '2026-03-01T11:58:00.000Z' }, second);
    expect(count(page)).toBe('Acknowledge 2…');
    await tick(page, 'a').setValue(false);
    await tick(page, 'a').setValue(true);
    expect(count(page)).toBe('Acknowledge 2…');
    await tick(page, 'a').setValue(false);
    expect(count(page)).toBe('Acknowledge 1…');
  });
});

import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { anAlarm, anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
let server: FakeServer;
beforeEach(() => {
  server = new FakeServer();
});
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

/** The list, with a hand in it. */
async function hold(alarms: readonly Alarm[], address = '/alarms'): Promise<VueWrapper> {
  opened = await openPage(server, address);
  server.connect();
  server.send(anAlarmsFrame(alarms));
  await flushPromises();
  await vi.waitFor(() => expect(opened?.page.find('.alarm-groups').exists()).toBe(true), { timeout: 60_000 });
  await opened.page.get('.alarm-groups').trigger('pointerenter');
  return opened.page;
}
async function next(...alarms: readonly Alarm[]): Promise<void> {
  server.send(anAlarmsFrame(alarms));
  await flushPromises();
}
const titles = (page: VueWrapper): string[] => page.findAll('.standing h3').map((title) => title.text());

const first = anAlarm('a', { title: 'First', priority: 1 });
const second = anAlarm('b', { title: 'Second', priority: 2 });
const follower = anAlarm('b', { title: 'Second', priority: 2, foldedUnder: 'a' });

describe('a list that is held and narrowed', () => {
  it('says of what no longer fits that it is no longer chosen, not that it is gone, and keeps its acts', async () => {
    const page = await hold([first, second], '/alarms?state=waiting');
    await next({ ...first, state: 'acknowledged', acknowledgedBy: 'B. Other', acknowledgedAt: first.since }, second);
    const row = page.get('[data-testid=alarm-a]');
    expect(titles(page)).toEqual(['First', 'Second']);
    expect(row.text()).not.toContain('stands no longer');
    expect(row.text()).toContain('no longer among what is chosen');
    expect(row.text()).toContain('acknowledged by B. Other');
    expect(row.find('[data-opens=shelve]').exists()).toBe(true);
    expect(row.find('[data-testid=response]').exists()).toBe(true);
    await page.get('.alarm-groups').trigger('pointerleave');
    expect(titles(page)).toEqual(['Second']);
  });
});

describe('a list that is held while alarms fold', () => {
  it('shows an alarm that follows from a newer one once, where it stood', async () => {
    const page = await hold([second]);
    await next(first, follower);
    expect(titles(page)).toEqual(['Second', 'First']);
    expect(page.text()).not.toContain('stand no longer');
    expect(page.text()).not.toContain('stands no longer');
    expect(page.find('.unfold').exists()).toBe(false);
    await page.get('.alarm-groups').trigger('pointerleave');
    expect(titles(page)).toEqual(['First']);
    expect(page.find('.unfold').exists()).toBe(true);
  });

  it('brings an alarm into sight whose first-out is gone, and only that is gone', async () => {
    const page = await hold([first, follower]);
    await next(second);
    expect(titles(page)).toEqual(['First', 'Second']);
    expect(page.get('[data-testid=alarm-a]').text()).toContain('stands no longer');
    expect(page.get('[data-testid=alarm-b]').text()).not.toContain('stands no longer');
    expect(page.get('[data-testid=alarm-b] .open-acknowledge').text()).toBe('Acknowledge…');
  });

  it('keeps it where it is on the screen, with what is typed there', async () => {
    const page = await hold([first, follower]);
    await page.get('.unfold').trigger('click');
    const row = page.get('[data-testid=alarm-b]');
    expect(row.text()).toContain('follows from: First');
    await row.get('.open-acknowledge').trigger('click');
    await row.get('[name=comment]').setValue('on my way');
    await next(second);
    expect(titles(page)).toEqual(['First', 'Second']);
    expect(page.get<HTMLInputElement>('[data-testid=alarm-b] [name=comment]').element.value).toBe('on my way');
    expect(page.get('[data-testid=alarm-b]').text()).not.toContain('follows from: First');
  });
});

describe('an alarm that goes and comes while somebody types in its row', () => {
  it('keeps the form and the reason, and offers nothing new while it is gone', async () => {
    const seen = { ...first, state: 'acknowledged' } as const;
    const page = await hold([seen, second]);
    await page.get('[data-testid=alarm-a] [data-opens=shelve]').trigger('click');
    await page.get('[data-testid=alarm-a] [name=reason]').setValue('chatters since the regulator was');
    await next();
    const reason = () => page.get<HTMLInputElement>('[data-testid=alarm-a] [name=reason]').element.value;
    expect(page.get('[data-testid=alarm-a]').text()).toContain('stands no longer');
    expect(page.find('[data-testid=alarm-b] .standing-acts').exists()).toBe(false);
    expect(reason()).toBe('chatters since the regulator was');
    await next(first, second);
    expect(reason()).toBe('chatters since the regulator was');
    await page.get('[data-testid=alarm-a] .cancel').trigger('click');
    expect(page.find('[data-testid=alarm-a] [data-opens=shelve]').exists()).toBe(true);
  });
});

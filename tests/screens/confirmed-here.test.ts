import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { anAlarm, anAlarmsFrame, aSetAside, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
let server: FakeServer;
/** What the server lists as set aside. */
let listed: readonly SetAsideAlarm[] = [];
let frames = 0;
beforeEach(() => {
  listed = [];
  frames = 0;
});
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const shelved = aSetAside('e7:A', { title: 'Small margin', since: noon, until: '2026-03-01T12:30:00.000Z' });
const inService = { id: 'e7:A', mode: 'inService', state: 'unacknowledged', active: true };
const found = {
  id: 'e7:A',
  unit: 'e7',
  hall: 'east',
  entry: 'MARGIN-1',
  title: 'Small margin',
  where: null,
  mode: 'inService',
  active: true,
  priority: 2,
  longestShelvingMinutes: 480,
};
const saysShelved = 'E7: Small margin – shelved until 13:30:00, confirmed by the server.';
const saysTold = 'E7: Small margin – told again: its condition holds, confirmed by the server.';

async function open(address: string, shown: string): Promise<VueWrapper> {
  server = new FakeServer();
  opened = await openPage(server, address, {
    '/api/alarms/set-aside': () => ({ time: noon, alarms: listed }),
    '/api/alarms/findable': { time: noon, alarms: [found], more: false },
    '/api/alarms/e7%3AA/shelve': () => {
      listed = [shelved];
      return shelved;
    },
    '/api/alarms/e7%3AA/unshelve': () => {
      listed = [];
      return inService;
    },
  });
  server.connect();
  server.send(anAlarmsFrame([anAlarm('e7:A')], { setAside: 0 }));
  await flushPromises();
  const { page } = opened;
  await vi.waitFor(() => expect(page.find(shown).exists()).toBe(true), { timeout: 60_000 });
  return page;
}
/** Somebody else does something, and a newer list tells of it. */
async function list(...alarms: readonly SetAsideAlarm[]): Promise<void> {
  listed = alarms;
  frames += 1;
  server.send(anAlarmsFrame([], { setAside: 100 + frames }));
  await flushPromises();
}
const press = async (page: VueWrapper, begin: string): Promise<void> => {
  const button = page.findAll('button').find((one) => one.text().startsWith(begin));
  if (button === undefined) throw new Error(`no button named ${begin}`);
  await button.trigger('click');
  await flushPromises();
};
const submit = async (page: VueWrapper, label: string): Promise<void> => {
  await page.get(`form[aria-label^="${label}"]`).trigger('submit');
  await flushPromises();
};
const shelve = async (page: VueWrapper): Promise<void> => {
  await press(page, 'Shelve');
  await page.get('[name=reason]').setValue('regulator is being changed');
  await submit(page, 'Shelve');
};
const unshelve = async (page: VueWrapper): Promise<void> => {
  await press(page, 'Unshelve');
  await submit(page, 'Unshelve');
};
const lines = (page: VueWrapper): string[] => page.findAll('.confirmed').map((line) => line.text());
const asideScreen = (): Promise<VueWrapper> => open('/alarms/set-aside?find=e7', '.found-acts button');

describe('what was done on the screen of what is set aside', () => {
  it('is said of each alarm by the last thing alone', async () => {
    const page = await asideScreen();
    await shelve(page);
    expect(lines(page)).toEqual([saysShelved]);
    await unshelve(page);
    expect(lines(page)).toEqual([saysTold]);
    await shelve(page);
    expect(lines(page)).toEqual([saysShelved]);
  });

  it('is said no longer once a shelving has ended, or somebody else has made another of it', async () => {
    for (const after of [[], [{ ...shelved, mode: 'outOfService' as const, until: null }]]) {
      const page = await asideScreen();
      await shelve(page);
      await list(shelved);
      expect(lines(page)).toEqual([saysShelved]);
      await list(...after);
      expect(lines(page)).toEqual([]);
      page.unmount();
    }
  });

  it('is said no longer of an alarm that somebody else has set aside again', async () => {
    const page = await asideScreen();
    await shelve(page);
    await unshelve(page);
    await list();
    expect(lines(page)).toEqual([saysTold]);
    await list({ ...shelved, since: '2026-03-01T12:05:00.000Z', by: 'B. Other' });
    expect(lines(page)).toEqual([]);
  });
});

describe('what was set aside in the list of what stands', () => {
  it('is said no longer once the alarm is told again, also where the list is narrowed to others', async () => {
    const page = await open('/alarms?state=waiting', '[data-opens=shelve]');
    await shelve(page);
    expect(lines(page)).toHaveLength(1);
    const again = anAlarm('e7:A', { state: 'acknowledged', stateSince: '2026-03-01T12:05:00.000Z' });
    server.send(anAlarmsFrame([again], { setAside: 0 }));
    await flushPromises();
    await page.get('.alarm-groups').trigger('pointerleave');
    expect(page.find('[data-testid="alarm-e7:A"]').exists()).toBe(false);
    expect(lines(page)).toEqual([]);
  });

  it('is said no longer once a shelving has run out, though the alarm does not stand again', async () => {
    const page = await open('/alarms', '[data-opens=shelve]');
    await shelve(page);
    server.send(anAlarmsFrame([], { setAside: 1 }));
    await flushPromises();
    expect(lines(page)).toHaveLength(1);
    server.send(anAlarmsFrame([], { setAside: 0, clock: { kind: 'wall', now: '2026-03-01T12:30:00.000Z' } }));
    await flushPromises();
    expect(lines(page)).toEqual([]);
  });
});

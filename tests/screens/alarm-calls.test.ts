import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { nextTick } from 'vue';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aHallFrame, aLine } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { mountPage } from './fixtures/mount-page';

const call = (id: string, priority: 1 | 2 | 3): CallingAlarm => ({
  ...{ id, priority, since: '2031-05-06T07:08:09.000Z', unit: 'e1', title: `Title of ${id}`, where: 'rack 4' },
});
const frameWith = (...newest: CallingAlarm[]) =>
  aHallFrame([aLine('e1')], newest.length === 0 ? {} : { calling: { total: newest.length, newest } });

const shown: { title: string; body: string }[] = [];
/** What the browser has for it. */
class FakeNotification {
  static permission = 'default';
  static requestPermission = () => Promise.resolve((FakeNotification.permission = 'granted'));
  onclick: (() => void) | null = null;
  constructor(title: string, { body }: { body: string }) {
    shown.push({ title, body });
  }
}

let page: VueWrapper | null = null;
beforeEach(() => {
  vi.stubGlobal('Notification', FakeNotification);
  FakeNotification.permission = 'default';
  shown.length = 0;
  localStorage.clear();
});
afterEach(() => {
  page?.unmount();
  page = null;
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

async function open(): Promise<{ server: FakeServer; page: VueWrapper }> {
  const server = new FakeServer();
  const opened = await mountPage(server, '/halls/east');
  page = opened;
  server.connect();
  return { server, page: opened };
}

describe('alarms that call', () => {
  it('are counted before the title of the tab, on whichever screen', async () => {
    const { server } = await open();
    server.send(frameWith(call('a', 1), call('b', 3)));
    await vi.waitFor(() => expect(document.title).toMatch(/^\(2\) /));
    document.title = 'Trends – Ebbline';
    await vi.waitFor(() => expect(document.title).toBe('(2) Trends – Ebbline'));
    server.send(frameWith());
    await vi.waitFor(() => expect(document.title).toBe('Trends – Ebbline'));
  });

  it('are told by the machine’s own notifications where that was asked for, and nobody looks, and they are urgent', async () => {
    const { server, page: opened } = await open();
    server.send(frameWith());
    await nextTick();
    await opened.get('[data-testid=notify]').setValue(true);
    await vi.waitFor(() => expect(FakeNotification.permission).toBe('granted'));
    await nextTick();
    server.send(frameWith(call('seen', 1)));
    await nextTick();
    expect(shown).toEqual([]);
    vi.spyOn(document, 'hidden', 'get').mockReturnValue(true);
    server.send(frameWith(call('mild', 3), call('seen', 1)));
    server.send(frameWith(call('new', 2), call('mild', 3), call('seen', 1)));
    await nextTick();
    expect(shown).toEqual([{ title: 'Priority 2: Title of new', body: 'e1, rack 4' }]);
  });

  it('are told in a few notifications where they are many', async () => {
    localStorage.setItem('ebbline.alarmNotification', 'on');
    FakeNotification.permission = 'granted';
    const { server } = await open();
    server.send(frameWith());
    await nextTick();
    vi.spyOn(document, 'hidden', 'get').mockReturnValue(true);
    server.send(frameWith(...Array.from({ length: 40 }, (_, i) => call(`a${i}`, 1))));
    await nextTick();
    expect(shown.map(({ title }) => title).at(-1)).toBe('37 more alarms');
    expect(shown).toHaveLength(4);
  });

  it('are told by none where the browser refuses, and the page says so', async () => {
    FakeNotification.permission = 'denied';
    const { server, page: opened } = await open();
    server.send(frameWith());
    await nextTick();
    expect(opened.find('[data-testid=notify]').exists()).toBe(false);
    expect(opened.get('[data-testid=sound]').text()).toContain('set to show no notifications');
  });

  it('say that their sound is off until someone clicks', async () => {
    const { server, page: opened } = await open();
    server.send(frameWith(call('a', 1)));
    await nextTick();
    expect(opened.get('[data-testid=sound-blocked]').text()).toBe('Sound is off – click');
    expect(opened.find('[data-testid=silence]').exists()).toBe(false);
  });
});

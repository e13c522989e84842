import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, anAlarm, anAlarmsFrame, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => opened?.page.unmount());

describe('the way to the second in which an alarm was told', () => {
  it('leads from the alarm itself, where it stands live', async () => {
    const server = new FakeServer();
    opened = await openPage(server, '/units/e7');
    server.connect();
    const annunciatedAt = '2026-03-01T11:48:13.300Z';
    server.send(aLoopFrame({ alarms: [anAlarm('e7:AIR-1', { unit: 'e7', annunciatedAt })] }));
    await flushPromises();
    const link = opened.page.findAll('a').find((one) => one.text() === 'The loop as it stood then');
    expect(link?.attributes('href')).toBe('/units/e7/past?at=2026-03-01T11:48:13Z');
  });

  it('leads from a row of the journal, of a loop or of a hall', async () => {
    const row = (more: object) => ({
      ...{ sequence: 1, time: noon, sourceTime: '2026-03-01T11:48:10.700Z', kind: 'transition', entry: 'AIR-1' },
      ...{ alarm: 'e7:AIR-1', unit: 'e7', from: 'normal', to: 'unacknowledged', priority: 2, value: null, limit: null },
      ...{ unit_of_measure: null, where: null, actor: null, station: null, reason: 'conditionTrue' },
      ...{ previousHash: '0', hash: '1', ...more },
    });
    const rows = [
      row({}),
      row({ sequence: 2, alarm: 'east:ROOM-1', unit: null, hall: 'east' }),
      row({ sequence: 3, alarm: null, unit: null, from: null, to: null, kind: 'system', entry: null }),
    ];
    const server = new FakeServer();
    opened = await openPage(server, '/alarms/journal', { '/api/alarms/journal': { rows, next: null } });
    server.connect();
    server.send(anAlarmsFrame([]));
    const { page } = opened;
    await vi.waitFor(() => expect(page.find('.journal-rows').exists()).toBe(true), { timeout: 60_000 });
    const links = page.findAll('.journal-rows a').map((one) => [one.text(), one.attributes('href')]);
    expect(links).toEqual([
      ['as it stood at 2026-03-01 12:48:10', '/units/e7/past?at=2026-03-01T11:48:10Z'],
      ['as it stood at 2026-03-01 12:48:10', '/halls/east/past?at=2026-03-01T11:48:10Z'],
    ]);
  });
});

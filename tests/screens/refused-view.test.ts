import { nextTick } from 'vue';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { holdSite } from '../../frontend/src/state/use-site';
import { aHallFrame, aLine, aSite } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

const absent = { code: 'VIEW_UNKNOWN_HALL', message: 'This site has no hall east.' } as const;
const hall = { screen: 'hall', hall: 'east' } as const;
const alarms = { screen: 'alarms' } as const;
let opened: Page | null = null;

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  opened?.page.unmount();
  opened = null;
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function refusedHall() {
  const server = new FakeServer();
  opened = await openPage(server, '/halls/east');
  server.connect();
  server.refuse(absent);
  await nextTick();
  return { server, page: opened.page };
}

it('shows a hall again that the site has again, without a hand', async () => {
  const { server, page } = await refusedHall();
  expect(page.text()).toContain(absent.message);
  expect(server.asked).toEqual([hall, alarms]);
  await vi.advanceTimersByTimeAsync(20_000);
  expect(server.asked.slice(2)).toEqual([hall]);
  server.send(aHallFrame([aLine('e1')]));
  await nextTick();
  expect(page.text()).not.toContain(absent.message);
  expect(page.find('[data-testid=loop-e1]').exists()).toBe(true);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(server.asked).toHaveLength(3);
});

it('asks at once where another site file came into force', async () => {
  const { server } = await refusedHall();
  holdSite({ ...aSite(), name: 'Mended works' });
  await nextTick();
  expect(server.asked.slice(2)).toEqual([hall]);
});

it('asks for nothing anew with another site file where nothing was refused', async () => {
  const server = new FakeServer();
  opened = await openPage(server, '/halls/east');
  server.connect();
  holdSite({ ...aSite(), name: 'Mended works' });
  await nextTick();
  expect(server.asked).toEqual([hall]);
});

it('keeps saying it while only what stands in for the hall comes, and asks on', async () => {
  const { server, page } = await refusedHall();
  await vi.advanceTimersByTimeAsync(20_000);
  server.refuse(absent);
  await vi.advanceTimersByTimeAsync(20_000);
  server.send(aHallFrame([], { hall: 'west' }));
  await nextTick();
  expect(page.text()).toContain(absent.message);
  expect(server.asked).toEqual([hall, alarms, hall, alarms, hall]);
});

it('asks again for what was asked too often, and for nothing once the feed is closed', async () => {
  const server = new FakeServer();
  server.feed.show(hall);
  server.connect();
  server.refuse({ code: 'VIEW_TOO_OFTEN', message: 'later' });
  await vi.advanceTimersByTimeAsync(20_000);
  expect(server.asked).toEqual([hall, hall]);
  server.feed.close();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(server.asked).toHaveLength(2);
});

it('has its refusal gone with the first frame after a reconnect', () => {
  const server = new FakeServer();
  server.feed.show(hall);
  server.connect();
  server.refuse(absent);
  server.disconnect();
  server.connect();
  server.send(aHallFrame([]));
  expect(server.feed.refusal.value).toBeNull();
});

it('asks once more for what it shows where the refusal was of another view and came late', () => {
  const server = new FakeServer();
  server.feed.show({ screen: 'hall', hall: 'west' });
  server.connect();
  server.feed.show(hall);
  // Of the west hall, on its way as the east hall was asked for.
  server.refuse(absent);
  server.send(aHallFrame([], { hall: 'east' }));
  expect(server.asked).toEqual([{ screen: 'hall', hall: 'west' }, hall, alarms, hall]);
  expect(server.feed.refusal.value).toBeNull();
  server.send(aHallFrame([], { hall: 'east' }));
  expect(server.asked).toHaveLength(4);
  server.feed.close();
});

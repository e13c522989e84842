import { createApp, defineComponent, h, nextTick } from 'vue';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { liveFeedKey } from '../../frontend/src/state/live-feed-key';
import { useConnection, type Connection } from '../../frontend/src/state/use-connection';
import { aHallFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';

const asleep = Date.parse('2031-05-06T02:00:00.000Z');
let end: () => void = () => undefined;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date', 'setInterval', 'clearInterval', 'performance'] });
  vi.setSystemTime(asleep);
});
afterEach(() => {
  end();
  vi.useRealTimers();
});

/** A page on a machine whose monotonic clock stands still in its sleep. */
function page(): { server: FakeServer; connection: Connection } {
  const server = new FakeServer(false);
  let connection: Connection | null = null;
  const app = createApp(
    defineComponent(() => {
      connection = useConnection();
      return () => h('p');
    }),
  );
  app.provide(liveFeedKey, server.feed).mount(document.createElement('div'));
  end = () => app.unmount();
  if (connection === null) throw new Error('the page was not set up');
  server.connect();
  server.send(aHallFrame([]));
  return { server, connection };
}
const sleep = (hours: number): void => {
  vi.setSystemTime(asleep + hours * 3_600_000);
};

it('knows after a sleep how old all is and since when nothing came', async () => {
  const { connection } = page();
  await nextTick();
  expect(connection.state.value).toBe('live');
  sleep(6);
  await vi.advanceTimersByTimeAsync(200);
  expect(connection.state.value).toBe('lost');
  expect(connection.secondsSinceFrame.value).toBeCloseTo(6 * 3600, 0);
  expect(connection.since.value?.slice(0, 19)).toBe('2031-05-06T02:00:00');
});

it('knows it too where the connection is told as closed first', async () => {
  const { server, connection } = page();
  await nextTick();
  sleep(6);
  server.disconnect();
  await nextTick();
  expect(connection.since.value?.slice(0, 19)).toBe('2031-05-06T02:00:00');
});

it('stays live where the clock of the machine is set back', async () => {
  const { connection } = page();
  await nextTick();
  sleep(-1);
  await vi.advanceTimersByTimeAsync(400);
  expect(connection.state.value).toBe('live');
});

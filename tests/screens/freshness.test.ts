import type { VueWrapper } from '@vue/test-utils';
import { nextTick } from 'vue';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aHallFrame, aLine } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { mountPage } from './fixtures/mount-page';

const frame = aHallFrame([aLine('e1'), aLine('e7')]);
let page: VueWrapper | null = null;

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  page?.unmount();
  page = null;
  vi.useRealTimers();
});

async function pass(server: FakeServer, ms: number): Promise<void> {
  for (let passed = 0; passed < ms; passed += 50) {
    server.nowMs += 50;
    await vi.advanceTimersByTimeAsync(50);
  }
}

describe('a screen whose frames stop while its socket stays open', () => {
  it('has marked everything old before 3 s have passed', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/halls/east');
    server.connect();
    server.send(frame);
    await nextTick();
    expect(page.find('[data-testid=connection]').attributes('data-state')).toBe('live');
    expect(page.find('[data-testid=old-banner]').exists()).toBe(false);

    await pass(server, 2_950);
    expect(page.find('[data-testid=connection]').text()).toContain('no data');
    expect(page.get('[data-testid=old-banner]').text()).toContain('Everything shown here is old');
    const ages = page.findAll('.age').map((age) => age.text());
    expect(ages.length).toBeGreaterThan(0);
    expect(ages.filter((age) => !age.startsWith('old, '))).toEqual([]);
    const bars = page.findAll('[data-testid$=-bar]').map((bar) => bar.attributes('fill'));
    expect(bars).toEqual(['url(#hatch)', 'url(#hatch)']);
  });

  it('is fresh as long as a frame comes each second', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/halls/east');
    server.connect();
    for (let second = 0; second < 10; second += 1) {
      server.send(frame);
      await pass(server, 1_000);
      expect(page.find('[data-testid=connection]').attributes('data-state')).toBe('live');
    }
  });

  it('is fresh again with the first frame that comes back', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/halls/east');
    server.connect();
    server.send(frame);
    await pass(server, 5_000);
    server.send(frame);
    await nextTick();
    expect(page.find('[data-testid=connection]').attributes('data-state')).toBe('live');
    expect(page.find('[data-testid=old-banner]').exists()).toBe(false);
  });

  it('lets ages grow between frames', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/halls/east');
    server.connect();
    server.send(aHallFrame([aLine('e1', { age: 10 })]));
    await pass(server, 1_500);
    expect(page.get('[data-testid=loop-e1] .age').text()).toBe('11\u00a0s');
  });

  it('marks everything old at once where the connection closes', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/halls/east');
    server.connect();
    server.send(frame);
    server.disconnect();
    await nextTick();
    expect(page.find('[data-testid=old-banner]').exists()).toBe(true);
  });
});

describe('the frame of every screen', () => {
  it('says the source clock, and what is to be known of the broker, aloud', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/units/e7');
    server.connect();
    server.send(
      aHallFrame([], {
        clock: { kind: 'source', now: '2026-03-01T12:00:00.000Z' },
        broker: {
          state: 'connected',
          address: '127.0.0.1:1884',
          embedded: true,
          note: 'port 1883 was taken, 1884 is used',
        },
      }),
    );
    await nextTick();
    expect(page.get('[data-testid=clock]').text()).toContain('source clock');
    expect(page.get('[data-testid=clock]').text()).toContain('13:00:00');
    expect(page.get('[data-testid=broker]').text()).toContain('port 1883 was taken, 1884 is used');
  });
});

import { flushPromises } from '@vue/test-utils';
import { afterEach, expect, it, vi } from 'vitest';
import { aHallFrame, aLine } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { openPage, type Page } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const at = (time: string): string => `2026-03-01T${time}Z`;
const minutes = (pa: number): (number | null)[] => [...Array<null>(57).fill(null), pa, pa, pa];

/** A hall with a frame of one time, and trails that are answered with their running minute. */
async function openHall(time: string, minute: () => string) {
  const server = new FakeServer();
  opened = await openPage(server, '/halls/east', {
    '/api/halls/east/trails': () => ({
      hall: 'east',
      minute: minute(),
      trails: [{ unit: 'e1', lowestPa: minutes(30_000), highestPa: minutes(90_000) }],
    }),
  });
  const { page, asked } = opened;
  const show = async (next: string): Promise<void> => {
    server.send(aHallFrame([aLine('e1')], { time: at(next) }));
    await flushPromises();
  };
  server.connect();
  await show(time);
  /** How many minutes of its hour the strip shows. */
  const seen = (): number => {
    const trail = page.find('[data-testid=strip-e1-trail]');
    return (trail.attributes('d')?.match(/V/g)?.length ?? 0) / 2;
  };
  return { show, seen, reads: () => asked.filter(({ path }) => path.endsWith('/trails')).length };
}

it('keeps an hour that is answered a moment after the newest frame, in the minute that comes', async () => {
  const { show, seen, reads } = await openHall('12:00:59.900', () => at('12:01:00.000'));
  expect(seen()).toBe(3);
  await show('12:01:00.900');
  expect([seen(), reads()]).toEqual([3, 1]);
  await show('12:02:00.900');
  expect([seen(), reads()]).toEqual([4, 1]);
});

it('keeps its hour while the clock is set back over one minute', async () => {
  const { show, seen, reads } = await openHall('12:01:00.000', () => at('12:01:00.000'));
  await show('12:00:59.500');
  await show('12:01:00.500');
  expect([seen(), reads()]).toEqual([3, 1]);
});

it('is read again where the clock was set back by more, also by a minute and again a minute', async () => {
  const { show, seen, reads } = await openHall('12:10:00.000', () => at('11:10:00.000'));
  await show('11:10:01.000');
  expect([seen(), reads()]).toEqual([3, 2]);
  await show('11:09:30.000');
  expect(reads()).toBe(2);
  await show('11:08:30.000');
  expect(reads()).toBe(3);
});

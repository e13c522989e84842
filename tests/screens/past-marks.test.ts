import { hallTrailsSchema } from '@ebbline/shared/contract/hall-trails';
import { pastHallSchema } from '@ebbline/shared/contract/past';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aHallFrame, aLine, anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { pastMarks } from './fixtures/past-marks';
import { moment, pictureOf } from './fixtures/past-picture';

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const none = { ...pastMarks, marks: [], gaps: [] };
const lost = (): Response => new Response('{}', { status: 503 });
const secondOf = (path: string): string => new URL(path, 'http://test').searchParams.get('at') ?? '';
const hallAt = (path: string) =>
  pastHallSchema.parse({ ...moment(secondOf(path)), frame: pictureOf(aHallFrame([aLine('e1')])) });

/** A past second of a hall. @param answers in turn, the last one from then on */
async function show(path: string, answers: readonly unknown[]): Promise<{ shown: Page; asked: () => number }> {
  const server = new FakeServer();
  let asked = 0;
  opened = await openPage(server, '/halls/east/past?at=2026-03-01T02:13:07Z', {
    '/api/past/halls/east': hallAt,
    '/api/past/marks': pastMarks,
    [path]() {
      asked += 1;
      const answer = answers[Math.min(asked, answers.length) - 1];
      return typeof answer === 'function' ? (answer as () => unknown)() : answer;
    },
  });
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return { shown: opened, asked: () => asked };
}
const pass = async (ms: number): Promise<void> => {
  await vi.advanceTimersByTimeAsync(ms);
  await flushPromises();
};
const again = ({ page }: Page) => page.findAll('button').find((one) => one.text() === 'Ask again');

describe('what happened in a past period', () => {
  it('is asked for again while the period goes on, and no more once all of it is on record', async () => {
    const during = { ...none, now: '2026-03-01T02:20:00.000Z' };
    const { asked, shown } = await show('/api/past/marks', [
      during,
      { ...pastMarks, now: '2026-03-01T02:21:30.000Z' },
      pastMarks,
    ]);
    const next = () => shown.page.findAll('button').find((one) => one.text() === 'Next alarm');
    expect(shown.page.get('.past-list summary').text()).toBe('Nothing happened in this period');
    expect(next()?.attributes('disabled')).toBeDefined();
    await pass(30_000);
    expect(shown.page.get('.past-list summary').text()).toBe('What happened in this period: 5');
    expect(next()?.attributes('disabled')).toBeUndefined();
    await pass(30_000);
    expect(asked()).toBe(3);
    await pass(120_000);
    expect(asked()).toBe(3);
  });

  it('can be asked for again where it could not be read, and is by itself', async () => {
    const { asked, shown } = await show('/api/past/marks', [lost, lost, pastMarks]);
    expect(shown.page.text()).toContain('What happened in this period can’t be read: ');
    await again(shown)?.trigger('click');
    await flushPromises();
    expect(asked()).toBe(2);
    expect(shown.page.text()).toContain('What happened in this period can’t be read: ');
    await pass(30_000);
    expect(shown.page.get('.past-list summary').text()).toBe('What happened in this period: 5');
    expect(again(shown)).toBeUndefined();
  });

  it('stays where it could not be read anew, with the time up to which it is known', async () => {
    const { shown } = await show('/api/past/marks', [{ ...pastMarks, now: '2026-03-01T02:21:30.000Z' }, lost]);
    await pass(30_000);
    expect(shown.page.get('.past-list summary').text()).toBe('What happened in this period: 5');
    const text = shown.page.text().replaceAll('\u00a0', ' ').replace(/\s+/g, ' ');
    expect(text).toContain('What happened in this period after 2026-03-01 03:21:30 can’t be read: ');
    expect(again(shown)).toBeDefined();
  });
});

describe('the hour before a past second', () => {
  it('is asked for again by itself where it could not be read', async () => {
    const cells = (pa: number) => [...Array<null>(58).fill(null), pa, null];
    const trails = [{ unit: 'e1', lowestPa: cells(30_000), highestPa: cells(90_000) }];
    const hour = hallTrailsSchema.parse({ hall: 'east', minute: '2026-03-01T02:13:00.000Z', trails });
    const { shown } = await show('/api/past/halls/east/trails', [lost, hour]);
    await flushPromises();
    expect(shown.page.text()).toContain('the hour before can’t be read');
    await pass(30_000);
    expect(shown.page.text()).not.toContain('the hour before can’t be read');
    expect(shown.page.find('[data-testid=strip-e1-trail]').exists()).toBe(true);
  });
});

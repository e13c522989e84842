import type { SetupPoint } from '@ebbline/shared/contract/setup';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aReading, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
let arriving: Readonly<Record<string, SetupPoint['arriving']>> = {};
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const pointsOf = (path: string) => ({
  unit: path.split('/')[3] ?? '',
  time: noon,
  points: Object.entries(arriving).map(([id, state]) => ({
    reading: aReading(id, state === 'never' ? null : 35, 'Cel'),
    title: id,
    topic: `plant/${id}`,
    path: [],
    period: 1,
    arriving: state,
  })),
  notWatched: [],
});

async function show(): Promise<VueWrapper> {
  const answers = { '/api/units/e7/setup': pointsOf, '/api/units/e1/setup': pointsOf };
  opened = await openPage(new FakeServer(), '/setup/e7', answers);
  await flushPromises();
  return opened.page;
}
const ask = async (): Promise<void> => {
  await vi.advanceTimersByTimeAsync(3100);
  await flushPromises();
};
const listed = (page: VueWrapper): string[] =>
  page.findAll('.arrivals tbody tr').map((row) => row.attributes('data-testid')?.replace('arrival-', '') ?? '');
const leaveOut = (page: VueWrapper) => page.findAll('button').find((one) => one.text().startsWith('Leave out'));

describe('points that begin to arrive while somebody reads the list of those that do not', () => {
  it('stay where they are, with the state of now, until they are left out', async () => {
    arriving = { 'supply.temperature': 'arriving', 'return.temperature': 'never', 'loop.flow': 'silent' };
    const page = await show();
    expect(listed(page)).toEqual(['return.temperature', 'loop.flow']);
    expect(leaveOut(page)).toBeUndefined();

    arriving = { 'supply.temperature': 'silent', 'return.temperature': 'arriving', 'loop.flow': 'silent' };
    await ask();
    expect(listed(page)).toEqual(['supply.temperature', 'return.temperature', 'loop.flow']);
    expect(page.get('[data-testid="arrival-return.temperature"]').text()).toContain('arriving');
    expect(leaveOut(page)?.text()).toBe('Leave out 1 that arrives by now');

    await leaveOut(page)?.trigger('click');
    expect(listed(page)).toEqual(['supply.temperature', 'loop.flow']);
    expect(leaveOut(page)).toBeUndefined();
  });

  it('are listed no more once another unit is looked at', async () => {
    arriving = { 'return.temperature': 'never' };
    const page = await show();
    arriving = { 'return.temperature': 'arriving' };
    await ask();
    expect(listed(page)).toEqual(['return.temperature']);
    await opened?.router.push('/setup/e1');
    await ask();
    expect(listed(page)).toEqual([]);
  });
});

import type { HallFrame, LoopLine } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { nextTick } from 'vue';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aFigure, aHallFrame, aLine, anAlarm, aWindow, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { openPage, type Page } from './fixtures/mount-page';
import { until } from '../helpers/until';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

async function show(frame: HallFrame, address: string, answers: Readonly<Record<string, unknown>> = {}) {
  const server = new FakeServer();
  opened = await openPage(server, address, answers);
  server.connect();
  server.send(frame);
  await flushPromises();
  return { ...opened, server };
}
const many = (count: number, more: (at: number) => Partial<LoopLine> = () => ({})): readonly LoopLine[] =>
  Array.from({ length: count }, (_, at) => aLine(`u${at}`, { name: `Unit ${at}`, ...more(at) }));
const worst = { ...anAlarm('u3:AIR-1'), detail: null };
const minutes = (pa: number): (number | null)[] => [...Array<null>(58).fill(null), pa, null];
const trailsOf = (unit: string) => ({
  hall: 'east',
  minute: noon,
  trails: [{ unit, lowestPa: minutes(30_000), highestPa: minutes(90_000) }],
});
const trailOf = (page: VueWrapper): string =>
  page.find('[data-testid=strip-e1-trail]').exists()
    ? (page.get('[data-testid=strip-e1-trail]').attributes('d') ?? '')
    : '';

describe('the last hour of a strip', () => {
  it('is read once, and goes on from frame to frame', async () => {
    const { page, server, asked } = await show(aHallFrame([aLine('e1')]), '/halls/east', {
      '/api/halls/east/trails': trailsOf('e1'),
    });
    const first = trailOf(page);
    // Two minutes: what was read, and what the frame shows.
    expect(first.match(/V/g)).toHaveLength(4);
    server.send(aHallFrame([aLine('e1', { pressureWindow: aWindow({ lowestPa: 20_000 }) })]));
    await nextTick();
    expect(trailOf(page)).not.toBe(first);
    expect(asked.filter(({ path }) => path.endsWith('/trails'))).toHaveLength(1);
  });

  it('is read again where minutes passed without a frame, and after a lost connection', async () => {
    const { server, asked } = await show(aHallFrame([aLine('e1')]), '/halls/east', {
      '/api/halls/east/trails': trailsOf('e1'),
    });
    const reads = (): number => asked.filter(({ path }) => path.endsWith('/trails')).length;
    server.send(aHallFrame([aLine('e1')], { time: '2026-03-01T12:04:00.000Z' }));
    await flushPromises();
    expect(reads()).toBe(2);
    server.disconnect();
    await nextTick();
    server.connect();
    await flushPromises();
    expect(reads()).toBe(3);
  });

  it('begins with the first frame where it can not be read', async () => {
    const { page } = await show(aHallFrame([aLine('e1')]), '/halls/east');
    expect(trailOf(page).match(/V/g)).toHaveLength(2);
  });
});

describe('a hall of many units', () => {
  it('shows each in a small row that leads to it, and in words only who needs a person', async () => {
    const { page } = await show(aHallFrame(many(40, (at) => (at === 3 ? { worst } : {}))), '/halls/east');
    expect(page.findAll('.small-row')).toHaveLength(40);
    expect(page.find('.loop-row').exists()).toBe(false);
    const row = page.get('[data-testid=loop-u3]');
    expect(row.get('a').attributes('href')).toBe('/units/u3');
    expect(row.get('[role=img]').attributes('aria-label')).toBe('priority 2, act soon');
    expect(row.get('.small-margin').text().replaceAll('\u00a0', ' ')).toBe('vacuum margin 15.0 kPa');
    expect(page.get('.need-lines').text()).toContain(worst.title);
    expect(page.findAll('.need-lines li')).toHaveLength(1);
  });

  it('has beside each the margin that is too small, whichever side it is on', async () => {
    const pressureWindow = aWindow({ lowestPa: 5_100, lowerWallMargin: aFigure(-4_900) });
    const { page } = await show(aHallFrame(many(40, (at) => (at === 3 ? { pressureWindow } : {}))), '/halls/east');
    const number = page.get('[data-testid=loop-u3] .small-margin');
    expect(number.text().replaceAll('\u00a0', ' ')).toMatch(/^margin to the lower wall −4\.90? kPa$/);
    expect(number.classes()).toContain('too-small');
  });

  it('says how many more need a person than have their words, and keeps the place of the words where nobody does', async () => {
    const { page } = await show(aHallFrame(many(40, () => ({ worst }))), '/halls/east');
    const told = page.findAll('.need-lines li').length;
    expect(page.get('.need-lines > p').text()).toContain(`and ${40 - told} more`);
    page.unmount();
    const calm = await show(aHallFrame(many(40)), '/halls/east');
    expect(calm.page.find('.need-lines').exists()).toBe(true);
  });

  it.each([
    ['bad where its margin came just now and can not be used', 'bad', aFigure(null, { reasons: ['outOfRange'] })],
    ['old where it came a while ago', 'old', aFigure(null, { age: 40, reasons: ['inputBad'] })],
    ['nothing where it is only waited for', '', aFigure(null, { reasons: ['warming'] })],
  ])('says of a loop %s', async (_, word, vacuumMargin) => {
    const lines = many(30, (at) => (at === 0 ? { pressureWindow: aWindow({ vacuumMargin }) } : {}));
    const { page } = await show(aHallFrame(lines), '/halls/east');
    expect(page.get('[data-testid=loop-u0] .small-word').text()).toBe(word);
  });

  it('marks a loop of which nothing fresh is known as old, with no margin that looks fresh', async () => {
    const stale = aWindow({ vacuumMargin: { ...aWindow().vacuumMargin, reasons: ['stale'], quality: 'bad' } });
    const { page } = await show(
      aHallFrame(many(30, (at) => (at === 0 ? { pressureWindow: stale } : {}))),
      '/halls/east',
    );
    const row = page.get('[data-testid=loop-u0]');
    expect(row.get('.small-margin').classes()).toContain('small-old');
    expect(row.text()).toContain('old');
    expect(page.get('[data-testid=loop-u1] .small-margin').classes()).not.toContain('small-old');
  });

  it.each(['small', 'full'])('looks up no link of its %s rows anew when only values came', async (rows) => {
    const shown = await show(aHallFrame(many(40)), `/halls/east?rows=${rows}`);
    const looked = vi.spyOn(shown.router, 'resolve');
    shown.server.send(aHallFrame(many(40, () => ({ vacuumReserve: aFigure(0.0052), heatRemoved: aFigure(1000) }))));
    await flushPromises();
    expect(shown.page.text()).toContain(rows === 'full' ? 'of 240' : 'U');
    // What stands over the rows leads to the first of them.
    const ofRows = looked.mock.calls.filter(([to]) => /\bu[1-9]/.test(JSON.stringify(to)));
    expect(ofRows).toEqual([]);
  });

  it('is ordered by need where the address says so, with a heading for each', async () => {
    const { page } = await show(
      aHallFrame(many(5, (at) => (at === 3 ? { worst } : {}))),
      '/halls/east?order=need&rows=small',
    );
    const shown = page.findAll('.small-rows > li').map((row) => row.attributes('data-testid') ?? row.text());
    expect(shown.slice(0, 3)).toEqual(['A person is needed: 1', 'loop-u3', 'Calm: 4']);
  });

  it('keeps order and groups in the address while a value of the hall is opened', async () => {
    const { page } = await show(aHallFrame([aLine('e1')]), '/halls/east?order=need');
    const opens = page.findAll('.figure a').map((link) => link.attributes('href'));
    expect(opens.some((address) => address?.includes('order=need') === true && address.includes('value='))).toBe(true);
  });
});

describe('a hall on a wall', () => {
  const wall = '/halls/east?wall=on';
  it('is dark, has nothing to be operated, tells every loop that needs somebody, and leaves by Escape', async () => {
    const lines = many(30, (at) => (at < 12 ? { worst: { ...worst, id: `u${at}` } } : {}));
    const { page, router } = await show(aHallFrame(lines), wall);
    await until(() => page.find('[data-testid=wall]').exists());
    const { wall: onWall, theme } = document.documentElement.dataset;
    expect([onWall, theme]).toEqual(['on', 'dark']);
    expect(page.findAll('.wall-needs li').map((one) => one.get('b').text())).toEqual(
      lines.slice(0, 12).map(({ name }) => name),
    );
    expect(page.findAll('[data-testid=wall] button')).toHaveLength(0);
    expect(page.findAll('.wall-field a')).toHaveLength(0);
    expect(page.get('.wall-foot').text()).toContain('Number beside a unit: vacuum margin in kPa; heavy');
    window.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }));
    await flushPromises();
    await until(() => !page.find('[data-testid=wall]').exists());
    expect(router.currentRoute.value.fullPath).toBe('/halls/east');
    expect('wall' in document.documentElement.dataset).toBe(false);
    expect(document.documentElement.dataset['theme']).toBe('light');
  });

  it('tells what calls in other halls', async () => {
    const call = { id: 'w1:AIR-1', unit: 'w1', title: '', where: null, priority: 1, since: '' } as const;
    const { page } = await show(aHallFrame(many(3), { calling: { total: 1, newest: [call] } }), wall);
    await until(() => page.find('[data-testid=wall]').exists());
    expect(page.get('.wall-elsewhere').text()).toBe('In other halls not acknowledged: 1 × act now.');
  });

  it('keeps the screen awake where the browser lets it, and says so where it does not', async () => {
    const release = vi.fn(() => Promise.resolve());
    const request = vi.fn(() => Promise.resolve({ release, addEventListener: () => undefined }));
    Object.defineProperty(navigator, 'wakeLock', { value: { request }, configurable: true });
    const { page } = await show(aHallFrame(many(3)), wall);
    await until(() => page.text().includes('The screen is kept awake.'));
    expect(request).toHaveBeenCalledWith('screen');
    page.unmount();
    expect(release).toHaveBeenCalledOnce();
    Reflect.deleteProperty(navigator, 'wakeLock');
    const without = await show(aHallFrame(many(3)), wall);
    await until(() => without.page.text().includes('does not keep the screen awake'));
  });
});

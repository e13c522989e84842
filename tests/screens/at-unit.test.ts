import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { sayClock, saySource } from '../../frontend/src/screens/loop/at-unit/at-unit-words';
import { toPointMap } from '../../frontend/src/screens/loop/point-map';
import { aBranch, aFigure, aLine, aLoopFrame, anAlarm, aPermit, aReading, aWindow } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { plain } from './fixtures/loop-shown';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

async function show(frame: LoopFrame, answers: Record<string, unknown> = {}): Promise<Page & { server: FakeServer }> {
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7/at-unit', answers);
  server.connect();
  server.send(frame);
  await flushPromises();
  return { ...opened, server };
}
const said = ({ page }: Page, name: string): string => plain(page.get(`[data-testid=at-unit-${name}]`).text());

const points = [
  aReading('loop.flow', 0.0057, 'm3/s'),
  aReading('vacuum.running', 1, '1'),
  aReading('vacuum.available', 0, '1'),
  aReading('openingsCarried', 1.7, '1', { kind: 'derived' }),
  aReading('timeToEmpty', 90, 's', { kind: 'derived' }),
  aReading('timeToFull', null, 's', { kind: 'derived', age: 1, reasons: ['notApplicable'] }),
];

describe('the panel at a unit', () => {
  it('shows the few values with unit, place and source, a margin below its guard in words, and a clock that runs as a time', async () => {
    const line = aLine('e7', { pressureWindow: aWindow({ highestPa: 96_900, vacuumMargin: aFigure(4_100) }) });
    const page = await show(aLoopFrame({ line, points }));
    expect(said(page, 'margin')).toMatch(/^vacuum margin .*4\.1 kPa.*below its guard/);
    expect(said(page, 'flow')).toContain('342.0 L/min');
    expect(said(page, 'reserve')).toContain('running, no standby ready');
    expect(said(page, 'reserve')).toContain('carries 1.7 open hoses');
    expect(said(page, 'clocks')).toMatch(/tank is empty in 90 s/);
    expect(said(page, 'clocks')).toContain('Separator is not filling');
  });

  it('says in words that one source does not carry the air that comes in', async () => {
    const page = await show(aLoopFrame({ line: aLine('e7', { vacuumReserve: aFigure(-0.0018) }), points }));
    expect(said(page, 'reserve')).toContain('more air than one source carries');
  });

  it('says beside each figure that stands under another, and beside a clock, that it is to be doubted', async () => {
    const doubt: Partial<Reading> = { quality: 'uncertain', reasons: ['outOfRange'] };
    const doubtful = [
      aReading('loop.flow', 0.0057, 'm3/s'),
      aReading('flowShare', 0.93, '1', { kind: 'derived', ...doubt }),
      aReading('vacuum.running', 1, '1'),
      aReading('openingsCarried', 1.7, '1', { kind: 'derived', ...doubt }),
      aReading('chipPower', 240_000, 'W', { kind: 'derived', ...doubt }),
      aReading('timeToEmpty', 90, 's', { kind: 'derived', ...doubt }),
    ];
    const page = await show(aLoopFrame({ points: doubtful }));
    for (const name of ['flow', 'reserve', 'heat', 'clocks']) {
      const marks = page.page.findAll(`[data-testid=at-unit-${name}] .quality`);
      expect(
        marks.map((mark) => plain(mark.text())),
        name,
      ).toEqual([expect.stringContaining('uncertain')]);
    }
    const sound = await show(aLoopFrame({ points }));
    expect(sound.page.find('.quality').exists()).toBe(false);
  });

  it('opens a value that is worked out over itself', async () => {
    const { page, router } = await show(aLoopFrame({ points }));
    await page.get('[data-testid=at-unit-margin] a').trigger('click');
    await flushPromises();
    expect(router.currentRoute.value).toMatchObject({ name: 'at-unit', query: { value: 'vacuumMargin' } });
  });

  it('leaves no way out of the unit in its head, and one to the whole loop at its foot', async () => {
    const { page } = await show(aLoopFrame());
    expect(page.find('.places-nav').exists()).toBe(false);
    expect(page.find('.brand').exists()).toBe(false);
    expect(page.get('.at-unit-bar a').attributes('href')).toBe('/units/e7');
  });

  it('shows every alarm that stands whole, the followers of another too, and folds none away', async () => {
    const first = anAlarm('e7:AIR-1', { priority: 1 });
    const follower = anAlarm('e7:FLOW-3', { priority: 2, foldedUnder: 'e7:AIR-1' });
    const { page } = await show(aLoopFrame({ alarms: [follower, first] }));
    const cards = page.findAll('.at-unit-alarm').map((card) => plain(card.text()));
    expect(cards).toHaveLength(2);
    for (const alarm of [first, follower])
      for (const part of [alarm.action, alarm.cause, alarm.consequence])
        expect(cards[alarm === first ? 0 : 1]).toContain(part);
    expect(cards[1]).toContain('follows from');
    expect(page.get('.at-unit-standing h2').text()).toBe('2 alarms stand');
  });

  it('says of a branch that is valved off that the margin does not speak for it, and lists the open permits', async () => {
    const page = await show(
      aLoopFrame({ branches: [aBranch('1', 0, { state: 'isolated' })], permits: [aPermit('p1')] }),
    );
    expect(page.page.text()).toContain('its trapped water is not protected');
    expect(page.page.find('.permit').exists()).toBe(true);
    expect(page.page.get('.at-unit-bar').text()).toContain('Permits: 1');
  });

  it('stands by what hurts: cautions, and that it is no safety system', async () => {
    const { page } = await show(aLoopFrame());
    for (const word of ['under vacuum', 'biocide', 'Lock out', 'no safety system'])
      expect(page.get('.at-unit-cautions').text()).toContain(word);
  });

  it('claims no calm where no data comes any more', async () => {
    const { page, server } = await show(aLoopFrame());
    expect(page.get('.at-unit-standing').text()).toContain('Nothing here needs a person');
    server.disconnect();
    server.nowMs += 10_000;
    await vi.waitFor(() => expect(page.get('.at-unit-standing').text()).toContain('what stands is not known'), 5_000);
    expect(page.get('.at-unit-standing').text()).not.toContain('Nothing');
  });
});

describe('acknowledging at the unit', () => {
  const alarm = anAlarm('e7:AIR-1', { priority: 1 });
  const answer = (more: Partial<Alarm>) => ({ '/api/alarms/e7%3AAIR-1/acknowledge': { ...alarm, ...more } });

  it('begins low on the panel, and is shown as done when the server has said so', async () => {
    const { page, asked } = await show(
      aLoopFrame({ alarms: [alarm] }),
      answer({ state: 'acknowledged', acknowledgedBy: 'Ada' }),
    );
    Element.prototype.scrollIntoView = () => undefined;
    const next = page.get('[data-testid=at-unit-next]');
    expect(next.text()).toBe('Acknowledge the alarm…');
    await next.trigger('click');
    await flushPromises();
    expect(page.get('.at-unit-alarm').text()).not.toContain('Confirmed');
    await page.get('.at-unit-alarm form').trigger('submit');
    await flushPromises();
    expect(asked.map(({ path }) => path)).toContain('/api/alarms/e7%3AAIR-1/acknowledge');
    expect(page.get('.at-unit-alarm').text()).toContain('Confirmed by the server');
    expect(page.get('.at-unit-alarm').classes()).toContain('is-seen');
    // No newer frame has come: the bar goes by the server's answer, as the alarm does.
    expect(next.text()).toBe('None to acknowledge');
  });

  it('goes on to the next alarm once one is confirmed, also before a newer frame has come', async () => {
    const other = anAlarm('e7:FLOW-3', { priority: 2 });
    const { page } = await show(
      aLoopFrame({ alarms: [alarm, other] }),
      answer({ state: 'acknowledged', acknowledgedBy: 'Ada' }),
    );
    Element.prototype.scrollIntoView = () => undefined;
    const next = page.get('[data-testid=at-unit-next]');
    expect(next.text()).toBe('Acknowledge 1 of 2…');
    await next.trigger('click');
    await flushPromises();
    await page.get('.at-unit-alarm form').trigger('submit');
    await flushPromises();
    expect(next.text()).toBe('Acknowledge the alarm…');
    await next.trigger('click');
    await flushPromises();
    expect(page.find('[data-testid="at-unit-alarm-e7:FLOW-3"] form').exists()).toBe(true);
  });

  it('says so where the server refuses, and leaves the alarm waiting', async () => {
    const { page } = await show(aLoopFrame({ alarms: [alarm] }));
    await page.get('.at-unit-act').trigger('click');
    await page.get('.at-unit-alarm form').trigger('submit');
    await flushPromises();
    expect(page.get('.at-unit-alarm [role=alert]').text()).not.toBe('');
    expect(page.get('.at-unit-alarm').classes()).not.toContain('is-seen');
  });

  it('opens no form of a reset by the form of an acknowledgement that somebody else gave meanwhile', async () => {
    const latched = { ...alarm, state: 'latchedUnacknowledged' } as const;
    const { page, server } = await show(aLoopFrame({ alarms: [latched] }));
    await page.get('.at-unit-act').trigger('click');
    expect(page.get('.at-unit-alarm form').attributes('aria-label')).toContain('Acknowledge');
    const acknowledgedAt = '2026-03-01T11:50:00.000Z';
    server.send(
      aLoopFrame({
        alarms: [{ ...latched, state: 'latchedAcknowledged', acknowledgedBy: 'B. Other', acknowledgedAt }],
      }),
    );
    await flushPromises();
    expect(page.find('.at-unit-alarm form').exists()).toBe(false);
    expect(page.get('.at-unit-act').text()).toContain('Reset…');
  });
});

describe('the words of the panel', () => {
  const clock = (reasons: Parameters<typeof aReading>[3]) =>
    sayClock('timeToEmpty', aReading('timeToEmpty', null, 's', reasons), 'supply tank');
  it('tell a clock that is not known from one that does not run', () => {
    expect(clock({ reasons: ['notApplicable'], age: 1 })).toBe('Supply tank is not emptying');
    expect(clock({ reasons: ['notApplicable'], age: null })).toBe('Supply tank: no clock at this unit');
    expect(clock({ reasons: ['warming'], age: 1 })).toBe('Supply tank: not watched long enough');
    expect(clock({ reasons: ['undefined'], age: 1 })).toBe('Supply tank: too slow to tell');
    expect(clock({ reasons: ['inputBad'], age: 1 })).toContain('not known, an input is bad');
  });

  it('say of a source only what is known of it', () => {
    expect(saySource(toPointMap([]))).toEqual([]);
    expect(saySource(toPointMap([aReading('vacuum.running', 0, '1')]))).toEqual(['not running']);
    expect(saySource(toPointMap([aReading('vacuum.running', 1, '1', { quality: 'bad' })]))).toEqual([]);
  });
});

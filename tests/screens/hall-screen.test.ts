import type { BesideAlarm, HallFrame } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { nextTick } from 'vue';
import { afterEach, describe, expect, it } from 'vitest';
import { aFigure, aHallFrame, aLine, anAlarm, aWindow, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { mountPage } from './fixtures/mount-page';

let page: VueWrapper | null = null;
afterEach(() => page?.unmount());

async function show(frame: HallFrame, address = '/halls/east'): Promise<VueWrapper> {
  const server = new FakeServer();
  page = await mountPage(server, address);
  server.connect();
  server.send(frame);
  await nextTick();
  return page;
}

const tooSmall = aWindow({ highestPa: 96_900, vacuumMargin: aFigure(4_100), lowerWallMargin: aFigure(48_000) });
const barometer: BesideAlarm = {
  ...{ id: 'east:AMB-1', hall: 'east', title: 'Barometer differs', where: null, since: noon, acknowledgedBy: null },
  priority: 3,
  state: 'unacknowledged',
};

describe('the Hall screen', () => {
  it('shows the first hall of the site where the address names none', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/');
    server.connect();
    expect(server.asked).toEqual([{ screen: 'hall', hall: 'east' }]);
  });

  it('shows no frame of another hall', async () => {
    const shown = await show(aHallFrame([aLine('w1')], { hall: 'west' }));
    expect(shown.find('[data-testid=loop-w1]').exists()).toBe(false);
    expect(shown.text()).toContain('Waiting for the first values');
  });

  it('gives each headline figure its unit, its uncertainty and its age', async () => {
    const shown = await show(aHallFrame([aLine('e1')]));
    const text = shown.get('.figures').text().replaceAll('\u00a0', ' ');
    expect(text).toContain('3420 ± 50 kW');
    expect(text).toContain('86.7 %');
    expect(text).toContain('4.1 ± 0.6 kPa');
    expect(text).toContain('kPa absolute');
    expect(shown.findAll('.figure .age')).toHaveLength(shown.findAll('.figure').length);
  });

  it('draws the edges of a strip where its own axis has the pressures, to a hundredth of a pixel', async () => {
    const shown = await show(aHallFrame([aLine('e1')]));
    const strip = shown.get('[data-testid=strip-e1]');
    const of = (name: string): number => Number(strip.attributes(`data-axis-${name}`));
    const x = (pa: number): number =>
      of('x0') + ((pa - of('min-pa')) / (of('max-pa') - of('min-pa'))) * (of('x1') - of('x0'));
    const edges = (part: string): [number, number] => {
      const rect = shown.get(`[data-testid=strip-e1-${part}]`);
      const left = Number(rect.attributes('x'));
      return [left, left + Number(rect.attributes('width'))];
    };
    const expected: [string, number, number][] = [
      ['lower-wall', 0, 10_000],
      ['gap-left', 10_000, 42_000],
      ['bar', 42_000, 86_000],
      ['gap-right', 86_000, 101_000],
    ];
    for (const [part, from, to] of expected) {
      expect(edges(part)[0], part).toBeCloseTo(x(from), 2);
      expect(edges(part)[1], part).toBeCloseTo(x(to), 2);
    }
    expect(edges('ambient')[0]).toBeCloseTo(x(101_000), 2);
  });

  it('fills a gap only where it lies below its guard, with the shape and number of its priority', async () => {
    const shown = await show(aHallFrame([aLine('e1'), aLine('e7', { pressureWindow: tooSmall })]));
    const filled = shown.findAll('[data-too-small=true]').map((gap) => gap.attributes('data-testid'));
    expect(filled).toEqual(['strip-e7-gap-right']);
    expect(shown.find('[data-testid=strip-e1] .priority-shape').exists()).toBe(false);
    expect(shown.get('[data-testid=strip-e7] .priority-shape').text()).toBe('2');
  });

  it('says how many need a person, with the way to the alarms, and is calm in one sentence where all is well', async () => {
    const worst = { ...anAlarm('e7:AIR-1'), detail: null };
    const shown = await show(aHallFrame([aLine('e1'), aLine('e7', { worst })]));
    expect(shown.get('.hall-word').text()).toContain('1 unit of 2 needs a person.');
    expect(shown.get('.hall-word a').attributes('href')).toBe('/alarms');
    expect(shown.get('.hall-word').attributes('data-calm')).toBe('false');
    page?.unmount();
    const calm = await show(aHallFrame([aLine('e1'), aLine('e7')]));
    expect(calm.get('.hall-sentence').text()).toBe(
      'This hall is calm: all 2 units keep their margins and nobody is needed.',
    );
    expect(calm.get('.hall-word-age').text()).toMatch(/oldest margin < 3\ss/);
    expect(calm.get('.hall-word [role=status]').text()).toBe('This hall is calm.');
    expect(calm.find('.hall-word a[href="/alarms"]').exists()).toBe(false);
  });

  it('tells an alarm that is of no single unit, and is not calm by it', async () => {
    const shown = await show(aHallFrame([aLine('e1')], { beside: [barometer] }));
    expect(shown.get('.hall-word').text()).toContain('1 alarm of no single unit stands.');
    expect(shown.get('.beside-lines').text()).toContain('Barometer differs');
    expect(shown.get('.beside-lines [role=img]').attributes('aria-label')).toBe('priority 3, look into it');
  });

  it('says which gateway or measurement of no single unit it is', async () => {
    const shown = await show(aHallFrame([aLine('e1')], { beside: [{ ...barometer, where: 'north-a' }] }));
    expect(shown.get('.beside-lines').text()).toContain('Barometer differs north-a, look into it');
  });

  it('says that the oldest margin is old where nothing new came of it in time', async () => {
    const stale = aWindow({ vacuumMargin: aFigure(15_000, { age: 540, quality: 'bad', reasons: ['stale'] }) });
    const shown = await show(aHallFrame([aLine('e1'), aLine('e7', { pressureWindow: stale })]));
    expect(shown.get('.hall-word-age').text()).toMatch(/oldest margin old, 9\smin/);
  });

  it('is not calm either by one that somebody has acknowledged: it still stands, and is told as that', async () => {
    const seen: BesideAlarm = { ...barometer, state: 'acknowledged', acknowledgedBy: 'Ada' };
    const shown = await show(aHallFrame([aLine('e1')], { beside: [seen] }));
    expect(shown.get('.hall-word').attributes('data-calm')).toBe('false');
    expect(shown.get('.hall-sentence').text()).toBe('1 alarm of no single unit stands.');
    expect(shown.get('.beside-lines').text()).toContain('Barometer differs look into it, acknowledged by Ada');
    expect(shown.find('.beside-lines .priority-shape.outlined').exists()).toBe(true);
  });

  it('says where on the water’s way the smallest margin is', async () => {
    const shown = await show(aHallFrame([aLine('e1')]));
    const figure = shown.findAll('.figure').find((one) => one.text().includes('smallest vacuum margin'));
    expect(figure?.text()).toContain('supply main low');
    expect(figure?.get('a[href="/units/e1"]').text()).toBe('E1');
  });

  it('sends nobody to a plant whose alarm is over', async () => {
    const over = {
      ...anAlarm('e7:COM-1', { state: 'returnedUnacknowledged', action: 'Walk to the units.' }),
      detail: null,
    };
    const line = (await show(aHallFrame([aLine('e7', { worst: over })]))).get('.person-action').text();
    expect(line).toContain('condition gone, not acknowledged');
    expect(line).not.toContain('Walk');
    expect(line).not.toContain('act soon');
  });

  it('speaks only where a person is needed: mark, word, title, where, action', async () => {
    const worst = anAlarm('e7:MARGIN-1');
    const shown = await show(aHallFrame([aLine('e1'), aLine('e7', { worst, moreAlarms: 2 })]));
    expect(shown.get('[data-testid=loop-e1] .person-line').text()).toBe('');
    const line = shown.get('[data-testid=loop-e7] .person-line');
    for (const part of [worst.title, worst.where ?? '', worst.action, 'act soon', 'and 2 more'])
      expect(line.text()).toContain(part);
    expect(line.get('[role=img]').attributes('aria-label')).toBe('priority 2, act soon');
    expect(line.find('.priority-shape.priority-2 path').exists()).toBe(true);
  });

  it('says what this alarm is of before what its kind wants done', async () => {
    const worst = anAlarm('e7:AIR-1', { detail: 'Air, Rack 5 probable. Carries this one and 1 more.' });
    const shown = await show(aHallFrame([aLine('e7', { worst })]));
    const line = shown.get('[data-testid=loop-e7] .person-action').text();
    expect(line).toContain('Air, Rack 5 probable. ');
    expect(line).not.toContain('Carries');
    expect(line.indexOf('probable')).toBeLessThan(line.indexOf(worst.action));
  });

  it('says which of heat and chip power is not known, and gives the other its unit', async () => {
    const lines = [aLine('e1', { chipPower: aFigure(null) }), aLine('e7', { heatRemoved: aFigure(null) })];
    const shown = await show(aHallFrame(lines));
    const words = (unit: string): string =>
      shown.get(`[data-testid=loop-${unit}] .heat-words`).text().replaceAll('\u00a0', ' ');
    expect(words('e1')).toBe('208 kWchip power not known');
    expect(words('e7')).toBe('of 240 kWheat not known');
    const figures = shown.get('.figures').text();
    expect(figures).not.toContain('an input is bad');
  });

  it('says a mode that is not running, and a mode that is not known', async () => {
    const shown = await show(aHallFrame([aLine('e1', { mode: 'draining' }), aLine('e7', { modeKnown: false })]));
    expect(shown.get('[data-testid=loop-e1]').text()).toContain('draining');
    expect(shown.get('[data-testid=loop-e7]').text()).toContain('mode not known, judged as running');
  });

  it('says that there is no value, and why, and draws no bar', async () => {
    const window = aWindow({
      lowestPa: null,
      highestPa: null,
      lowerWallPa: null,
      vacuumMargin: aFigure(null, { reasons: ['stale'] }),
    });
    const line = aLine('e1', { pressureWindow: window, heatRemoved: aFigure(null), chipPower: aFigure(null) });
    const shown = await show(aHallFrame([line]));
    expect(shown.find('[data-testid=strip-e1-bar]').exists()).toBe(false);
    expect(shown.get('[data-testid=strip-e1] .missing').text()).toBe('no value: no new value in time');
    expect(shown.get('[data-testid=loop-e1] .heat-text').text()).toBe('no value');
  });

  it('leads from a loop’s name to the loop', async () => {
    const shown = await show(aHallFrame([aLine('e7')]));
    expect(shown.get('[data-testid=loop-e7] .loop-name a').attributes('href')).toBe('/units/e7');
  });

  it('names the wall that binds, and tells the strip as a sentence', async () => {
    const shown = await show(aHallFrame([aLine('e1', { pressureWindow: aWindow({ lowerWallKind: 'pumpInlet' }) })]));
    expect(shown.get('[data-testid=strip-e1] .wall-name').text()).toBe('pump inlet');
    expect(shown.get('[data-testid=strip-e1]').attributes('aria-label')).toContain('margin to pump inlet limit');
  });
});

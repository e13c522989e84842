import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { nextTick } from 'vue';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aBranch, aFigure, aLine, aLoopFrame, anAlarm, aPlace, aReading, aWindow } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { mountPage } from './fixtures/mount-page';

let page: VueWrapper | null = null;
afterEach(() => page?.unmount());

async function show(frame: LoopFrame): Promise<VueWrapper> {
  const server = new FakeServer();
  page = await mountPage(server, '/units/e7');
  server.connect();
  expect(server.asked).toEqual([{ screen: 'loop', unit: 'e7' }]);
  server.send(frame);
  await nextTick();
  return page;
}

describe('the Loop screen', () => {
  it('lists every point with value, unit, uncertainty, age, quality and where', async () => {
    const shown = await show(
      aLoopFrame({
        points: [
          aReading('vacuumMargin', 4_100, 'Pa', {
            kind: 'derived',
            expandedUncertainty: 600,
            where: 'supply main low',
          }),
        ],
      }),
    );
    const row = shown.get('[data-testid=point-vacuumMargin]').text().replaceAll('\u00a0', ' ');
    for (const part of ['Vacuum margin', 'at supply main low', '4.1 ± 0.6 kPa', '< 3 s', 'good'])
      expect(row).toContain(part);
  });

  it('says of a missing value that there is none, and why, in words', async () => {
    const shown = await show(aLoopFrame({ points: [aReading('facility.flow', null, 'm3/s')] }));
    const row = shown.get('[data-testid="point-facility.flow"]').text();
    expect(row).toContain('no value');
    // It never had one: an age of nothing would be one thing more to read.
    expect(row).not.toContain('age');
    expect(row).toContain('bad: never received');
    expect(row).not.toMatch(/\b0\b/);
  });

  it('draws the water’s way with a gap at a place without a value', async () => {
    const path = [aPlace('supply tank', 74_000), aPlace('filter', null), aPlace('separator', 32_000)];
    const shown = await show(aLoopFrame({ path }));
    expect(shown.get('.way').attributes('d')?.match(/M/g)).toHaveLength(2);
    expect(shown.get('.along-the-path').text()).toContain('no value');
  });

  it('marks the tightest place outside the unit only while the margin is below its guard', async () => {
    const path = [
      aPlace('pump', 138_000, { outsideUnit: false }),
      aPlace('supply main low', 96_900),
      aPlace('separator', 32_000),
    ];
    const fine = await show(aLoopFrame({ path }));
    expect(fine.find('.along-the-path .gap').exists()).toBe(false);
    fine.unmount();
    const line = aLine('e7', { pressureWindow: aWindow({ highestPa: 96_900, vacuumMargin: aFigure(4_100) }) });
    const tight = await show(aLoopFrame({ path, line }));
    expect(tight.find('.along-the-path .gap').exists()).toBe(true);
    expect(tight.get('.gap-words').text().replaceAll('\u00a0', ' ')).toBe('4.1 kPa below room air');
    expect(tight.get('.figures').text()).toContain('below guard');
  });

  it('colours a branch only where an alarm names it', async () => {
    const branches = [aBranch('1', 0.0007), aBranch('4', 0.0002)];
    const shown = await show(aLoopFrame({ branches, alarms: [anAlarm('e7:AIR-1', { where: 'Rack 4' })] }));
    const marked = shown.findAll('.branch.needs-person').map((branch) => branch.get('.branch-name > span').text());
    expect(marked).toEqual(['Rack 4']);
  });

  it('shows what stands with cause, consequence, first action, time and caution', async () => {
    const alarm = anAlarm('e7:MARGIN-1');
    const shown = await show(aLoopFrame({ alarms: [alarm] }));
    const card = shown.get('[data-testid="alarm-e7:MARGIN-1"]').text();
    for (const part of [alarm.cause, alarm.consequence, alarm.action, '8\u00a0min', 'licensed practice'])
      expect(card).toContain(part);
  });

  it('claims no calm where no data comes any more', async () => {
    const server = new FakeServer();
    page = await mountPage(server, '/units/e7');
    server.connect();
    server.send(aLoopFrame());
    await nextTick();
    server.disconnect();
    server.nowMs += 10_000;
    await vi.waitFor(() => expect(page?.get('.loop-aside').text()).toContain('what stands is not known'), 5_000);
    expect(page.get('.loop-aside').text()).not.toContain('Nothing here needs a person');
  });

  it('says so where nothing stands', async () => {
    expect((await show(aLoopFrame())).get('.loop-aside').text()).toContain('Nothing here needs a person');
  });
});

import type { HallFrame, LoopFrame, LoopLine } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aFigure, aHallFrame, aLine, aLoopFrame, aWindow } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { plain } from './fixtures/loop-shown';
import { openPage } from './fixtures/mount-page';

let page: VueWrapper | null = null;
afterEach(() => {
  page?.unmount();
  vi.unstubAllGlobals();
});

async function show(path: string, frame: HallFrame | LoopFrame): Promise<VueWrapper> {
  const server = new FakeServer();
  page?.unmount();
  page = (await openPage(server, path)).page;
  server.connect();
  server.send(frame);
  await flushPromises();
  return page;
}
const stopped = aWindow({ vacuumMarginWorst: aFigure(3_100) });
const loop = (line: Partial<LoopLine>, more: Partial<LoopFrame> = {}): LoopFrame =>
  aLoopFrame({ line: aLine('e7', line), ...more });
const holds = '1 alarm is set aside while its condition holds.';
const asidePage = 'a[href="/alarms/set-aside"]';

describe('an alarm that is set aside while its condition holds', () => {
  it('keeps the hall from being calm, aloud too, with the way to what is set aside', async () => {
    const shown = await show('/halls/east', aHallFrame([aLine('e1'), aLine('e7', { setAsideHolding: 1 })]));
    expect(shown.get('.hall-word').attributes('data-calm')).toBe('false');
    expect(shown.get(`.hall-sentence ${asidePage}`).text()).toBe(holds);
    expect(shown.get('.hall-word [role=status]').text()).toBe('');
    expect(shown.get('[data-testid=loop-e7]').text()).toContain('1 alarm is set aside while its condition holds');
  });

  it('is told on the wall display, which leads nowhere', async () => {
    const shown = await show('/halls/east?wall=on', aHallFrame([aLine('e1'), aLine('e7', { setAsideHolding: 1 })]));
    await vi.waitFor(() => expect(shown.find('[data-testid=wall] .wall-needs').exists()).toBe(true), 10_000);
    expect(shown.get('[data-testid=wall] .hall-sentence').text()).toBe(holds);
    expect(shown.get('.wall-needs').text()).toContain('E7 1 alarm is set aside');
    expect(shown.find(`[data-testid=wall] ${asidePage}`).exists()).toBe(false);
  });

  it.each([
    ['the unit', loop({ setAsideHolding: 1 })],
    ['its gateway', loop({}, { besideSetAside: 1 })],
  ])('of %s is told on the loop and at the unit, where nothing is said to need no person', async (_, frame) => {
    const onLoop = (await show('/units/e7', frame)).get('.loop-aside');
    expect(plain(onLoop.text())).not.toContain('Nothing here needs a person');
    expect(onLoop.get('[data-testid=held-aside]').text()).toBe(holds);
    expect(onLoop.find(asidePage).exists()).toBe(true);
    const atUnit = (await show('/units/e7/at-unit', frame)).get('.at-unit-standing');
    expect(atUnit.get('h2').text()).toBe('Nothing is told');
    expect(atUnit.text()).not.toContain('Nothing here needs a person');
    expect(atUnit.get('[data-testid=held-aside]').text()).toBe(holds);
  });
});

describe('a margin that is below its guard while no alarm is told', () => {
  it('is said on the loop, in place of nobody being needed', async () => {
    const low = aWindow({ highestPa: 96_900, vacuumMargin: aFigure(4_100) });
    const text = (await show('/units/e7', loop({ pressureWindow: low }))).get('.loop-aside').text();
    expect(text).toContain('a margin may lie below its guard');
    expect(text).not.toContain('Nothing here needs a person');
  });

  it('is marked and said as well where it is only that of a stop', async () => {
    const shown = await show('/units/e7', loop({ pressureWindow: stopped }));
    const worst = shown.findAll('.figure').find((one) => one.text().includes('worst, running or stopped'));
    expect(worst?.find('.too-small').exists()).toBe(true);
    expect(worst?.text()).toContain('below guard');
    expect(shown.findAll('.figure .too-small')).toHaveLength(1);
    expect(shown.get('.loop-aside').text()).not.toContain('Nothing here needs a person');
    const atUnit = await show('/units/e7/at-unit', loop({ pressureWindow: stopped }));
    expect(atUnit.get('.at-unit-standing').text()).toContain(
      'But the vacuum margin may lie below its guard if the flow stops',
    );
  });

  it('is called a vent by plan, and no guard spoken of, where the loop is vented under a permit', async () => {
    const vented = loop({ pressureWindow: stopped, mode: 'vented', ventedNotProtected: true });
    for (const path of ['/units/e7', '/units/e7/at-unit']) {
      const text = (await show(path, vented)).text();
      expect(text).toContain('vented by plan and not protected');
      expect(text).not.toContain('its guard');
    }
  });
});

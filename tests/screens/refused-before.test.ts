import type { GuidedTest } from '@ebbline/shared/contract/guided-test';
import { guidedTestSchema } from '@ebbline/shared/contract/guided-test';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { guidedExamples } from '../contract/http-examples-guided';
import { aLoopFrame, anAlarm, anAlarmsFrame, aPermit, aSetAside, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  vi.useRealTimers();
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

type Frame = ReturnType<typeof anAlarmsFrame> | ReturnType<typeof aLoopFrame>;
/** A page whose server refuses each act: it knows none of their ways. */
async function show(address: string, frame: Frame, answers: Record<string, unknown> = {}): Promise<VueWrapper> {
  const server = new FakeServer();
  opened = await openPage(server, address, { '/api/alarms/set-aside': { time: noon, alarms: [] }, ...answers });
  server.connect();
  server.send(frame);
  await flushPromises();
  return opened.page;
}
async function press(page: VueWrapper, begin: string): Promise<void> {
  const named = () => page.findAll('button').find((one) => one.text().startsWith(begin));
  await vi.waitFor(() => expect(named(), begin).toBeDefined(), { timeout: 60_000 });
  await named()?.trigger('click');
  await flushPromises();
}
const says = (page: VueWrapper): boolean => page.find('form.acknowledge [role=alert]').exists();
/** Sends the form that is open, is refused, and leaves it. */
async function refused(page: VueWrapper): Promise<void> {
  for (const name of ['reason', 'interimMeasures']) {
    const field = page.find(`form.acknowledge [name=${name}]`);
    if (field.exists()) await field.setValue('regulator is being changed');
  }
  await page.get('form.acknowledge').trigger('submit');
  await flushPromises();
  expect(says(page)).toBe(true);
  await page.get('form.acknowledge .cancel').trigger('click');
}
const standing = anAlarmsFrame([anAlarm('e7:A')], { setAside: 0 });

describe('a form that is opened after another was refused', () => {
  it('does not show that refusal as its own, in the row of an alarm that stands', async () => {
    const page = await show('/alarms', standing);
    await press(page, 'Shelve…');
    await refused(page);
    await press(page, 'Take out of service…');
    expect(says(page)).toBe(false);
    await page.get('form.acknowledge .cancel').trigger('click');
    await press(page, 'Acknowledge…');
    await refused(page);
    await press(page, 'Acknowledge…');
    expect(says(page)).toBe(false);
    await refused(page);
  });

  it('nor of an alarm that was looked for', async () => {
    const found = {
      id: 'e7:A',
      unit: 'e7',
      hall: 'east',
      entry: 'MARGIN-1',
      title: 'Small margin',
      where: null,
      mode: 'inService',
      active: false,
      priority: 2,
      longestShelvingMinutes: 480,
    };
    const page = await show('/alarms/set-aside?find=e7', standing, {
      '/api/alarms/findable': { time: noon, alarms: [found], more: false },
    });
    await press(page, 'Shelve');
    await refused(page);
    await press(page, 'Take out of service');
    expect(says(page)).toBe(false);
    await refused(page);
  });

  it('nor of an alarm that is to be brought back', async () => {
    const page = await show('/alarms/set-aside', standing, {
      '/api/alarms/set-aside': { time: noon, alarms: [aSetAside('e7:A')] },
    });
    await press(page, 'Unshelve…');
    await refused(page);
    await press(page, 'Unshelve…');
    expect(says(page)).toBe(false);
    await refused(page);
  });

  it('nor on the panel at a unit', async () => {
    const page = await show('/units/e7/at-unit', aLoopFrame({ alarms: [anAlarm('e7:A')] }));
    for (let times = 0; times < 2; times += 1) {
      await page.get('.at-unit-act').trigger('click');
      expect(says(page)).toBe(false);
      await refused(page);
    }
  });

  it('nor of a permit that is to be closed', async () => {
    const page = await show('/units/e7', aLoopFrame({ permits: [aPermit('p1')] }));
    for (let times = 0; times < 2; times += 1) {
      await press(page, 'Close permit…');
      expect(says(page)).toBe(false);
      await refused(page);
    }
  });
});

describe('a guided test', () => {
  const path = '/api/units/e7/guided-tests/t1';
  const measuring: GuidedTest = guidedTestSchema.parse({
    ...guidedExamples['post /api/units/{unit}/guided-tests'].reply,
    id: 't1',
    unit: 'e7',
  });
  const waits: GuidedTest = { ...measuring, state: 'confirm' };
  const later = measuring.steps.find(({ id }) => id !== measuring.step)?.id ?? '';

  it('does not show the refusal of a step that somebody else has confirmed in the form of the next', async () => {
    let record = waits;
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    const page = await show('/units/e7/guided-tests/t1', standing, { [path]: () => record });
    await vi.waitFor(() => expect(page.find('form[aria-label^=Confirm]').exists()).toBe(true), { timeout: 60_000 });
    for (const box of page.findAll('input[name=tick]')) await box.setValue(true);
    await page.get('form[aria-label^=Confirm]').trigger('submit');
    await flushPromises();
    expect(page.find('form[aria-label^=Confirm] [role=alert]').exists()).toBe(true);
    record = { ...waits, step: later };
    await vi.advanceTimersByTimeAsync(60_000);
    await flushPromises();
    expect(page.get(`[data-testid="step-${later}"]`).find('form').exists()).toBe(true);
    expect(page.find('form[aria-label^=Confirm] [role=alert]').exists()).toBe(false);
  });

  it('does not show that its end was refused in the form that is opened again', async () => {
    const page = await show('/units/e7/guided-tests/t1', standing, { [path]: waits });
    const end = () => page.find('form[aria-label^="End test"]');
    for (let times = 0; times < 2; times += 1) {
      await press(page, 'End without a verdict…');
      expect(end().find('[role=alert]').exists()).toBe(false);
      await end().trigger('submit');
      await flushPromises();
      expect(end().find('[role=alert]').exists()).toBe(true);
      await end().get('.cancel').trigger('click');
    }
  });
});

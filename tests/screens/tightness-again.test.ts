import type { TightnessList } from '@ebbline/shared/contract/tightness-test';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aList, aTest, endedTest, tightnessPath } from './fixtures/tightness-answers';

let opened: Page | null = null;
let list: TightnessList;
let onEnd: unknown;
beforeEach(() => {
  localStorage.clear();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
});
afterEach(() => {
  opened?.page.unmount();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const second = aTest({ id: 't2', startedAt: noon });
const secondEnded = { ...endedTest, id: 't2', startedAt: noon, summary: 'fails: in-leak 0.90 L/min free air' };
const refusals = [{ code: 'TIGHTNESS_SOURCE_RUNS', message: 'the vacuum source runs; isolate it first' }];

async function show(first: TightnessList): Promise<VueWrapper> {
  list = first;
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7', {
    [tightnessPath]: (_path: string, body: unknown) => {
      if (body === undefined) return list;
      list = aList({ tests: [second, ...list.tests] });
      return second;
    },
    [`${tightnessPath}/t1/end`]: () => {
      list = aList({ tests: [endedTest] });
      return endedTest;
    },
    [`${tightnessPath}/t2/end`]: () => onEnd,
  });
  server.connect();
  server.send(aLoopFrame());
  await flushPromises();
  return opened.page;
}
const press = async (page: VueWrapper, name: string): Promise<void> => {
  const found = page.findAll('button').find((one) => one.text() === name);
  if (found === undefined) throw new Error(`no button named ${name}`);
  await found.trigger('click');
};
/** What the server says from now on, once it is asked again. */
async function comes(next: TightnessList): Promise<void> {
  list = next;
  await vi.advanceTimersByTimeAsync(2500);
  await flushPromises();
}
async function fill(page: VueWrapper): Promise<void> {
  await press(page, 'Pressure-rise test…');
  await page.get('[name=read]').setValue(true);
  await page.get('[name=limitLitres]').setValue(0.5);
}
async function start(page: VueWrapper): Promise<void> {
  await fill(page);
  await page.get('.tightness-form').trigger('submit');
  await flushPromises();
}
async function endFirst(page: VueWrapper): Promise<void> {
  await press(page, 'End the test…');
  await page.get('[data-testid=tightness-running] form').trigger('submit');
  await flushPromises();
  expect(page.text()).toContain('Ended. Confirmed by the server: passes');
}

describe('the end of a pressure-rise test that was confirmed', () => {
  it('is said no more once a second test is asked for, nor when that has ended by itself', async () => {
    const page = await show(aList({ tests: [aTest()] }));
    await endFirst(page);
    await start(page);
    expect(page.text()).not.toContain('Ended. Confirmed by the server');
    await comes(aList({ tests: [secondEnded, endedTest] }));
    expect(page.get('.tightness-past').text()).toContain('fails');
    expect(page.text()).not.toContain('Ended. Confirmed by the server');
  });

  it('is said no more once a test that was started elsewhere has ended after it', async () => {
    const page = await show(aList({ tests: [aTest()] }));
    await endFirst(page);
    await comes(aList({ tests: [secondEnded, endedTest] }));
    expect(page.text()).not.toContain('Ended. Confirmed by the server');
  });
});

describe('the form for a pressure-rise test', () => {
  it('keeps what was typed where a refusal comes meanwhile, says what is in the way, and sends nothing until it goes', async () => {
    const page = await show(aList());
    await fill(page);
    const begin = () => page.get('.tightness-form button[type=submit]').attributes('disabled');
    expect(begin()).toBeUndefined();
    await comes(aList({ refusals }));
    expect(page.get('.tightness-refusals').text()).toContain('the vacuum source runs');
    expect(page.text()).toContain('what you typed stays');
    expect(page.get<HTMLInputElement>('[name=limitLitres]').element.value).toBe('0.5');
    expect(begin()).toBeDefined();
    await page.get('.tightness-form').trigger('submit');
    expect(page.get('.tightness-form').text()).not.toContain('Waiting for the server…');
    await comes(aList());
    expect(page.get<HTMLInputElement>('[name=limitLitres]').element.value).toBe('0.5');
    expect(begin()).toBeUndefined();
  });

  it('leaves the keyboard at what is in the way where it is left and can’t be asked for again', async () => {
    const page = await show(aList());
    await fill(page);
    await comes(aList({ refusals }));
    await press(page, 'Cancel');
    await flushPromises();
    expect(page.find('.tightness-form').exists()).toBe(false);
    expect(document.activeElement?.textContent).toContain('can’t be started now');
  });
});

describe('ending a pressure-rise test that was started here', () => {
  it.each([
    ['has not answered', new Promise(() => undefined)],
    ['refuses', { reply: 'not a test' }],
  ])('leaves the keyboard and the reason in the form while the server %s', async (_how, answer) => {
    onEnd = answer;
    const page = await show(aList());
    await start(page);
    await press(page, 'End the test…');
    const form = page.get('[data-testid=tightness-running] form');
    const comment = form.get<HTMLInputElement>('[name=comment]');
    await comment.setValue('hose burst');
    comment.element.focus();
    await form.trigger('submit');
    await flushPromises();
    expect(document.activeElement).toBe(comment.element);
    expect(comment.element.value).toBe('hose burst');
  });
});

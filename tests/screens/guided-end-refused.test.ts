import type { GuidedTest } from '@ebbline/shared/contract/guided-test';
import { guidedTestSchema } from '@ebbline/shared/contract/guided-test';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { guidedExamples } from '../contract/http-examples-guided';
import { anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const path = '/api/units/e7/guided-tests/t1';
const measuring: GuidedTest = guidedTestSchema.parse({
  ...guidedExamples['post /api/units/{unit}/guided-tests'].reply,
  id: 't1',
  unit: 'e7',
});
const waits: GuidedTest = { ...measuring, state: 'confirm', summary: 'waits to be confirmed' };
const ended: GuidedTest = guidedTestSchema.parse({
  ...guidedExamples['post /api/units/{unit}/guided-tests/{id}/cancel'].reply,
  id: 't1',
  unit: 'e7',
});
const press = async (page: VueWrapper, name: string): Promise<void> => {
  const found = page.findAll('button').find((one) => one.text() === name);
  if (found === undefined) throw new Error(`no button named ${name}`);
  await found.trigger('click');
};
const endForm = (page: VueWrapper) => page.find('form[aria-label^="End test"]');

/** A test whose step that is under way has just been confirmed here, and the form that ends it, filled in. */
async function aboutToEnd(cancel: unknown): Promise<VueWrapper> {
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7/guided-tests/t1', {
    [path]: waits,
    [`${path}/confirm`]: { ...waits, summary: 'as it was confirmed' },
    [`${path}/cancel`]: cancel,
  });
  const { page } = opened;
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  for (const tick of page.findAll('input[name="tick"]')) await tick.setValue(true);
  await page.get('form[aria-label^="Confirm"]').trigger('submit');
  await flushPromises();
  expect(page.get('[data-testid="guided-status"]').text()).toBe('as it was confirmed');
  await press(page, 'End without a verdict…');
  await endForm(page).get('input[name="comment"]').setValue('hose burst');
  endForm(page).get<HTMLInputElement>('input[name="comment"]').element.focus();
  await endForm(page).trigger('submit');
  await flushPromises();
  return page;
}

describe('ending a guided test after a step was confirmed', () => {
  it('keeps the form, the reason and the keyboard while the server has not answered', async () => {
    const page = await aboutToEnd(new Promise(() => undefined));
    const comment = endForm(page).get<HTMLInputElement>('input[name="comment"]').element;
    expect(comment.value).toBe('hose burst');
    expect(document.activeElement).toBe(comment);
  });

  it('says in the form that it was refused, with the reason still there', async () => {
    const page = await aboutToEnd({ reply: 'not a test' });
    expect(endForm(page).get('[role="alert"]').text()).not.toBe('');
    expect(endForm(page).get<HTMLInputElement>('input[name="comment"]').element.value).toBe('hose burst');
  });

  it('shows the end and leaves the form once the server has confirmed it', async () => {
    const page = await aboutToEnd(ended);
    expect(endForm(page).exists()).toBe(false);
    expect(page.find('[data-testid="guided-result"]').exists()).toBe(true);
    expect(document.activeElement?.getAttribute('data-testid')).toBe('guided-status');
  });
});

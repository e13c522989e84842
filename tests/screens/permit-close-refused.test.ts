import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, aPermit } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const closeOf = '/api/permits/p1/close';
const closed = aPermit('p1', { state: 'closed', closedBy: 'A. Example', closedAt: '2026-03-01T12:00:05.000Z' });
const permit = (page: VueWrapper) => page.find('[data-testid=permit-p1]');
const submit = async (page: VueWrapper): Promise<void> => {
  await page.get('.permit form').trigger('submit');
  await flushPromises();
};

/** A permit whose closing was asked for. */
async function asked(answers: Record<string, unknown>): Promise<{ page: VueWrapper; server: FakeServer }> {
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7', answers);
  const { page } = opened;
  server.connect();
  server.send(aLoopFrame({ permits: [aPermit('p1')] }));
  await flushPromises();
  await permit(page)
    .findAll('button')
    .find((one) => one.text() === 'Close permit…')
    ?.trigger('click');
  await submit(page);
  return { page, server };
}
const dropped = async (server: FakeServer): Promise<void> => {
  server.send(aLoopFrame({ permits: [], sequence: 2 }));
  await flushPromises();
};

describe('a permit whose closing was refused', () => {
  it('says so while the server lists it, and is shown as open no more once the server drops it', async () => {
    const { page, server } = await asked({ [closeOf]: { reply: 'not a permit' } });
    expect(permit(page).get('[role=alert]').text()).not.toBe('');
    await dropped(server);
    expect(permit(page).exists()).toBe(false);
    expect(page.text()).toContain('None open.');
  });

  it('is shown as closed where it was asked for again and the server confirmed that', async () => {
    const answers: Record<string, unknown> = { [closeOf]: { reply: 'not a permit' } };
    const { page, server } = await asked(answers);
    answers[closeOf] = closed;
    await submit(page);
    await dropped(server);
    expect(permit(page).text()).toContain('Closed. Confirmed by the server.');
  });
});

describe('a permit whose closing is under way', () => {
  it('stays where the server drops it first, for the answer to have a place', async () => {
    let answer: (reply: Response) => void = () => undefined;
    const { page, server } = await asked({
      [closeOf]: new Promise<Response>((resolve) => {
        answer = resolve;
      }),
    });
    await dropped(server);
    expect(permit(page).text()).toContain('Waiting for the server…');
    answer(new Response(JSON.stringify(closed)));
    await flushPromises();
    expect(permit(page).text()).toContain('Closed. Confirmed by the server.');
  });
});

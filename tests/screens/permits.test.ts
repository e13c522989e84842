import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { Permit } from '@ebbline/shared/contract/permit';
import { openPermitRequestSchema } from '@ebbline/shared/contract/permit';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, aPermit } from './fixtures/builders';
import { holdSession } from '../../frontend/src/state/use-session';
import { FakeServer } from './fixtures/fake-feed';
import { noSession } from './fixtures/sessions';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

async function show(
  frame: LoopFrame,
  answers: Record<string, unknown> = {},
): Promise<Page & { readonly server: FakeServer }> {
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7', answers);
  server.connect();
  server.send(frame);
  await flushPromises();
  return { ...opened, server };
}
const button = (page: VueWrapper, name: string) => {
  const found = page.findAll('button').find((one) => one.text() === name);
  if (found === undefined) throw new Error(`no button named ${name}`);
  return found;
};

describe('opening a permit', () => {
  async function fill(page: VueWrapper): Promise<void> {
    await button(page, 'Open a permit…').trigger('click');
    await page.get('.permit-form [name=minutes]').setValue(90);
    await page.get('.permit-form [name=litresPerMinute]').setValue(30);
  }

  it('sends branch, end, expected in-leak and name in the units of the contract, with the caution over it', async () => {
    const { page, asked } = await show(aLoopFrame(), { '/api/permits': aPermit('p1') });
    await fill(page);
    expect(page.get('.permit-form .caution').text()).toContain('licensed practice');
    await page.get('.permit-form').trigger('submit');
    await flushPromises();
    const body = asked.find(({ path }) => path === '/api/permits')?.body;
    expect(openPermitRequestSchema.parse(body)).toEqual({
      unit: 'e7',
      branch: '1',
      until: '2026-03-01T13:30:00.000Z',
      expectedInLeak: 30 / 60_000,
      operator: 'A. Example',
      comment: '',
    });
    expect(page.text()).toContain('Permit opened for Rack 1, confirmed by the server.');
    expect(page.find('.permit-form').exists()).toBe(false);
  });

  it('shows nothing as open that the server refused, and says why', async () => {
    const refusal = { reply: 'not a permit' };
    const { page } = await show(aLoopFrame(), { '/api/permits': refusal });
    await fill(page);
    await page.get('.permit-form').trigger('submit');
    await flushPromises();
    expect(page.get('.permit-form [role=alert]').text()).not.toBe('');
    expect(page.text()).not.toContain('confirmed by the server');
  });

  it('is not offered without a sign-in or with an end that can’t be meant', async () => {
    const { page } = await show(aLoopFrame());
    await fill(page);
    const send = (): string | undefined => page.get('.permit-form button[type=submit]').attributes('disabled');
    expect(send()).toBeUndefined();
    await page.get('.permit-form [name=minutes]').setValue('');
    expect(send()).toBeDefined();
    await page.get('.permit-form [name=minutes]').setValue(60);
    expect(send()).toBeUndefined();
    holdSession(noSession());
    await flushPromises();
    expect(send()).toBeDefined();
    expect((page.get('.permit-form [name=minutes]').element as HTMLInputElement).value).toBe('60');
  });
});

describe('a permit that is open', () => {
  it('says where, until when, how much air, by whom, and what it waits for', async () => {
    const { page } = await show(aLoopFrame({ permits: [aPermit('p1', { comment: 'hose 4 changed' })] }));
    const text = page.get('[data-testid=permit-p1]').text().replaceAll('\u00a0', ' ');
    for (const part of [
      'Rack 1',
      'open',
      'until 14:00:00',
      '20.0 L/min free air',
      'A. Example',
      'hose 4 changed',
      'gas load',
    ])
      expect(text).toContain(part);
  });

  it('stands first and says since when where it is overdue', async () => {
    const permits = [aPermit('p1'), aPermit('p2', { state: 'overdue', until: '2026-03-01T11:45:00.000Z' })];
    const { page } = await show(aLoopFrame({ permits }));
    expect(page.findAll('.permit')[0]?.text().replace(/\s+/g, ' ')).toContain('overdue since 12:45:00');
  });

  it('is closed by name, and shown as closed once the server has said so', async () => {
    const closed: Permit = aPermit('p1', {
      state: 'closed',
      closedBy: 'B. Other',
      closedAt: '2026-03-01T12:00:05.000Z',
    });
    const { page, asked, server } = await show(aLoopFrame({ permits: [aPermit('p1')] }), {
      '/api/permits/p1/close': closed,
    });
    await button(page, 'Close permit…').trigger('click');
    await page.get('.permit form').trigger('submit');
    await flushPromises();
    expect(asked.find(({ path }) => path.endsWith('/close'))?.body).toEqual({ operator: 'A. Example', comment: '' });
    expect(page.get('[data-testid=permit-p1]').text()).toContain('Closed. Confirmed by the server.');
    expect(page.get('[data-testid=permit-p1]').text()).toContain('closed by B. Other');
    // The next frame lists it no more: what the server has confirmed stays said.
    server.send(aLoopFrame({ permits: [], sequence: 2 }));
    await flushPromises();
    expect(page.get('[data-testid=permit-p1]').text()).toContain('Closed. Confirmed by the server.');
  });
});

import type { SessionState } from '@ebbline/shared/contract/people';
import { signInRequestSchema } from '@ebbline/shared/contract/people';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { holdSession, renewSession } from '../../frontend/src/state/use-session';
import { aHallFrame, aLine, aSite, anAlarm } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession, demoUnsigned, noSession } from './fixtures/sessions';

let opened: Page | null = null;
beforeEach(() => {
  localStorage.clear();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance', 'Date'] });
});
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function open(
  address: string,
  session: SessionState,
  answers: Readonly<Record<string, unknown>> = {},
): Promise<Page & { readonly server: FakeServer }> {
  const server = new FakeServer();
  opened = await openPage(server, address, answers, aSite(), session);
  await vi.waitFor(flushPromises);
  return { ...opened, server };
}
/** A screen is fetched when it is first gone to; no expectation of how fast. */
const patient = { timeout: 60_000 };
const refusal = (code: string, status: number, detail: string, retryAfter?: number) => () =>
  new Response(
    JSON.stringify({ type: `urn:ebbline:problem:${code}`, title: code, status, detail, instance: '/', code }),
    { status, headers: retryAfter === undefined ? {} : { 'retry-after': String(retryAfter) } },
  );

describe('signing in', () => {
  it('takes one click on the demo where the name is known on this device, and goes on where one wanted to go', async () => {
    localStorage.setItem('ebbline.operator', 'A. Example');
    const { page, router, asked } = await open('/sign-in?next=/halls/east', demoUnsigned(), {
      '/api/session/demo': aSession(),
    });
    await page.get('form.sign-in').trigger('submit');
    await flushPromises();
    expect(asked.find(({ path }) => path === '/api/session/demo')?.body).toEqual({ name: 'A. Example' });
    await vi.waitFor(() => expect(router.currentRoute.value.fullPath).toBe('/halls/east'), patient);
  });

  it('never leads to another site', async () => {
    const { page, router } = await open('/sign-in?next=//elsewhere.example/x', demoUnsigned(), {
      '/api/session/demo': aSession(),
    });
    await page.get('[name=demo-name]').setValue('A. Example');
    await page.get('form.sign-in').trigger('submit');
    await vi.waitFor(() => expect(router.currentRoute.value.name).toBe('hall'), patient);
  });

  it('by a password tells password managers which field is which, lets one paste, and shows it when asked', async () => {
    const { page, asked } = await open('/sign-in', noSession(), { '/api/session/sign-in': aSession() });
    expect(page.get('[name=username]').attributes('autocomplete')).toBe('username');
    const field = page.get<HTMLInputElement>('[name=password]');
    expect(field.attributes('autocomplete')).toBe('current-password');
    expect(field.attributes('type')).toBe('password');
    const paste = new Event('paste', { cancelable: true, bubbles: true });
    field.element.dispatchEvent(paste);
    expect(paste.defaultPrevented).toBe(false);
    await page.get('.password button').trigger('click');
    expect(field.attributes('type')).toBe('text');
    await page.get('[name=username]').setValue(' A. Example ');
    await field.setValue('seven green herons');
    await page.get('form.sign-in').trigger('submit');
    await flushPromises();
    const sent = asked.find(({ path }) => path === '/api/session/sign-in')?.body;
    expect(signInRequestSchema.parse(sent)).toEqual({ name: 'A. Example', password: 'seven green herons' });
  });

  it('that comes too often counts down to when it may be tried again', async () => {
    const { page } = await open('/sign-in', noSession(), {
      '/api/session/sign-in': refusal('SIGN_IN_LATER', 429, 'Too many tries.', 90),
    });
    await page.get('[name=username]').setValue('A. Example');
    await page.get('[name=password]').setValue('wrong');
    await page.get('form.sign-in').trigger('submit');
    await flushPromises();
    expect(page.get('[data-testid=sign-in-refused]').text()).toBe('Too many tries.');
    expect(page.get('[data-testid=sign-in-wait]').text()).toContain('1 min 30 s');
    await page.get('[name=password]').setValue('another');
    expect(page.get('form.sign-in button[type=submit]').attributes('disabled')).toBeDefined();
    await vi.advanceTimersByTimeAsync(31_000);
    expect(page.get('[data-testid=sign-in-wait]').text()).toContain('59 s');
    await vi.advanceTimersByTimeAsync(60_000);
    expect(page.find('[data-testid=sign-in-wait]').exists()).toBe(false);
    expect(page.get('form.sign-in button[type=submit]').attributes('disabled')).toBeUndefined();
  });

  it('offers another provider by its label where there is one', async () => {
    const ways = { password: true, demo: false, openId: { label: 'Sign in at work' } };
    const { page } = await open('/sign-in', noSession({ ways }));
    expect(page.get('a.as-button').text()).toBe('Sign in at work');
    expect(page.get('a.as-button').attributes('href')).toBe('/api/session/open-id/start');
  });
});

describe('a page on which nobody is signed in', () => {
  it('leads to the sign-in and back, where looking needs one', async () => {
    const { router, page } = await open('/units/e7?value=vacuumMargin', noSession());
    await vi.waitFor(() => expect(router.currentRoute.value.name).toBe('sign-in'), patient);
    expect(router.currentRoute.value.query['next']).toBe('/units/e7?value=vacuumMargin');
    await vi.waitFor(() => expect(page.find('.places-nav').exists()).toBe(false), patient);
    holdSession(aSession());
    await flushPromises();
    expect(page.find('.places-nav').exists()).toBe(true);
  });

  it('shows the demo site, and says where to sign in', async () => {
    const { router, page } = await open('/halls/east', demoUnsigned());
    expect(router.currentRoute.value.name).toBe('hall');
    expect(page.get('[data-testid=account] a').attributes('href')).toBe('/sign-in?next=/halls/east');
  });
});

describe('a session that ends while a form is open', () => {
  it('shows nothing as live, and keeps what was typed until someone signs in in place', async () => {
    const alarm = anAlarm('e7:MARGIN-1');
    const { page, server } = await open('/alarms', aSession('operator'), { '/api/session': noSession() });
    server.connect();
    server.send({ ...aHallFrame([aLine('e1')]), screen: 'alarms', alarms: [alarm], alerts: [], permits: [] } as never);
    await flushPromises();
    await page.get('.open-acknowledge').trigger('click');
    await page.get('[name=comment]').setValue('on my way');
    await renewSession();
    await flushPromises();
    expect(page.get('[data-testid=signed-out]').text()).toContain('The sign-in of A. Example has ended');
    expect(page.get('main').classes()).toContain('page-old');
    expect(page.find('[data-testid=connection]').exists()).toBe(false);
    expect(page.get<HTMLInputElement>('[name=comment]').element.value).toBe('on my way');
    holdSession(aSession('operator'));
    await flushPromises();
    expect(page.find('[data-testid=signed-out]').exists()).toBe(false);
    expect(page.get<HTMLInputElement>('[name=comment]').element.value).toBe('on my way');
    expect(page.get('[data-testid=as-whom]').text()).toBe('as A. Example');
  });

  it('says so five minutes before, quietly, and one press puts off an end by idling', async () => {
    vi.setSystemTime('2026-03-01T12:00:00Z');
    const ends = (idle: string): SessionState =>
      aSession('operator', { endsAt: '2026-03-01T20:00:00.000Z', idleEndsAt: idle });
    const later = ends('2026-03-01T13:05:00.000Z');
    const { page } = await open('/alarms', ends('2026-03-01T12:06:00.000Z'), { '/api/session': later });
    expect(page.find('[data-testid=session-ending]').exists()).toBe(false);
    await vi.advanceTimersByTimeAsync(61_000);
    const notice = page.get('[data-testid=session-ending]');
    expect(notice.text()).toContain('signed out in 5 min unless you act');
    expect(notice.attributes('role')).toBe('status');
    await notice.get('button').trigger('click');
    await vi.waitFor(() => expect(page.find('[data-testid=session-ending]').exists()).toBe(false), patient);
  });
});

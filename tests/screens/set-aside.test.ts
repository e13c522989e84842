import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { Role } from '@ebbline/shared/contract/people';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { anAlarm, anAlarmsFrame, aSetAside, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { plain } from './fixtures/loop-shown';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession } from './fixtures/sessions';

let opened: Page | null = null;
let server: FakeServer;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

async function open(address: string, answers: Record<string, unknown>, role: Role = 'engineer'): Promise<VueWrapper> {
  server = new FakeServer();
  opened = await openPage(server, address, answers, aSite(), aSession(role));
  server.connect();
  server.send(anAlarmsFrame([anAlarm('e7:MARGIN-1')], { setAside: 1 }));
  await flushPromises();
  await vi.waitFor(() => expect(opened?.page.find('.alarm-screen').exists()).toBe(true), { timeout: 60_000 });
  return opened.page;
}
const list = (...alarms: SetAsideAlarm[]) => ({ '/api/alarms/set-aside': { time: noon, alarms } });
const showAside = async (alarms: SetAsideAlarm[], role: Role = 'engineer', more: Record<string, unknown> = {}) => {
  const page = await open('/alarms/set-aside', { ...list(...alarms), ...more }, role);
  await vi.waitFor(() => expect(page.find('#aside-shelved').exists()).toBe(true), { timeout: 60_000 });
  return page;
};
const bodies = (end: string): unknown[] =>
  (opened?.asked ?? []).filter(({ path, body }) => path.endsWith(end) && body !== undefined).map(({ body }) => body);
const press = async (page: VueWrapper, words: string): Promise<void> => {
  await page
    .findAll('button')
    .find((button) => button.text() === words)
    ?.trigger('click');
  await flushPromises();
};

describe('shelving an alarm', () => {
  const shelved = aSetAside('e7:MARGIN-1', { since: noon, until: '2026-03-01T14:00:00.000Z' });
  const path = '/api/alarms/e7%3AMARGIN-1/shelve';

  it('asks for a reason and a time within bounds, says when it ends, and shows what the server confirmed', async () => {
    const page = await open('/alarms', { [path]: shelved, ...list() }, 'operator');
    await press(page, 'Shelve…');
    const form = page.get('form[aria-label^=Shelve]');
    const submit = form.get('button[type=submit]');
    expect(submit.attributes('disabled')).toBeDefined();
    await form.get('[name=reason]').setValue('regulator is being changed');
    await press(page, plain('2\u00a0h').replace(' ', '\u00a0'));
    expect(form.text()).toContain('ends by itself at 15:00:00');
    await form.get('[name=minutes]').setValue(481);
    expect(submit.attributes('disabled')).toBeDefined();
    await form.get('[name=minutes]').setValue(120);
    await form.trigger('submit');
    await flushPromises();
    expect(bodies('/shelve')).toEqual([{ operator: 'A. Example', reason: 'regulator is being changed', minutes: 120 }]);
    expect(page.get('.confirmed').text()).toBe(
      'E7: Vacuum margin small – shelved until 15:00:00, confirmed by the server.',
    );
  });

  it('is said no longer once the alarm is told again', async () => {
    const page = await open('/alarms', { [path]: shelved, ...list() }, 'operator');
    await press(page, 'Shelve…');
    await page.get('[name=reason]').setValue('regulator is being changed');
    await page.get('form[aria-label^=Shelve]').trigger('submit');
    await flushPromises();
    expect(page.find('.confirmed').exists()).toBe(true);
    server.send(anAlarmsFrame([], { setAside: 1 }));
    await flushPromises();
    expect(page.find('.confirmed').exists()).toBe(true);
    const again = anAlarm('e7:MARGIN-1', { stateSince: '2026-03-01T12:30:00.000Z' });
    server.send(anAlarmsFrame([again], { setAside: 0 }));
    await flushPromises();
    expect(page.find('.confirmed').exists()).toBe(false);
  });

  it('shows a refusal in the server’s words, and nothing as done', async () => {
    const refusal = {
      type: 'urn:ebbline:problem:ALARM_SHELVED',
      title: 'shelved',
      status: 409,
      detail: 'E7 MARGIN-1 is shelved already, by B. Other until 14:00.',
      instance: '/',
      code: 'ALARM_SHELVED',
    };
    const page = await open('/alarms', {
      ...list(),
      [path]: () => new Response(JSON.stringify(refusal), { status: 409 }),
    });
    await press(page, 'Shelve…');
    await page.get('[name=reason]').setValue('regulator is being changed');
    await page.get('form[aria-label^=Shelve]').trigger('submit');
    await flushPromises();
    expect(page.get('form[aria-label^=Shelve] [role=alert]').text()).toContain('by B. Other until 14:00');
    expect(page.find('.confirmed').exists()).toBe(false);
  });

  it('is not for a viewer, and out of service not for an operator; each is told why', async () => {
    const viewer = await open('/alarms', list(), 'viewer');
    await press(viewer, 'Shelve…');
    expect(viewer.get('[data-testid=who-needed]').text()).toContain('not among what this role may do');
    expect(viewer.get('form[aria-label^=Shelve] button[type=submit]').attributes('disabled')).toBeDefined();
    viewer.unmount();
    const operator = await open('/alarms', list(), 'operator');
    await press(operator, 'Take out of service…');
    expect(operator.get('[data-testid=who-needed]').text()).toContain('To take this alarm out of service');
  });
});

describe('taking an alarm out of service', () => {
  it('asks what watches the plant meanwhile, and sends the planned end of the site’s time', async () => {
    const out = aSetAside('e7:MARGIN-1', { mode: 'outOfService', since: noon, until: '2026-03-02T09:00:00.000Z' });
    const page = await open('/alarms', { '/api/alarms/e7%3AMARGIN-1/take-out-of-service': out, ...list() });
    await press(page, 'Take out of service…');
    const form = page.get('form[aria-label^="Take out of service"]');
    await form.get('[name=reason]').setValue('sensor is at its maker');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeDefined();
    await form.get('[name=interimMeasures]').setValue('a round each hour');
    await form.get('[name=plannedEnd]').setValue('2026-03-02T10:00');
    await form.trigger('submit');
    await flushPromises();
    expect(bodies('/take-out-of-service')).toEqual([
      {
        operator: 'A. Example',
        reason: 'sensor is at its maker',
        interimMeasures: 'a round each hour',
        plannedEnd: '2026-03-02T09:00:00.000Z',
      },
    ]);
    expect(page.get('.confirmed').text()).toContain('out of service, planned until 2026-03-02 10:00:00');
  });
});

describe('what is set aside', () => {
  const three = [
    aSetAside('e7:A', { title: 'Shelved one', until: '2026-03-01T12:10:00.000Z', active: true }),
    aSetAside('e7:B', {
      title: 'Out one',
      mode: 'outOfService',
      until: null,
      by: 'C. Third',
      interimMeasures: 'a round each hour',
    }),
    aSetAside('e1:C', {
      title: 'Suppressed one',
      unit: 'e1',
      mode: 'suppressedByDesign',
      until: null,
      by: null,
      reason: 'off while the loop is filled',
    }),
  ];

  it('is one press away, with its count', async () => {
    const page = await open('/alarms', list(...three));
    const tab = page.get('.alarm-tabs a[href="/alarms/set-aside"]');
    expect(tab.get('[data-testid=set-aside-count]').text()).toBe('1');
    expect(page.get('.alarm-tabs [aria-current=page]').text()).toContain('Standing');
  });

  it('says of each why, who, until when by the server’s time, and how its condition is now', async () => {
    const page = await showAside(three);
    const text = (id: string): string => plain(page.get(`[data-testid="aside-${id}"]`).text());
    expect(text('e7:A')).toContain('10 min left, until 13:10:00');
    expect(text('e7:A')).toContain('Its condition holds now.');
    expect(text('e7:A')).toContain('by A. Example, since 12:30:00');
    expect(text('e7:B')).toContain('Meanwhile: a round each hour');
    expect(text('e7:B')).toContain('no end planned');
    expect(text('e1:C')).toContain('off while the loop is filled');
    expect(text('e1:C')).toContain('by design');
    expect(page.find('[data-testid="aside-e1:C"] button').exists()).toBe(false);
    server.send(anAlarmsFrame([], { setAside: 1, clock: { kind: 'wall', now: '2026-03-01T12:09:00.000Z' } }));
    await flushPromises();
    expect(text('e7:A')).toContain('60 s left');
  });

  it('is brought back by a person, and said to be only once the server has confirmed it', async () => {
    let alarms = three;
    const page = await showAside(three, 'operator', {
      '/api/alarms/set-aside': () => ({ time: noon, alarms }),
      '/api/alarms/e7%3AA/unshelve': () => {
        alarms = three.slice(1);
        return { id: 'e7:A', mode: 'inService', state: 'unacknowledged', active: true };
      },
    });
    await press(page, 'Unshelve…');
    expect(page.find('.confirmed').exists()).toBe(false);
    await page.get('form[aria-label^=Unshelve]').trigger('submit');
    await flushPromises();
    expect(bodies('/unshelve')).toEqual([{ operator: 'A. Example', comment: '' }]);
    expect(page.get('.confirmed').text()).toBe(
      'E7: Shelved one – told again: its condition holds, confirmed by the server.',
    );
    expect(page.find('[data-testid="aside-e7:A"]').exists()).toBe(false);
  });

  it('is returned to service by an engineer only', async () => {
    const page = await showAside(three, 'operator');
    await press(page, 'Return to service…');
    expect(page.get('[data-testid=who-needed]').text()).toContain('To return this alarm to service');
  });

  it('is narrowed by unit and words', async () => {
    const page = await showAside(three);
    await page.get('[name=text]').setValue('third');
    await flushPromises();
    expect(page.findAll('.aside-row h3').map((title) => title.text())).toEqual(['Out one']);
    expect(opened?.router.currentRoute.value.query).toEqual({ text: 'third' });
  });
});

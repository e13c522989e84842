import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aChange, aListing, anEntry, marginSettings } from './fixtures/alarm-management';
import { anAlarmsFrame, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession } from './fixtures/sessions';

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const changed = { ...marginSettings, limit: 4500 };
const margin = anEntry('MARGIN-1', {
  settings: [
    { scope: { kind: 'site' }, authorised: marginSettings, running: marginSettings, differs: [] },
    { scope: { kind: 'unit', id: 'e7' }, authorised: marginSettings, running: changed, differs: ['limit'] },
  ],
});
const air = anEntry('AIR-1', {
  title: 'Air is coming in: a line has opened',
  cause: 'A hose has come open.',
  priority: 1,
  timeToRespondSeconds: 60,
  timeNeededSeconds: 30,
});
const answers = {
  '/api/alarm-list': aListing([margin, air]),
  '/api/alarm-list/changes': { changes: [aChange('c1')] },
  '/api/alarm-list/audit': {
    time: noon,
    compared: 120,
    findings: [
      {
        entry: 'MARGIN-1',
        scope: { kind: 'unit', id: 'e7' },
        member: 'limit',
        authorised: 5000,
        running: 4500,
        unit_of_measure: 'Pa',
        by: 'change',
        change: aChange('c1'),
      },
    ],
  },
};
async function show(
  address: string,
  more: Record<string, unknown> = {},
  session = aSession('engineer'),
): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, { ...answers, ...more }, aSite(), session);
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const press = async ({ page }: Page, name: string): Promise<void> => {
  const button = page.findAll('button').find((one) => plain(one.text()) === name);
  if (button === undefined) throw new Error(`no button named ${name}`);
  await button.trigger('click');
  await flushPromises();
};
const refusal = (code: string, detail: string): Response =>
  new Response(
    JSON.stringify({ type: `urn:ebbline:problem:${code}`, title: 't', status: 409, detail, instance: '/', code }),
    { status: 409 },
  );

describe('the list of limits', () => {
  it('has every entry under its priority, with its limit, its times and whether it differs', async () => {
    const { page } = await show('/limits');
    expect(page.findAll('.limit-group').map((one) => plain(one.text()))).toEqual(['act now 1', 'act soon 1']);
    const row = plain(page.get('[data-testid=limit-MARGIN-1]').text());
    for (const part of ['Vacuum margin small', '5 kPa, after 10 s', '8 min to respond, 2 min for the first action'])
      expect(row).toContain(part);
    expect(row).toContain('differs from authorised');
    expect(page.get('[data-testid=limit-AIR-1]').text()).not.toContain('differs');
    expect(page.text()).toContain('approved by B. Example');
  });

  it('keeps to what is searched for, and says so in the address', async () => {
    const { page, router } = await show('/limits');
    await page.get('[name=search]').setValue('hose');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ search: 'hose' });
    expect(page.find('[data-testid=limit-MARGIN-1]').exists()).toBe(false);
    expect(page.find('[data-testid=limit-AIR-1]').exists()).toBe(true);
    await page.get('[name=differing]').setValue(true);
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ search: 'hose', differing: 'true' });
    expect(page.text()).toContain('No entry fits.');
  });

  it('says who made what runs otherwise than authorised, when and why', async () => {
    const { page } = await show('/limits?differing=true');
    const audit = plain(page.get('.audit-findings').text());
    for (const part of [
      'MARGIN-1',
      'E7: limit',
      '4.5 kPa',
      'authorised 5 kPa',
      'A. Example',
      'the barometer has settled',
    ])
      expect(audit).toContain(part);
    expect(plain(page.get('.change-lines').text())).toContain('limit 5 kPa → 4.5 kPa');
  });

  it('can be taken along as a file', async () => {
    const { page } = await show('/limits');
    expect(page.findAll('.export-links a').map((one) => one.attributes('href'))).toEqual([
      '/api/alarm-list/export?format=csv',
      '/api/alarm-list/export?format=json',
    ]);
  });

  it('says so where nothing differs, where nothing was changed and where the server does not answer', async () => {
    const { page } = await show('/limits?differing=true', {
      '/api/alarm-list': aListing([air]),
      '/api/alarm-list/changes': { changes: [] },
      '/api/alarm-list/audit': { time: noon, compared: 60, findings: [] },
    });
    for (const part of ['Everything runs as authorised.', 'Nothing was changed', 'all run as authorised'])
      expect(page.text()).toContain(part);
    page.unmount();
    const broken = await show('/limits', { '/api/alarm-list': { not: 'a list' } });
    expect(broken.page.get('[role=alert]').text()).toContain('can’t be read');
  });
});

describe('one entry', () => {
  it('says why it exists, in the words of the plants of this site', async () => {
    const { page } = await show('/limits/MARGIN-1?unit=e7');
    const text = plain(page.get('.reasons').text());
    for (const part of [
      'Lower the set pressure of the supply tank.',
      'Compare the supply tank pressure',
      'Supply tank regulator has moved.',
      'An opened line would let water out.',
      'The largest weather change',
      'class water',
      'cooling engineer',
      '2027-03-01',
    ])
      expect(text).toContain(part);
    expect(text).not.toContain('Slow the circulation pump.');
    expect(plain(page.get('.limit-entry header').text())).toContain('seen from E7');
  });

  it('marks its place in the grid of priorities in words', async () => {
    const { page } = await show('/limits/MARGIN-1');
    const here = page.findAll('.grid-here');
    expect(here).toHaveLength(1);
    expect(here[0]?.text()).toContain('this entry');
    expect(here[0]?.get('svg').attributes('aria-label')).toBe('priority 2, act soon');
  });

  it('shows what runs beside what was authorised, place by place', async () => {
    const { page } = await show('/limits/MARGIN-1');
    const limit = page.get('[data-testid="set-unit:e7"] .differs');
    expect(plain(limit.get('b').text())).toBe('≠ 4.5 kPa');
    expect(plain(limit.get('.settings-authorised').text())).toBe('authorised 5 kPa');
    expect(page.findAll('[data-testid="set-unit:e7"] .differs')).toHaveLength(1);
    expect(page.get('[data-testid="set-site"]').text()).not.toContain('authorised');
  });

  it('is not found under a name that the list does not have', async () => {
    const { page } = await show('/limits/NOTHING-1');
    expect(page.text()).toContain('has no entry of this name');
  });

  it('lists its own changes and no others', async () => {
    const { page } = await show('/limits/MARGIN-1', {
      '/api/alarm-list/changes': { changes: [aChange('c1'), aChange('c2', { entry: 'AIR-1', reason: 'another' })] },
    });
    const lines = page.get('[aria-labelledby=own-changes-title]').text();
    expect(lines).toContain('the barometer has settled');
    expect(lines).not.toContain('another');
  });
});

describe('a change of a setting', () => {
  it('sends only what differs, for the chosen place, with the reason', async () => {
    const answer = aChange('c9', { scope: { kind: 'unit', id: 'e7' }, new: { ...changed, limit: 4000 } });
    const shown = await show('/limits/MARGIN-1?unit=e7', {
      '/api/alarm-list/changes': (_path: string, body: unknown) => (body === undefined ? { changes: [] } : answer),
    });
    const { page, asked } = shown;
    await press(shown, 'Change a setting…');
    const form = page.get('form[aria-label="Change MARGIN-1"]');
    const send = () => form.get('button[type=submit]');
    expect(form.text()).toContain('Nothing differs from what runs.');
    // What runs for the unit stands in the fields, in kPa.
    expect((form.get('[name=limit]').element as HTMLInputElement).value).toBe('4.5');
    await form.get('[name=limit]').setValue('4');
    expect(plain(form.text())).toContain('To be changed: limit 4 kPa.');
    expect(send().attributes('disabled')).toBeDefined();
    await form.get('[name=reason]').setValue('seen to be too early');
    await form.get('[name=link]').setValue('change 13');
    await form.trigger('submit');
    await flushPromises();
    expect(asked.find(({ body }) => body !== undefined)?.body).toEqual({
      operator: 'A. Example',
      entry: 'MARGIN-1',
      scope: { kind: 'unit', id: 'e7' },
      set: { limit: 4000 },
      reason: 'seen to be too early',
      link: 'change 13',
    });
    expect(plain(page.get('.confirmed').text())).toContain('Changed for E7');
    // The list is read again: what is shown as running, the server has said.
    expect(asked.filter(({ path }) => path === '/api/alarm-list').length).toBeGreaterThan(1);
  });

  it('says the refusal in the words of the server, and keeps what was typed', async () => {
    const shown = await show('/limits/MARGIN-1', {
      '/api/alarm-list/changes': (_path: string, body: unknown) =>
        body === undefined ? { changes: [] } : refusal('SETTING_REFUSED', 'a limit below zero is no margin'),
    });
    await press(shown, 'Change a setting…');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    await form.get('[name=limit]').setValue('-1');
    await form.get('[name=reason]').setValue('to see');
    await form.trigger('submit');
    await flushPromises();
    expect(form.get('[role=alert]').text()).toBe('a limit below zero is no margin');
    expect((form.get('[name=limit]').element as HTMLInputElement).value).toBe('-1');
    expect(shown.page.find('.confirmed').exists()).toBe(false);
  });

  it('is not offered to who may not make it', async () => {
    const shown = await show('/limits/MARGIN-1', {}, aSession('operator'));
    await press(shown, 'Change a setting…');
    expect(shown.page.get('[data-testid=who-needed]').text()).toContain('not among what this role may do');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    await form.get('[name=limit]').setValue('4');
    await form.get('[name=reason]').setValue('to see');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeDefined();
  });
});

import type { SettingChange } from '@ebbline/shared/contract/alarm-list';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aChange, aListing, anEntry, marginSettings } from './fixtures/alarm-management';
import { anAlarmsFrame, aSite } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { changed, limitsAnswers } from './fixtures/limits-answers';
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

async function show(
  address: string,
  more: Record<string, unknown> = {},
  session = aSession('engineer'),
): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, { ...limitsAnswers, ...more }, aSite(), session);
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
      basedOn: changed,
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

  it('is told that another was first, by name, and begins with what runs now where that is asked', async () => {
    let running = changed;
    const shown = await show('/limits/MARGIN-1?unit=e7', {
      '/api/alarm-list': () =>
        aListing([
          anEntry('MARGIN-1', {
            settings: [
              { scope: { kind: 'site' }, authorised: marginSettings, running: marginSettings, differs: [] },
              { scope: { kind: 'unit', id: 'e7' }, authorised: marginSettings, running, differs: ['limit'] },
            ],
          }),
        ]),
      '/api/alarm-list/changes': (_path: string, body: unknown) => {
        if (body === undefined) return { changes: [aChange('c2', { actor: 'B. Other', new: running })] };
        running = { ...changed, limit: 4800 };
        return refusal('SETTING_CHANGED_MEANWHILE', 'MARGIN-1 was changed meanwhile');
      },
    });
    await press(shown, 'Change a setting…');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    await form.get('[name=limit]').setValue('4');
    await form.get('[name=reason]').setValue('to see');
    await form.trigger('submit');
    await flushPromises();
    const said = plain(form.get('[data-testid=changed-meanwhile]').text());
    expect(said).toContain('limit 4.5 kPa → 4.8 kPa');
    expect(said).toContain('By B. Other');
    // What was typed still stands; nothing more is sent until what runs now was taken in.
    expect((form.get('[name=limit]').element as HTMLInputElement).value).toBe('4');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeDefined();
    await press(shown, 'Begin with what runs now');
    expect((form.get('[name=limit]').element as HTMLInputElement).value).toBe('4.8');
    expect(form.find('[data-testid=changed-meanwhile]').exists()).toBe(false);
  });

  it('sends how long until it is told again, and words of the site, or that there are none', async () => {
    const own = { ...marginSettings, reAlarmAfterSeconds: 3600, action: 'Call the desk.' };
    const shown = await show('/limits/MARGIN-1', {
      '/api/alarm-list': aListing([
        anEntry('MARGIN-1', {
          settings: [{ scope: { kind: 'site' }, authorised: own, running: own, differs: [] }],
        }),
      ]),
      '/api/alarm-list/changes': (_path: string, body: unknown) =>
        body === undefined ? { changes: [] } : aChange('c9'),
    });
    expect(plain(shown.page.get('.reasons').text())).toContain('by site procedure, the whole site: Call the desk.');
    await press(shown, 'Change a setting…');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    await form.get('[name=reAlarmAfterSeconds]').setValue('');
    await form.get('[name=action]').setValue(' ');
    await form.get('[name=reason]').setValue('to see');
    expect(plain(form.text())).toContain(
      'To be changed: told again after not told again, first action of the site that of the catalogue.',
    );
    await form.trigger('submit');
    await flushPromises();
    expect(shown.asked.find(({ body }) => body !== undefined)?.body).toMatchObject({
      set: { reAlarmAfterSeconds: null, action: null },
    });
  });
});

describe('a change of a highly managed class', () => {
  const managed = anEntry('MARGIN-1', { highlyManaged: true, classTitle: 'Vacuum margin' });
  const held = aChange('proposal-1', { held: 'awaitsSecond', actor: 'B. Other' });
  const waiting = (change: SettingChange) => ({
    '/api/alarm-list': aListing([managed]),
    '/api/alarm-list/changes': (_path: string, body: unknown) =>
      body === undefined ? { changes: [], proposed: [change] } : change,
  });

  it('is proposed with where it was approved, and not said to be made', async () => {
    const shown = await show('/limits/MARGIN-1', {
      '/api/alarm-list': aListing([managed]),
      '/api/alarm-list/changes': (_path: string, body: unknown) => (body === undefined ? { changes: [] } : held),
    });
    await press(shown, 'Change a setting…');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    const send = () => form.get('button[type=submit]');
    await form.get('[name=limit]').setValue('4');
    await form.get('[name=reason]').setValue('to see');
    expect([send().text(), send().attributes('disabled')]).toEqual(['Propose the change', '']);
    await form.get('[name=link]').setValue('order 17');
    expect(send().attributes('disabled')).toBeUndefined();
    await form.trigger('submit');
    await flushPromises();
    const said = plain(shown.page.get('.confirmed').text());
    expect(said).toContain('not in force: it waits until somebody else approves it');
    expect(said).not.toContain('Changed');
  });

  it('is shown with who asked, from what to what and why, and approved by another', async () => {
    const made = aChange('setting-1', { actor: 'B. Other', approvedBy: 'A. Example' });
    const shown = await show('/limits/MARGIN-1', {
      ...waiting(held),
      '/api/alarm-list/proposals/proposal-1': made,
    });
    const text = plain(shown.page.get('[data-testid=proposed-changes]').text());
    expect(text).toContain('Waits for a second person, not in force: E7: limit 5 kPa → 4.5 kPa');
    expect(text).toContain('B. Other');
    expect(text).toContain('“the barometer has settled” approval: change 12');
    // Of several that wait, each button says by itself which one it is of (WCAG 2.2, 2.4.6).
    for (const name of ['Approve and change', 'Withdraw']) {
      const button = shown.page.findAll('button').find((one) => plain(one.text()) === name);
      const asked = shown.page.get(`#${button?.attributes('aria-describedby') ?? 'none'}`);
      expect(plain(asked.text())).toContain('E7: limit 5 kPa → 4.5 kPa');
    }
    await press(shown, 'Approve and change');
    expect(shown.asked.find(({ path }) => path.includes('proposals'))?.body).toEqual({
      operator: 'A. Example',
      decision: 'approve',
    });
    expect(plain(shown.page.get('.confirmed').text())).toContain('Approved and changed for E7');
  });

  it('is for others to approve: whoever asked can only withdraw it', async () => {
    const own = { ...held, actor: 'A. Example' };
    const shown = await show('/limits/MARGIN-1', {
      ...waiting(own),
      '/api/alarm-list/proposals/proposal-1': { ...own, held: 'withdrawn' },
    });
    const named = (name: string) => shown.page.findAll('button').find((one) => plain(one.text()) === name);
    expect(named('Approve and change')?.attributes('disabled')).toBeDefined();
    expect(shown.page.text()).toContain('You asked for it: somebody else');
    await press(shown, 'Withdraw');
    expect(plain(shown.page.get('.confirmed').text())).toContain('nothing was changed');
  });
});

describe('what can be set of an entry', () => {
  const fieldsOf = async (more: Parameters<typeof anEntry>[1]) => {
    const shown = await show('/limits/MARGIN-1?unit=e7', { '/api/alarm-list': aListing([anEntry('MARGIN-1', more)]) });
    await press(shown, 'Change a setting…');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    const names = form.findAll('input, textarea').map((one) => one.attributes('name'));
    return { shown, form, names: names.filter((name) => name !== 'reason' && name !== 'link') };
  };
  const always = ['onDelaySeconds', 'offDelaySeconds', 'reAlarmAfterSeconds', 'enabled', 'action'];

  it('is nothing where it is judged by rules of the program itself: neither changed nor tried', async () => {
    const { page } = await show('/limits/COM-1', {
      '/api/alarm-list': aListing([anEntry('COM-1', { changeable: false, scopes: [], side: null })]),
    });
    expect(page.text()).toContain('nothing of it can be set here');
    expect(plain(page.get('[data-testid=trial]').text())).toContain('Nothing to try');
    expect(page.findAll('button').filter((one) => one.text().includes('Change a setting'))).toEqual([]);
    expect(page.find('form').exists()).toBe(false);
  });

  it('is no limit where it has none, and one or two ends where it has a band', async () => {
    expect((await fieldsOf({ unit_of_measure: null, side: null })).names).toEqual(always);
    opened?.page.unmount();
    const below = await fieldsOf({ side: 'below' });
    expect(below.names).toEqual(['limit', 'deadband', ...always]);
    expect(plain(below.form.text())).toContain('limit, told below it, kPa');
    opened?.page.unmount();
    // A band whose low end nobody has set: it may stay empty.
    const band = await fieldsOf({ side: 'band' });
    expect(band.names).toEqual(['limit', 'low', 'deadband', ...always]);
    expect(band.form.get('[name=low]').attributes('required')).toBeUndefined();
    expect(plain(band.form.text())).toContain('Nothing differs from what runs.');
  });

  it('is set only for what it can be set for, and begins at the nearest of that', async () => {
    const { form } = await fieldsOf({ scopes: ['site', 'hall'] });
    const offered = form.findAll('[name=scope] option').map((one) => one.attributes('value'));
    expect(offered.filter((value) => value?.startsWith('unit'))).toEqual([]);
    expect(offered).toContain('site');
    expect((form.get('[name=scope]').element as HTMLSelectElement).value).toBe('hall:east');
  });

  it('says the added rule of a highly managed class, and in which modes the limit is another one', async () => {
    const { form } = await fieldsOf({
      classTitle: 'Vacuum margin',
      highlyManaged: true,
      stateDependent: 'Off while the unit is drained.',
    });
    const text = plain(form.text());
    expect(text).toContain('Class “Vacuum margin” is highly managed: a change needs its approval and a second person');
    expect(text).toContain('Off while the unit is drained.');
    expect(text).toContain('asked for by its class');
    opened?.page.unmount();
    expect(plain((await fieldsOf({})).form.text())).not.toContain('highly managed');
  });
});

import type { FindableAlarm, FoundAlarms, SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { Role } from '@ebbline/shared/contract/people';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { anAlarmsFrame, aSetAside, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession } from './fixtures/sessions';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const branch: FindableAlarm = {
  id: 'e7:FLOW-3:r5',
  unit: 'e7',
  hall: 'east',
  entry: 'FLOW-3',
  title: 'Flow of a branch is low',
  where: 'Rack 5',
  mode: 'inService',
  active: false,
  priority: 2,
  longestShelvingMinutes: 480,
};
const water: FindableAlarm = {
  ...branch,
  id: 'e7:WATER-1',
  entry: 'WATER-1',
  title: 'Water was found',
  where: null,
  priority: 1,
  longestShelvingMinutes: 60,
};
const found = (...alarms: FindableAlarm[]): FoundAlarms => ({ time: noon, alarms, more: false });
const empty = { time: noon, alarms: [] as SetAsideAlarm[] };

async function open(address: string, answers: Record<string, unknown>, role: Role = 'engineer'): Promise<VueWrapper> {
  const server = new FakeServer();
  opened = await openPage(server, address, { '/api/alarms/set-aside': empty, ...answers }, aSite(), aSession(role));
  server.connect();
  server.send(anAlarmsFrame([], { setAside: 0 }));
  await flushPromises();
  await vi.waitFor(() => expect(opened?.page.find('.find-opener, .find-alarms').exists()).toBe(true), {
    timeout: 60_000,
  });
  return opened.page;
}
const press = async (page: VueWrapper, words: string): Promise<void> => {
  const button = page.findAll('button').find((one) => one.text().replaceAll(/\s+/g, ' ') === words);
  expect(
    button,
    page
      .findAll('button')
      .map((one) => one.text())
      .join('|'),
  ).toBeDefined();
  await button?.trigger('click');
  await flushPromises();
};
const sent = (end: string): unknown[] =>
  (opened?.asked ?? []).filter(({ path, body }) => path.endsWith(end) && body !== undefined).map(({ body }) => body);

describe('an alarm that does not stand', () => {
  const path = '/api/alarms/e7%3AFLOW-3%3Ar5/shelve';
  const shelved = aSetAside('e7:FLOW-3:r5', {
    title: branch.title,
    where: 'Rack 5',
    since: noon,
    until: '2026-03-01T12:30:00.000Z',
  });

  it('is found by what it is called and shelved, and said to be so once the server has confirmed', async () => {
    const page = await open(
      '/alarms/set-aside',
      { '/api/alarms/findable': found(branch), [path]: shelved },
      'operator',
    );
    expect(page.find('.find-alarms').exists()).toBe(false);
    await press(page, 'Set an alarm aside…');
    expect((opened?.asked ?? []).some((one) => one.path.includes('findable'))).toBe(false);
    await page.get('[name=find]').setValue('flow-3 r5');
    await flushPromises();
    expect((opened?.asked ?? []).map((one) => one.path)).toContain('/api/alarms/findable?search=flow-3+r5');
    expect(page.get('.found-alarms').text()).toContain('E7, Rack 5');
    await press(page, 'Shelve E7, Rack 5: Flow of a branch is low…');
    await page.get('[name=reason]').setValue('valve of the rack is being changed');
    await page.get('form[aria-label^=Shelve]').trigger('submit');
    await flushPromises();
    expect(sent('/shelve')).toEqual([
      { operator: 'A. Example', reason: 'valve of the rack is being changed', minutes: 30 },
    ]);
    expect(page.get('.confirmed').text()).toBe(
      'E7, Rack 5: Flow of a branch is low – shelved until 13:30:00, confirmed by the server.',
    );
  });

  it('comes from the list of limits with what is looked for, and offers no longer time than it may be shelved', async () => {
    const page = await open('/alarms/set-aside?find=WATER-1+E7', { '/api/alarms/findable': found(water) });
    expect((page.get('[name=find]').element as HTMLInputElement).value).toBe('WATER-1 E7');
    await press(page, 'Shelve E7: Water was found…');
    expect(page.get('[name=minutes]').attributes('max')).toBe('60');
    expect(page.get('.shelve-times').text()).not.toContain('2');
    await page.get('[name=reason]').setValue('rope is being changed');
    await page.get('[name=minutes]').setValue(61);
    expect(page.get('form[aria-label^=Shelve] button[type=submit]').attributes('disabled')).toBeDefined();
  });

  it('that is set aside already says so, and is not offered for the same again', async () => {
    const page = await open('/alarms/set-aside?find=flow', {
      '/api/alarms/findable': found({ ...branch, mode: 'outOfService' }),
    });
    expect(page.get('.found-alarms').text()).toContain('out of service already');
    expect(page.find('.found-acts button').exists()).toBe(false);
  });

  it('is said not to be there where no name has all the words', async () => {
    const page = await open('/alarms/set-aside?find=nowhere', { '/api/alarms/findable': found() });
    expect(page.get('.find-alarms').text()).toContain('No alarm of this site has all these words');
  });
});

describe('what is set aside', () => {
  it('says on which branch or point it is', async () => {
    const page = await open('/alarms/set-aside', {
      '/api/alarms/set-aside': { time: noon, alarms: [aSetAside('e7:FLOW-3:r5', { where: 'Rack 5' })] },
    });
    await vi.waitFor(() => expect(page.find('.aside-row').exists()).toBe(true));
    expect(page.get('.aside-row').text()).toContain('E7, Rack 5');
  });
});

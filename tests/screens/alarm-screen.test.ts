import type { AlarmsFrame } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { nextTick } from 'vue';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { anAlarm, anAlarmsFrame, anAlert, aPermit } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { openPage } from './fixtures/mount-page';

let page: VueWrapper | null = null;
const journal = {
  rows: [
    {
      sequence: 1,
      time: '2026-03-01T11:48:10.100Z',
      sourceTime: '2026-03-01T11:48:10.000Z',
      kind: 'transition',
      alarm: 'e7:MARGIN-1',
      unit: 'e7',
      entry: 'MARGIN-1',
      from: 'normal',
      to: 'unacknowledged',
      priority: 2,
      value: 4100,
      limit: 5000,
      unit_of_measure: 'Pa',
      where: 'supply main low',
      actor: null,
      station: null,
      reason: null,
      previousHash: '0',
      hash: '1',
    },
    {
      sequence: 2,
      time: '2026-03-01T11:50:00.100Z',
      sourceTime: '2026-03-01T11:50:00.000Z',
      kind: 'action',
      alarm: 'permit/p1',
      unit: 'e7',
      entry: null,
      from: null,
      to: null,
      priority: null,
      value: null,
      limit: null,
      unit_of_measure: null,
      where: '1',
      actor: 'A. Example',
      station: null,
      reason: 'permit opened',
      previousHash: '1',
      hash: '2',
    },
  ],
  next: null,
};

afterEach(() => {
  page?.unmount();
  vi.unstubAllGlobals();
});

async function show(
  alarms: Parameters<typeof anAlarmsFrame>[0],
  more: Partial<AlarmsFrame> = {},
  address = '/alarms',
): Promise<VueWrapper> {
  const server = new FakeServer();
  ({ page } = await openPage(server, address, { '/api/alarms/journal': journal }));
  server.connect();
  server.send(anAlarmsFrame(alarms, { standing: { 1: 1, 2: 0, 3: 4 }, ...more }));
  await nextTick();
  return page;
}

describe('the Alarms screen', () => {
  it('lists what stands worst first, with what follows under its first-out', async () => {
    const shown = await show([
      anAlarm('low', { priority: 3, title: 'Low one' }),
      anAlarm('tail', { priority: 1, title: 'Follower', foldedUnder: 'head' }),
      anAlarm('head', { priority: 1, title: 'First one' }),
    ]);
    const titles = (): string[] => shown.findAll('.standing h3').map((title) => title.text());
    expect(titles()).toEqual(['First one', 'Low one']);
    const unfold = shown.get('.unfold');
    expect(unfold.text()).toContain('Show 1 that follows from it');
    await unfold.trigger('click');
    expect(titles()).toEqual(['First one', 'Follower', 'Low one']);
    expect(unfold.attributes('aria-expanded')).toBe('true');
    expect(shown.get('.folded').text()).toContain('follows from: First one');
  });

  it('sets what is known of the case before all that holds in general', async () => {
    const detail = 'Rack 4: 95 L/min of free air since 11:48; reserve left for 0.6 open hoses.';
    const shown = await show([anAlarm('air', { detail })]);
    const card = shown.get('[data-testid=alarm-air]');
    expect(card.get('[data-testid=alarm-detail]').text().replaceAll('\u00a0', ' ')).toBe(detail);
    expect(card.text().replaceAll('\u00a0', ' ').indexOf(detail)).toBeLessThan(card.text().indexOf('Likely cause'));
  });

  it('keeps alerts and permits apart from the alarms, and counts neither among them', async () => {
    const shown = await show([], { alerts: [anAlert('e7:SET-1')], permits: [aPermit('p1')] });
    expect(shown.get('h1').text()).toContain('none standing');
    expect(shown.get('[data-testid="alert-e7:SET-1"]').text()).toContain('Set point changed');
    expect(shown.find('.beside .priority-mark').exists()).toBe(false);
    expect(shown.get('[data-testid=permit-p1]').text()).toContain('E7, Rack 1');
  });

  it('gives each priority a colour of its own, a shape of its own and a word', async () => {
    const shown = await show(([1, 2, 3] as const).map((priority) => anAlarm(`p${priority}`, { priority })));
    const marks = shown.findAll('.standing .priority-mark');
    expect(new Set(marks.map((mark) => mark.get('path').attributes('d'))).size).toBe(3);
    expect(marks.map((mark) => mark.text())).toEqual(['1', '2', '3']);
    const states = shown.findAll('.alarm-state').map((state) => state.text());
    expect(states.map((state) => state.split(' · ')[0])).toEqual(['act now', 'act soon', 'look into it']);
  });

  it('counts what stands, on every screen', async () => {
    const shown = await show([]);
    expect(shown.findAll('.places-nav .standing-one').map((one) => one.text().replace(/\s+/g, ' '))).toEqual([
      '1 1',
      '3 4',
    ]);
    expect(shown.text()).toContain('Nothing needs a person');
  });

  it('carries a caution on water, and says on every screen that Ebbline is no safety system', async () => {
    const shown = await show([anAlarm('w', { entry: 'WATER-1', title: 'Water found' })]);
    expect(shown.get('.caution').text()).toContain('Water near live equipment');
    expect(shown.get('footer').text()).toContain('no safety system');
  });

  it('shows the journal in the site’s time', async () => {
    const shown = await show([], {}, '/alarms/journal');
    await vi.waitFor(() => expect(shown.find('.journal-rows li').exists()).toBe(true), { timeout: 90_000 });
    const row = shown.findAll('.journal-rows li').find((one) => one.text().includes('raised'));
    expect(row?.text()).toContain('2026-03-01 12:48:10');
  });

  it('names the branch of a permit in the journal, not its id', async () => {
    const shown = await show([], {}, '/alarms/journal');
    await vi.waitFor(() => expect(shown.find('.journal-rows li').exists()).toBe(true), { timeout: 90_000 });
    const row = shown.findAll('.journal-rows li').find((one) => one.text().includes('permit'));
    expect(row?.text()).toContain('permit · Rack 1');
  });

  it('names the branch in the place of an alarm of one of its points', async () => {
    const shown = await show([anAlarm('i', { entry: 'INS-1', where: 'branch.1.flow' })]);
    expect(shown.get('.alarm-place').text()).toContain('E7, Branch flow, Rack 1');
  });
});

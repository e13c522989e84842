import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AlarmsFrame } from '@ebbline/shared/contract/live-feed';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { anAlarm, anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { plain } from './fixtures/loop-shown';

let opened: Page | null = null;
let server: FakeServer;
beforeEach(() => {
  server = new FakeServer();
});
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function show(
  alarms: readonly Alarm[],
  {
    address = '/alarms',
    answers = {},
    frame = {},
  }: { address?: string; answers?: Record<string, unknown>; frame?: Partial<AlarmsFrame> } = {},
): Promise<VueWrapper> {
  opened = await openPage(server, address, answers);
  server.connect();
  server.send(anAlarmsFrame(alarms, frame));
  await flushPromises();
  await vi.waitFor(() => expect(opened?.page.find('.alarm-screen').exists()).toBe(true), { timeout: 60_000 });
  return opened.page;
}
async function next(alarms: readonly Alarm[], frame: Partial<AlarmsFrame> = {}): Promise<void> {
  server.send(anAlarmsFrame(alarms, frame));
  await flushPromises();
}
const titles = (page: VueWrapper): string[] => page.findAll('.standing h3').map((title) => title.text());
const bodies = (path: string): unknown[] =>
  (opened?.asked ?? []).filter((one) => one.path === path && one.body !== undefined).map(({ body }) => body);

const three = [
  anAlarm('a', { title: 'First', priority: 1, unit: 'e1' }),
  anAlarm('b', { title: 'Second', priority: 2 }),
  anAlarm('c', { title: 'Third', priority: 3, state: 'acknowledged' }),
];

describe('a standing alarm in the list', () => {
  it('has its first action and the time left in sight, its cause and what follows one press away', async () => {
    const page = await show([...three, anAlarm('d', { title: 'Fourth', priority: 3 })], {
      frame: { clock: { kind: 'wall', now: '2026-03-01T11:50:10.000Z' } },
    });
    const row = page.get('[data-testid=alarm-b]');
    expect(row.get('.first-action').text()).toContain('Lower the supply set pressure');
    expect(plain(row.get('[data-testid=response]').text())).toBe('6 min left of 8 min');
    expect(row.text()).not.toContain('Likely cause');
    await row.get('.alarm-title').trigger('click');
    expect(row.text()).toContain('Likely cause');
    expect(row.text()).toContain('An opening would let water out.');
  });

  it('says where the time to respond is over', async () => {
    const page = await show(three);
    expect(plain(page.get('[data-testid=alarm-b] [data-testid=response]').text())).toBe(
      '8 min to respond, over by 3 min',
    );
  });

  it('neither opens nor closes by itself when more come', async () => {
    const page = await show(three);
    expect(page.get('[data-testid=alarm-a] .alarm-title').attributes('aria-expanded')).toBe('true');
    await next([...three, anAlarm('d', { title: 'Fourth' })]);
    expect(page.get('[data-testid=alarm-a] .alarm-title').attributes('aria-expanded')).toBe('true');
    expect(page.get('[data-testid=alarm-d] .alarm-title').attributes('aria-expanded')).toBe('false');
  });
});

describe('the filters of the list', () => {
  it('stand in the address, and what they hide is counted with the worst of it', async () => {
    const page = await show(three, { address: '/alarms?unit=e7' });
    expect(titles(page)).toEqual(['Second', 'Third']);
    const note = page.get('[data-testid=hold-note]');
    expect(plain(note.text())).toContain('1 not shown, worst');
    expect(note.get('.priority-mark').attributes('aria-label')).toBe('priority 1, act now');
    await page.get('[name=state]').setValue('seen');
    await flushPromises();
    expect(opened?.router.currentRoute.value.query).toEqual({ unit: 'e7', state: 'seen' });
    expect(titles(page)).toEqual(['Third']);
  });

  it('choose priorities and words', async () => {
    const page = await show(three);
    await page.get('.filter-priorities button').trigger('click');
    await flushPromises();
    expect(titles(page)).toEqual(['First']);
    await page.get('[name=text]').setValue('no such words');
    await flushPromises();
    expect(page.text()).toContain('Nothing that stands is among what is chosen');
    expect(opened?.router.currentRoute.value.query).toEqual({ priority: '1', text: 'no such words' });
  });
});

describe('several alarms acknowledged at once', () => {
  const answers = {
    '/api/alarms/acknowledge': {
      answers: [
        { id: 'a', done: true, code: null, message: null },
        { id: 'b', done: false, code: 'ALARM_NOT_STANDING', message: 'Second no longer stands.' },
      ],
    },
  };

  it('are those that are chosen, under one comment, and each answer is shown in the server’s words', async () => {
    const page = await show(three, { answers });
    const all = page.get<HTMLInputElement>('.several input');
    expect(page.get('.several').text()).toContain('All 2 shown and not acknowledged');
    await all.setValue(true);
    await page.get('.several-open').trigger('click');
    await page.get('[name=comment]').setValue('known, pump change');
    await page.get('form.acknowledge').trigger('submit');
    await flushPromises();
    expect(bodies('/api/alarms/acknowledge')).toEqual([
      { operator: 'A. Example', comment: 'known, pump change', alarms: ['a', 'b'] },
    ]);
    const told = page.get('[data-testid=several-answers]');
    expect(told.text()).toContain('1 of 2 acknowledged, confirmed by the server.');
    expect(told.get('.problem').text()).toContain('Second no longer stands.');
    expect(page.get<HTMLInputElement>('[data-testid=alarm-b] .alarm-pick input').element.checked).toBe(true);
  });

  it('are never more than what is shown: neither what is folded nor what a filter hides', async () => {
    const folded = anAlarm('f', { title: 'Follower', foldedUnder: 'b' });
    const page = await show([...three, folded], { address: '/alarms?unit=e7', answers });
    expect(page.get('.several').text()).toContain('The one shown');
    await page.get('.several input').setValue(true);
    await page.get('.unfold').trigger('click');
    expect(page.get('.several').text()).toContain('All 2 shown');
    expect(page.get('.several-open').text()).toBe('Acknowledge 1…');
  });

  it('show nothing as done where the server did not answer so', async () => {
    const page = await show(three);
    await page.get('.several input').setValue(true);
    await page.get('.several-open').trigger('click');
    await page.get('form.acknowledge').trigger('submit');
    await flushPromises();
    expect(page.find('[data-testid=several-answers]').exists()).toBe(false);
    expect(page.get('form.acknowledge [role=alert]').text()).toContain('there is no such route');
  });
});

describe('the order of the list', () => {
  const newer = anAlarm('n', { title: 'New and worse', priority: 1, since: '2026-03-01T10:00:00.000Z' });

  it('is held while somebody is in it, says so, and goes on when they leave', async () => {
    const page = await show(three);
    const list = page.get('.alarm-groups');
    await list.trigger('pointerenter');
    expect(page.get('[data-testid=hold-note]').text()).toContain('Order held');
    await next([newer, ...three.slice(1)]);
    expect(titles(page)).toEqual(['First', 'Second', 'Third', 'New and worse']);
    expect(page.get('[data-testid=alarm-a]').text()).toContain('stands no longer');
    expect(page.find('[data-testid=alarm-a] .alarm-pick').exists()).toBe(false);
    expect(page.get('[data-testid=hold-note]').text()).toContain('1 new at the end, 1 stand no longer');
    await list.trigger('pointerleave');
    expect(titles(page)).toEqual(['New and worse', 'Second', 'Third']);
  });

  it('is let go by a hand that lies on the list and does not move', async () => {
    const page = await show(three);
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    await page.get('.alarm-groups').trigger('pointermove');
    server.send(anAlarmsFrame([newer, ...three]));
    await vi.advanceTimersByTimeAsync(59_000);
    expect(titles(page).at(-1)).toBe('New and worse');
    await vi.advanceTimersByTimeAsync(1_001);
    expect(titles(page)[0]).toBe('New and worse');
  });
});

describe('the keyboard in the list', () => {
  it('goes from row to row, unfolds, folds and chooses', async () => {
    const page = await show([...three, anAlarm('f', { title: 'Follower', foldedUnder: 'a' })]);
    const title = (id: string): HTMLElement => page.get<HTMLElement>(`[data-testid=alarm-${id}] .alarm-title`).element;
    const press = async (key: string): Promise<void> => {
      document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      await flushPromises();
    };
    title('a').focus();
    await press('ArrowRight');
    expect(titles(page)).toContain('Follower');
    await press('ArrowDown');
    expect(document.activeElement).toBe(title('f'));
    await press('End');
    expect(document.activeElement).toBe(title('c'));
    await press('Home');
    await press('ArrowLeft');
    expect(titles(page)).not.toContain('Follower');
    await press('+');
    expect(page.get<HTMLInputElement>('[data-testid=alarm-a] .alarm-pick input').element.checked).toBe(true);
    expect(page.get('.list-keys').text()).toContain('next and previous alarm');
  });
});

describe('a flood', () => {
  it('is one line with its first-outs, which stand at the top', async () => {
    const flood = {
      from: '2026-03-01T11:40:00.000Z',
      to: null,
      annunciations: 34,
      mostInTenMinutes: 12,
      firstOuts: [
        { alarm: 'b', entry: 'MARGIN-1', title: 'Second', unit: 'e7' },
        { alarm: 'x', entry: 'AIR-1', title: 'Gone one', unit: 'e1' },
      ],
    };
    const page = await show(three, { frame: { flood } });
    const line = page.get('[data-testid=flood]');
    expect(line.text()).toContain('34 told so far, 12 in its worst ten minutes');
    expect(line.findAll('li').map((one) => one.text())).toEqual([
      'E7 Second',
      expect.stringContaining('stands no longer'),
    ]);
    expect(titles(page)).toEqual(['Second', 'First', 'Third']);
    await line.get('button').trigger('click');
    await flushPromises();
    expect(document.activeElement?.textContent?.trim()).toBe('Second');
    await next(three);
    expect(page.find('[data-testid=flood]').exists()).toBe(false);
  });
});

describe('a new alarm', () => {
  it('is told to a screen reader once, and those that follow in one sentence, not one by one', async () => {
    const page = await show(three);
    const said = page.get('[data-testid=announced]');
    expect(said.text()).toBe('');
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const [d, e, f] = ['d', 'e', 'f'].map((id) => anAlarm(id, { title: `Alarm ${id}` })) as [Alarm, Alarm, Alarm];
    server.send(anAlarmsFrame([...three, d]));
    await vi.advanceTimersByTimeAsync(10);
    expect(said.text()).toContain('New alarm, act soon: Alarm d');
    server.send(anAlarmsFrame([...three, d, e]));
    server.send(anAlarmsFrame([...three, d, e, f]));
    await vi.advanceTimersByTimeAsync(100);
    expect(said.text()).toContain('Alarm d');
    await vi.advanceTimersByTimeAsync(10_000);
    expect(said.text()).toContain('2 new alarms');
  });
});

import type { Alarm } from '@ebbline/shared/contract/alarm';
import { fail, ok } from '@ebbline/shared/errors/result';
import type { SessionState } from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';
import { mount, RouterLinkStub } from '@vue/test-utils';
import { shallowRef } from 'vue';
import { beforeEach, describe, expect, it } from 'vitest';
import { resetGuardMs } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';
import type { Entry, EntryAnswer } from '../../frontend/src/components/entry';
import { entryKey } from '../../frontend/src/components/entry';
import { resettableFrom, resetAfterMs } from '../../frontend/src/components/alarm-facts';
import StandingAlarm from '../../frontend/src/screens/alarms/StandingAlarm.vue';
import { useAcknowledge } from '../../frontend/src/state/use-acknowledge';
import type { Acknowledging } from '../../frontend/src/state/use-acknowledge';
import { anAlarm } from './fixtures/builders';
import { aSession, noSession } from './fixtures/sessions';

const alarm = anAlarm('e7:MARGIN-1');
const done: Alarm = {
  ...alarm,
  state: 'acknowledged',
  acknowledgedBy: 'A. Example',
  acknowledgedAt: '2026-03-01T12:00:01.000Z',
  stateSince: '2026-03-01T12:00:01.000Z',
};

const session = shallowRef<SessionState | null>(null);
const never = (): Promise<EntryAnswer> => Promise.reject(new Error('nobody was to sign in'));
const entry: Entry = { session, rememberedName: () => '', byName: never, byPassword: never };

const card = (acknowledging: Acknowledging, given = alarm) =>
  mount(StandingAlarm, {
    props: {
      alarm: given,
      zone: 'UTC',
      now: '2026-03-01T12:00:00.000Z',
      place: 'E7, supply main low',
      acknowledging,
    },
    global: { provide: { [entryKey as symbol]: entry }, stubs: { RouterLink: RouterLinkStub } },
  });

beforeEach(() => {
  session.value = aSession();
});

describe('acknowledging an alarm', () => {
  it('sends the comment under the name of who is signed in, and waits', async () => {
    const shown = card({ step: 'idle' });
    await shown.get('.open-acknowledge').trigger('click');
    expect(shown.get('[data-testid=as-whom]').text()).toBe('as A. Example');
    await shown.get('input[name=comment]').setValue('on my way');
    await shown.get('form').trigger('submit');
    expect(shown.emitted('acknowledge')).toEqual([['on my way']]);
    expect(shown.text()).toContain('not acknowledged');
    expect(shown.text()).not.toContain('acknowledged by');
  });

  it.each([
    ['where nobody is signed in', noSession(), 'Nobody is signed in'],
    ['to a viewer', aSession('viewer'), 'not among what this role may do'],
  ])('is not offered %s, and says so', async (_, given, words) => {
    session.value = given;
    const shown = card({ step: 'idle' });
    await shown.get('.open-acknowledge').trigger('click');
    const form = shown.get('form.acknowledge');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeDefined();
    expect(shown.get('[data-testid=who-needed]').text()).toContain(words);
    await form.trigger('submit');
    expect(shown.emitted('acknowledge')).toBeUndefined();
  });

  it('shows a busy button, and still the old state, until the server answers', async () => {
    const shown = card({ step: 'idle' });
    await shown.get('.open-acknowledge').trigger('click');
    await shown.setProps({ acknowledging: { step: 'busy' } });
    const button = shown.get('button[type=submit]');
    expect(button.attributes('disabled')).toBeDefined();
    expect(button.text()).toBe('Waiting for the server…');
    expect(shown.text()).toContain('not acknowledged');
  });

  it('shows what the server confirmed, and an older frame does not take it back', async () => {
    const shown = card({ step: 'confirmed', alarm: done });
    expect(shown.get('[data-testid=acknowledged-by]').text()).toBe('acknowledged by A. Example at 12:00:01');
    expect(shown.find('form').exists()).toBe(false);
    await shown.setProps({ alarm });
    expect(shown.text()).toContain('Confirmed by the server');
  });

  it('gives way to a newer frame: the condition may have come again', () => {
    const again = anAlarm('e7:MARGIN-1', { stateSince: '2026-03-01T12:05:00.000Z' });
    expect(card({ step: 'confirmed', alarm: done }, again).find('.open-acknowledge').exists()).toBe(true);
  });

  it('says who was first where somebody was', async () => {
    const shown = card({ step: 'idle' });
    await shown.get('.open-acknowledge').trigger('click');
    await shown.setProps({ acknowledging: { step: 'refused', text: 'Already acknowledged by B. Other at 11:59:58.' } });
    expect(shown.get('[role=alert]').text()).toContain('B. Other at 11:59:58');
    expect(shown.text()).not.toContain('Confirmed');
  });
});

describe('a latched alarm', () => {
  const latched = anAlarm('e7:WATER-1', {
    entry: 'WATER-1',
    state: 'latchedAcknowledged',
    stateSince: '2026-03-01T11:59:40.000Z',
    acknowledgedBy: 'A. Example',
    acknowledgedAt: '2026-03-01T11:59:55.000Z',
  });

  it('says that it is latched and must be acknowledged first', () => {
    const shown = card({ step: 'idle' }, { ...latched, state: 'latchedUnacknowledged', acknowledgedAt: null });
    expect(shown.get('[data-testid=latched]').text()).toContain('Acknowledge it first');
    expect(shown.get('.open-acknowledge').text()).toBe('Acknowledge…');
  });

  it('says from when it can be reset, and offers it no sooner', async () => {
    const shown = card({ step: 'idle' }, latched);
    expect(shown.get('[data-testid=latched]').text()).toContain('can be reset from 12:00:05');
    expect(shown.get('.open-acknowledge').attributes('disabled')).toBeDefined();
    await shown.setProps({ now: '2026-03-01T12:00:05.000Z' });
    expect(shown.get('[data-testid=latched]').text()).toContain('can be reset now');
    expect(shown.get('.open-acknowledge').attributes('disabled')).toBeUndefined();
  });

  it('waits, after its acknowledgement and after its condition went, as long as the server does', () => {
    expect(resetAfterMs).toBe(resetGuardMs);
    expect(resettableFrom(latched)).toBe('2026-03-01T12:00:05.000Z');
    expect(resettableFrom({ ...latched, stateSince: '2026-03-01T11:59:58.000Z' })).toBe('2026-03-01T12:00:08.000Z');
    expect(resettableFrom({ ...latched, state: 'acknowledged' })).toBeNull();
  });

  it('is reset by a form of its own, and stays until the server has confirmed it', async () => {
    const shown = card({ step: 'idle' }, latched);
    await shown.setProps({ now: '2026-03-01T12:01:00.000Z' });
    await shown.get('.open-acknowledge').trigger('click');
    expect(shown.get('button[type=submit]').text()).toBe('Reset');
    await shown.get('form').trigger('submit');
    expect(shown.emitted('acknowledge')).toEqual([['']]);
    await shown.setProps({ acknowledging: { step: 'busy' } });
    expect(shown.find('[data-testid=latched]').exists()).toBe(true);
    const ended: Alarm = { ...latched, state: 'normal', stateSince: '2026-03-01T12:01:01.000Z' };
    await shown.setProps({ acknowledging: { step: 'confirmed', alarm: ended } });
    expect(shown.get('.confirmed').text()).toBe('Ended. Confirmed by the server.');
    expect(shown.find('.open-acknowledge').exists()).toBe(false);
  });

  it('does not open the form of its reset by the form of its acknowledgement', async () => {
    const seen = { ...latched, state: 'latchedUnacknowledged', acknowledgedAt: null } as const;
    const shown = card({ step: 'idle' }, seen);
    await shown.get('.open-acknowledge').trigger('click');
    await shown.setProps({ acknowledging: { step: 'confirmed', alarm: { ...latched, stateSince: seen.stateSince } } });
    expect(shown.find('form').exists()).toBe(false);
  });

  it('closes its form on Esc', async () => {
    const shown = card({ step: 'idle' });
    await shown.get('.open-acknowledge').trigger('click');
    await shown.get('form').trigger('keydown', { key: 'Escape' });
    expect(shown.find('form').exists()).toBe(false);
  });
});

describe('a change that the journal refused', () => {
  it('is said to be not yet recorded, and no other is', () => {
    const unrecorded = card({ step: 'idle' }, { ...alarm, recorded: false });
    expect(unrecorded.get('[data-testid=not-recorded]').text()).toContain('Not yet recorded');
    for (const given of [alarm, { ...alarm, recorded: true }])
      expect(card({ step: 'idle' }, given).find('[data-testid=not-recorded]').exists()).toBe(false);
  });
});

describe('the state of acknowledgements', () => {
  it('is busy until the reply, sends a second press nowhere, then holds the reply', async () => {
    let answer: (reply: Result<Alarm>) => void = () => undefined;
    const sent: string[] = [];
    const { state, acknowledge } = useAcknowledge({
      send: (id) => {
        sent.push(id);
        return new Promise((resolve) => {
          answer = resolve;
        });
      },
    });
    const first = acknowledge('a', 'A. Example', '');
    await acknowledge('a', 'A. Example', '');
    expect(sent).toEqual(['a']);
    expect(state.value.get('a')).toEqual({ step: 'busy' });
    answer(ok(done));
    await first;
    expect(state.value.get('a')).toEqual({ step: 'confirmed', alarm: done });
  });

  it('holds a refusal in the server’s words, and its own words where the server can’t be reached', async () => {
    const replies = [
      fail({ code: 'TAKEN', message: 'B. Other was first.' }),
      fail({ code: 'REQUEST_TIMED_OUT', message: 'x' }),
    ];
    const { state, acknowledge } = useAcknowledge({ send: () => Promise.resolve(replies.shift() ?? ok(done)) });
    await acknowledge('a', 'A', '');
    expect(state.value.get('a')).toEqual({ step: 'refused', text: 'B. Other was first.' });
    await acknowledge('a', 'A', '');
    expect(state.value.get('a')).toMatchObject({
      step: 'refused',
      text: expect.stringContaining('Nothing is confirmed'),
    });
  });
});

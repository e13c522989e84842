import type { Alarm } from '@ebbline/shared/contract/alarm';
import { ok } from '@ebbline/shared/errors/result';
import { effectScope, nextTick, shallowRef } from 'vue';
import { afterEach, expect, it } from 'vitest';
import { confirmedAlarm } from '../../frontend/src/state/confirmed-alarm';
import { useAcknowledge } from '../../frontend/src/state/use-acknowledge';
import { anAlarm } from './fixtures/builders';

const at = (time: string): Partial<Alarm> => ({ stateSince: `2026-03-01T${time}.000Z` });
const id = 'e7:MARGIN-1';
const raised = anAlarm(id, at('12:00:00'));
const seen = anAlarm(id, { ...at('12:00:10'), state: 'acknowledged' });
/** Told anew by a clock that was set back by an hour. */
const again = anAlarm(id, at('11:30:00'));
let end: () => void = () => undefined;
afterEach(() => end());

function page(answer: Alarm) {
  const standing = shallowRef<readonly Alarm[]>([raised]);
  const scope = effectScope();
  const desk = scope.run(() =>
    useAcknowledge({ send: () => Promise.resolve(ok(answer)), standing: () => standing.value }),
  );
  end = () => scope.stop();
  if (desk === undefined) throw new Error('the scope gave no desk');
  const shown = async (...alarms: readonly Alarm[]): Promise<Alarm | null> => {
    standing.value = alarms;
    await nextTick();
    const [alarm] = alarms;
    return alarm === undefined ? null : confirmedAlarm(alarm, desk.state.value.get(id));
  };
  return { desk, shown, acknowledge: () => desk.acknowledge(id, 'A. Example', '') };
}

it('shows an alarm that was told anew after the clock was set back, though its acknowledgement is of a later time', async () => {
  const { shown, acknowledge } = page(seen);
  await acknowledge();
  expect(await shown({ ...raised })).toBe(seen);
  expect(await shown(seen)).toBe(seen);
  expect(await shown(again)).toBe(again);
});

it('shows it too where the frames came past what was confirmed', async () => {
  const { shown, acknowledge } = page(seen);
  await acknowledge();
  const later = anAlarm(id, at('12:00:20'));
  expect(await shown(later)).toBe(later);
  expect(await shown(again)).toBe(again);
});

it('shows it too where what was confirmed is its end, and keeps that end while it stands no longer', async () => {
  const ended = anAlarm(id, { ...at('12:00:10'), state: 'normal' });
  const { desk, shown, acknowledge } = page(ended);
  await acknowledge();
  expect(await shown({ ...raised })).toBe(ended);
  await shown();
  expect(confirmedAlarm(raised, desk.state.value.get(id))).toBe(ended);
  expect(await shown(again)).toBe(again);
});

it('holds a second acknowledgement against the frames before it, as it did the first', async () => {
  const { shown, acknowledge } = page(seen);
  await acknowledge();
  await shown(seen);
  await shown(again);
  await acknowledge();
  expect(await shown({ ...again })).toBe(seen);
});

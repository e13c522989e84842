import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';
import { effectScope, nextTick, ref } from 'vue';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { tonePatterns } from '../../frontend/src/state/tone-pattern';
import { useAlarmSound, type AlarmSound } from '../../frontend/src/state/use-alarm-sound';

const call: CallingAlarm = {
  ...{ id: 'a', priority: 1, since: '2031-05-06T07:08:09.000Z', unit: 'e1', title: 'a', where: null },
};
let end: () => void = () => undefined;

beforeEach(() => {
  vi.useFakeTimers();
  localStorage.clear();
});
afterEach(() => {
  end();
  vi.useRealTimers();
});

/** A page that sounds for one alarm, on a machine that may take the sound away. */
async function sounding() {
  let changed: () => void = () => undefined;
  const card = { lets: true };
  const play = vi.fn();
  const player = {
    allowed: false,
    whenChanged: (listener: () => void) => void (changed = listener),
    // As browsers do: an answer that is not yes stays open.
    ask: vi.fn(() => {
      if (!card.lets) return new Promise<void>(() => undefined);
      change(true);
      return Promise.resolve();
    }),
    play,
    stop: () => undefined,
    close: () => Promise.resolve(),
  };
  function change(allowed: boolean): void {
    player.allowed = allowed;
    changed();
  }
  const calling = ref<CallingAlarm[]>([]);
  const scope = effectScope();
  const sound = scope.run(() =>
    useAlarmSound(
      () => calling.value,
      () => player,
    ),
  ) as AlarmSound;
  end = () => scope.stop();
  window.dispatchEvent(new Event('click'));
  await vi.advanceTimersByTimeAsync(0);
  calling.value = [call];
  await nextTick();
  expect(play).toHaveBeenCalledTimes(1);
  play.mockClear();
  return { sound, player, play, card, change };
}
const everyMs = tonePatterns[1].everyS * 1000;

it('says that it is off once it was taken away, and does not play to nobody', async () => {
  const { sound, play, card, change } = await sounding();
  card.lets = false;
  change(false);
  expect(sound.blocked.value).toBe(true);
  await vi.advanceTimersByTimeAsync(3 * everyMs);
  expect(play).not.toHaveBeenCalled();
});

it('finds out by itself where the browser did not tell', async () => {
  const { sound, player, play, card } = await sounding();
  card.lets = false;
  player.allowed = false;
  await vi.advanceTimersByTimeAsync(everyMs);
  expect(play).not.toHaveBeenCalled();
  expect(sound.blocked.value).toBe(true);
});

it('asks for it again each time that a tone is due, and is heard once it may be', async () => {
  const { sound, play, card, change } = await sounding();
  card.lets = false;
  change(false);
  await vi.advanceTimersByTimeAsync(everyMs);
  card.lets = true;
  await vi.advanceTimersByTimeAsync(everyMs);
  expect(play).toHaveBeenCalled();
  expect(sound.blocked.value).toBe(false);
});

it('asks for it again when the page comes into sight', async () => {
  const { sound, player, card, change } = await sounding();
  sound.silence();
  card.lets = false;
  change(false);
  await vi.advanceTimersByTimeAsync(0);
  player.ask.mockClear();
  card.lets = true;
  document.dispatchEvent(new Event('visibilitychange'));
  await vi.advanceTimersByTimeAsync(0);
  expect(player.ask).toHaveBeenCalledTimes(1);
  expect(sound.blocked.value).toBe(false);
});

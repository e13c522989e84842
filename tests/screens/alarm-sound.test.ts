import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';
import { effectScope, nextTick, ref } from 'vue';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { tonePatterns, type TonePattern } from '../../frontend/src/state/tone-pattern';
import { useAlarmSound, type AlarmSound } from '../../frontend/src/state/use-alarm-sound';

const call = (id: string, priority: 1 | 2 | 3): CallingAlarm => ({
  ...{ id, priority, since: '2031-05-06T07:08:09.000Z', unit: 'e1', title: id, where: null },
});

beforeEach(() => {
  vi.useFakeTimers();
  localStorage.clear();
});
let end: (() => void) | null = null;
afterEach(() => {
  end?.();
  vi.useRealTimers();
});

/** What was played, by priority, and how loud. */
function bench() {
  const calling = ref<CallingAlarm[]>([]);
  const played: string[] = [];
  const player = {
    allowed: false,
    whenChanged: () => undefined,
    ask: () => Promise.resolve(void (player.allowed = true)),
    play: (pattern: TonePattern, loudness: number) => {
      const priority = ([1, 2, 3] as const).find((one) => tonePatterns[one] === pattern);
      played.push(`${priority} at ${loudness}`);
    },
    stop: vi.fn(),
    close: () => Promise.resolve(),
  };
  const scope = effectScope();
  const sound = scope.run(() =>
    useAlarmSound(
      () => calling.value,
      () => player,
    ),
  ) as AlarmSound;
  end = () => scope.stop();
  const click = async () => {
    window.dispatchEvent(new Event('click'));
    await vi.advanceTimersByTimeAsync(0);
  };
  return { calling, played, player, sound, click, scope };
}

describe('the sound of alarms', () => {
  it('is kept back by the browser until someone clicks, and says so', async () => {
    const { calling, played, sound, click } = bench();
    calling.value = [call('a', 1)];
    await nextTick();
    expect(played).toEqual([]);
    expect(sound.blocked.value).toBe(true);
    await click();
    expect(sound.blocked.value).toBe(false);
    expect(played).toEqual(['1 at 0.2']);
  });

  it('comes again until the alarm is acknowledged, each priority in its own time', async () => {
    const { calling, played, click } = bench();
    await click();
    calling.value = [call('a', 2)];
    await nextTick();
    await vi.advanceTimersByTimeAsync(24_000);
    expect(played).toEqual(['2 at 0.2', '2 at 0.2', '2 at 0.2']);
    calling.value = [];
    await nextTick();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(played).toHaveLength(3);
  });

  it('is that of a more urgent alarm at once', async () => {
    const { calling, played, click } = bench();
    await click();
    calling.value = [call('a', 3)];
    await nextTick();
    calling.value = [call('a', 3), call('b', 1)];
    await nextTick();
    expect(played).toEqual(['3 at 0.2', '1 at 0.2']);
  });

  it('is silenced for what calls, and for nothing that comes after', async () => {
    const { calling, played, sound, click, player } = bench();
    await click();
    calling.value = [call('a', 1)];
    await nextTick();
    sound.silence();
    await nextTick();
    expect(player.stop).toHaveBeenCalled();
    expect(sound.sounding.value).toBeNull();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(played).toHaveLength(1);
    calling.value = [call('b', 3), call('a', 1)];
    await nextTick();
    expect(played.at(-1)).toBe('3 at 0.2');
  });

  it('is as loud as was chosen, also next time, and off where that was chosen', async () => {
    const first = bench();
    await first.click();
    first.calling.value = [call('a', 1)];
    await nextTick();
    first.sound.choose('high');
    expect(first.played.at(-1)).toBe('1 at 0.6');
    first.sound.choose('off');
    await vi.advanceTimersByTimeAsync(60_000);
    expect(first.played).toHaveLength(2);
    expect(first.sound.sounding.value).toBeNull();
    expect(first.sound.blocked.value).toBe(false);
    first.scope.stop();
    expect(bench().sound.volume.value).toBe('off');
  });

  it('lets hear how loud it is when that is chosen while nothing calls', async () => {
    const { played, sound, click } = bench();
    await click();
    sound.choose('low');
    expect(played).toEqual(['3 at 0.06']);
  });

  it('ends with the page', async () => {
    const { calling, played, click, scope } = bench();
    await click();
    calling.value = [call('a', 1)];
    await nextTick();
    scope.stop();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(played).toHaveLength(1);
  });
});

import type { Priority } from '@ebbline/shared/contract/alarm';
import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';
import { computed, onScopeDispose, readonly, ref, shallowRef, watch, type Ref } from 'vue';
import { callOf, heardPriority } from './silenced-calls';
import { tonePatterns, type TonePattern } from './tone-pattern';
import { TonePlayer } from './tone-player';

export const soundVolumes = ['off', 'low', 'middle', 'high'] as const;
export type SoundVolume = (typeof soundVolumes)[number];

/** Of full scale. */
const loudnessOf: Readonly<Record<SoundVolume, number>> = { off: 0, low: 0.06, middle: 0.2, high: 0.6 };
const key = 'ebbline.alarmSound';
/** What a browser takes for a person's will that the page may make sound. */
const gestures = ['click', 'keydown', 'pointerup'] as const;

/** What sounds: a `TonePlayer`, or what a test puts in its place. */
export type Player = Pick<TonePlayer, 'allowed' | 'whenChanged' | 'ask' | 'play' | 'stop' | 'close'>;

export interface AlarmSound {
  /** Kept in this browser. */
  readonly volume: Readonly<Ref<SoundVolume>>;
  /** The browser lets no page sound before someone has clicked or typed in it, and may take the sound away later. */
  readonly blocked: Readonly<Ref<boolean>>;
  /** What sounds now, or would if it were let; null: silence. */
  readonly sounding: Readonly<Ref<Priority | null>>;
  /** Keeps it, and lets it be heard. */
  choose(volume: SoundVolume): void;
  /** Of what calls now nothing sounds any more. It is not acknowledged by that, and what calls next sounds. */
  silence(): void;
}

/** Lets be heard what calls, by its priority, again and again until it is acknowledged or silenced. */
export function useAlarmSound(
  calling: () => readonly CallingAlarm[],
  open: () => Player | null = openPlayer,
): AlarmSound {
  const volume = ref<SoundVolume>(keptVolume());
  const player = shallowRef<Player | null>(null);
  const allowed = ref(false);
  /** A browser that has no sound at all. */
  const mute = ref(false);
  const silenced = shallowRef<ReadonlySet<string>>(new Set());
  const sounding = computed(() => (volume.value === 'off' ? null : heardPriority(calling(), silenced.value)));
  let timer: ReturnType<typeof setTimeout> | null = null;

  const play = (pattern: TonePattern): void => player.value?.play(pattern, loudnessOf[volume.value]);
  const quiet = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    player.value?.stop();
  };
  const repeat = (pattern: TonePattern): void => {
    look();
    if (allowed.value) play(pattern);
    else void unblock();
    timer = setTimeout(() => repeat(pattern), pattern.everyS * 1000);
  };
  const look = (): void => {
    allowed.value = player.value?.allowed ?? false;
  };
  /** A browser that does not let it may leave the answer open until the next click. */
  const unblock = async (): Promise<void> => {
    if (player.value?.allowed === false) await player.value.ask().catch(stillBlocked);
    look();
  };
  const onGesture = (): void => {
    if (player.value === null) {
      player.value = open();
      player.value?.whenChanged(look);
      mute.value = player.value === null;
    }
    void unblock();
  };
  const onSight = (): void => {
    if (document.visibilityState === 'visible') void unblock();
  };

  // Older browsers do not tell it; there the next click does.
  const { userActivation } = navigator as { readonly userActivation?: UserActivation };
  if (userActivation?.hasBeenActive === true) onGesture();
  for (const gesture of gestures) window.addEventListener(gesture, onGesture, { capture: true });
  document.addEventListener('visibilitychange', onSight);
  watch(
    [sounding, allowed],
    ([priority]) => {
      quiet();
      // Also where it was taken away: each time that it is due, it is asked for again.
      if (priority !== null && player.value !== null) repeat(tonePatterns[priority]);
    },
    { immediate: true },
  );
  onScopeDispose(() => {
    for (const gesture of gestures) window.removeEventListener(gesture, onGesture, { capture: true });
    document.removeEventListener('visibilitychange', onSight);
    quiet();
    void player.value?.close();
  });

  return {
    volume: readonly(volume),
    blocked: computed(() => volume.value !== 'off' && !allowed.value && !mute.value),
    sounding,
    choose(next) {
      volume.value = next;
      localStorage.setItem(key, next);
      quiet();
      const heard = sounding.value;
      if (heard !== null) repeat(tonePatterns[heard]);
      else if (next !== 'off') play(tonePatterns[3]);
    },
    silence() {
      silenced.value = new Set(calling().map(callOf));
    },
  };
}

function openPlayer(): Player | null {
  return typeof AudioContext === 'undefined' ? null : new TonePlayer(new AudioContext());
}

function keptVolume(): SoundVolume {
  const kept = localStorage.getItem(key);
  return soundVolumes.find((volume) => volume === kept) ?? 'middle';
}

/** The page says so until the next click. */
const stillBlocked = (): void => undefined;

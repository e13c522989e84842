import type { Ref } from 'vue';
import { onScopeDispose, ref, watch } from 'vue';

/** So many seconds of the past go by in one of now. */
export const playSpeeds = [1, 10, 60] as const;
export type PlaySpeed = (typeof playSpeeds)[number];

export interface Play {
  readonly playing: Ref<boolean>;
  readonly speed: Ref<PlaySpeed>;
}

/**
 * Moves on each second, and waits where the last move has no answer yet: what is seen is never ahead of what was read.
 * @param move goes on by so many seconds; false where there is no further
 */
export function usePlay(isReading: () => boolean, move: (seconds: number) => boolean): Play {
  const playing = ref(false);
  const speed = ref<PlaySpeed>(1);
  let timer: ReturnType<typeof setInterval> | null = null;
  const stop = (): void => {
    if (timer !== null) clearInterval(timer);
    timer = null;
  };
  watch(playing, (on) => {
    stop();
    if (on)
      timer = setInterval(() => {
        if (!isReading() && !move(speed.value)) playing.value = false;
      }, 1000);
  });
  onScopeDispose(stop);
  return { playing, speed };
}

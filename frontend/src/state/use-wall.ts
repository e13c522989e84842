import type { Ref } from 'vue';
import { onScopeDispose, readonly, ref } from 'vue';
import { holdTheme } from './use-theme';

export interface Wall {
  /** The browser keeps the screen awake. */
  readonly awake: Readonly<Ref<boolean>>;
  /** By how much the whole picture stands aside now, px: nothing bright stays on one place for long. */
  readonly aside: Readonly<Ref<readonly [x: number, y: number]>>;
}

/** Each so long the picture moves on by a step. ms */
const stepMs = 60_000;
/** A round of eight steps; as far as a bright edge is wide. px */
const steps: readonly (readonly [number, number])[] = [
  [0, 0],
  [6, 0],
  [6, 6],
  [0, 6],
  [-6, 6],
  [-6, 0],
  [-6, -6],
  [0, -6],
];

/**
 * What a screen on a wall needs while it shows: dark, awake as far as the browser allows, and never quite still. Ends with its
 * scope.
 * @param leave called on Escape
 */
export function useWall(leave: () => void): Wall {
  const awake = ref(false);
  const aside = ref(steps[0] ?? ([0, 0] as const));
  let lock: WakeLockSentinel | null = null;
  let ended = false;
  let step = 0;

  /** A browser lets go of it where the page was hidden. */
  async function stayAwake(): Promise<void> {
    if (document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
    } catch {
      // Not allowed here; the wall says so.
      return;
    }
    if (ended) return void lock.release();
    awake.value = true;
    lock.addEventListener('release', () => (awake.value = false));
  }
  const onVisible = (): void => void (awake.value ? undefined : stayAwake());
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') leave();
  };
  const release = holdTheme('dark');
  document.documentElement.dataset['wall'] = 'on';
  document.addEventListener('visibilitychange', onVisible);
  window.addEventListener('keydown', onKey);
  const timer = setInterval(() => {
    step = (step + 1) % steps.length;
    aside.value = steps[step] ?? [0, 0];
  }, stepMs);
  void stayAwake();
  onScopeDispose(() => {
    ended = true;
    release();
    delete document.documentElement.dataset['wall'];
    document.removeEventListener('visibilitychange', onVisible);
    window.removeEventListener('keydown', onKey);
    clearInterval(timer);
    void lock?.release();
  });
  return { awake: readonly(awake), aside: readonly(aside) };
}

import type { Ref } from 'vue';
import { onScopeDispose, readonly, ref } from 'vue';

/** Whole seconds until something may be tried again, counted down to 0. Ends with its scope. */
export function useWait(): { readonly seconds: Readonly<Ref<number>>; readonly begin: (seconds: number) => void } {
  const seconds = ref(0);
  let timer: ReturnType<typeof setInterval> | undefined;
  const end = (): void => clearInterval(timer);
  onScopeDispose(end);
  return {
    seconds: readonly(seconds),
    begin(given) {
      end();
      const untilMs = performance.now() + given * 1000;
      seconds.value = Math.ceil(given);
      timer = setInterval(() => {
        seconds.value = Math.max(0, Math.ceil((untilMs - performance.now()) / 1000));
        if (seconds.value === 0) end();
      }, 250);
    },
  };
}

import type { Ref } from 'vue';
import { nextTick, ref } from 'vue';

/** One stop of the tab key for a row of things; arrows, Home and End go from one to the next. @param count of them */
export function useRoving(count: () => number): {
  readonly at: Ref<number>;
  readonly onKey: (event: KeyboardEvent) => void;
} {
  const at = ref(0);
  const steps: { readonly [key: string]: (last: number) => number } = {
    ArrowLeft: () => at.value - 1,
    ArrowRight: () => at.value + 1,
    ArrowUp: () => at.value - 1,
    ArrowDown: () => at.value + 1,
    Home: () => 0,
    End: (last) => last,
  };
  function onKey(event: KeyboardEvent): void {
    const step = steps[event.key];
    if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const last = count() - 1;
    at.value = Math.min(last, Math.max(0, step(last)));
    const { currentTarget } = event;
    if (currentTarget instanceof HTMLElement)
      void nextTick(() => currentTarget.querySelector<HTMLElement>('[tabindex="0"]')?.focus());
  }
  return { at, onKey };
}

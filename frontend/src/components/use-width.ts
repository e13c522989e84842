import type { Ref } from 'vue';
import { onBeforeUnmount, readonly, ref, watch } from 'vue';

/**
 * Width of an element's content box in CSS px, followed as it changes.
 * @param initial until the element is on the page, and where it has no width
 */
export function useWidth(element: Readonly<Ref<Element | null>>, initial: number): Readonly<Ref<number>> {
  const width = ref(initial);
  const take = (given: number): void => {
    if (given > 0) width.value = Math.floor(given);
  };
  let observer: ResizeObserver | null = null;
  const leave = (): void => observer?.disconnect();
  watch(
    element,
    (now) => {
      leave();
      if (now === null) return;
      take(now.clientWidth);
      observer = new ResizeObserver((entries) => entries.forEach((entry) => take(entry.contentRect.width)));
      observer.observe(now);
    },
    { flush: 'post', immediate: true },
  );
  onBeforeUnmount(leave);
  return readonly(width);
}

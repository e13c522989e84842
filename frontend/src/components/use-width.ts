import type { Ref } from 'vue';
import { onBeforeUnmount, onMounted, readonly, ref } from 'vue';

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
  onMounted(() => {
    if (element.value === null) return;
    take(element.value.clientWidth);
    observer = new ResizeObserver((entries) => entries.forEach((entry) => take(entry.contentRect.width)));
    observer.observe(element.value);
  });
  onBeforeUnmount(() => observer?.disconnect());
  return readonly(width);
}

import type { Ref } from 'vue';
import { onBeforeUnmount, readonly, ref, watch } from 'vue';

/** Width and height of an element's content box, px, followed as it changes. Only of use where what it holds does not stretch it. */
export function useBox(
  element: Readonly<Ref<Element | null>>,
): Readonly<Ref<readonly [width: number, height: number]>> {
  const box = ref<readonly [number, number]>([1376, 600]);
  let observer: ResizeObserver | null = null;
  const leave = (): void => observer?.disconnect();
  watch(
    element,
    (now) => {
      leave();
      if (now === null) return;
      observer = new ResizeObserver((entries) => {
        for (const { contentRect } of entries) {
          const next = [Math.floor(contentRect.width), Math.floor(contentRect.height)] as const;
          if (next[0] > 0 && next[1] > 0) box.value = next;
        }
      });
      observer.observe(now);
    },
    { flush: 'post', immediate: true },
  );
  onBeforeUnmount(leave);
  return readonly(box);
}

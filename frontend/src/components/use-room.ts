import type { Ref } from 'vue';
import { onBeforeUnmount, onMounted, readonly, ref } from 'vue';
import { useWidth } from './use-width';

export interface Room {
  /** px */
  readonly width: Readonly<Ref<number>>;
  /** From the top of the element to the lower edge of the window where nothing is scrolled, px. */
  readonly height: Readonly<Ref<number>>;
}

/** How much of the window is left for an element. Its height is looked at once and with each change of the window, never with what it holds. */
export function useRoom(element: Readonly<Ref<HTMLElement | null>>, initialWidth: number): Room {
  const width = useWidth(element, initialWidth);
  const height = ref(window.innerHeight);
  const look = (): void => {
    const top = element.value === null ? 0 : element.value.getBoundingClientRect().top + window.scrollY;
    height.value = Math.max(0, window.innerHeight - top);
  };
  onMounted(() => {
    look();
    window.addEventListener('resize', look);
  });
  onBeforeUnmount(() => window.removeEventListener('resize', look));
  return { width, height: readonly(height) };
}

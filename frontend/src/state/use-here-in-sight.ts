import { nextTick, onMounted, onScopeDispose, watch, type Ref } from 'vue';

/** Scrolls a row of links that is wider than its screen sideways, and nothing else, so that the screen one is at stands in it. */
export function useHereInSight(row: Readonly<Ref<HTMLElement | null>>, place: () => string): void {
  const show = (): void => {
    const here = row.value?.querySelector<HTMLElement>('.here');
    if (row.value === null || here === undefined || here === null) return;
    const { left, right } = here.getBoundingClientRect();
    const { left: from, right: to } = row.value.getBoundingClientRect();
    if (left < from) row.value.scrollLeft -= from - left;
    else if (right > to) row.value.scrollLeft += right - to;
  };
  watch([place, row], () => void nextTick(show), { flush: 'post' });
  onMounted(() => {
    window.addEventListener('resize', show);
    show();
  });
  onScopeDispose(() => window.removeEventListener('resize', show));
}

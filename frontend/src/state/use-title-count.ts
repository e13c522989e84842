import { onScopeDispose, watch } from 'vue';

/** Puts before the title of the page, whichever screen gives it, how many alarms call. */
export function useTitleCount(count: () => number): void {
  const put = (): void => {
    const bare = document.title.replace(/^\(\d+\) /, '');
    const wanted = count() === 0 ? bare : `(${count()}) ${bare}`;
    if (document.title !== wanted) document.title = wanted;
  };
  const screens = new MutationObserver(put);
  screens.observe(document.head, { childList: true, subtree: true, characterData: true });
  watch(count, put, { immediate: true });
  onScopeDispose(() => screens.disconnect());
}

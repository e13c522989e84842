import type { Ref } from 'vue';
import { ref, watch } from 'vue';

const key = 'ebbline.operator';

/** The name last used in this browser: a convenience, no proof of who acts. */
export function useOperatorName(): Ref<string> {
  const name = ref(localStorage.getItem(key) ?? '');
  watch(name, (next) => localStorage.setItem(key, next));
  return name;
}

import type { Ref } from 'vue';
import { onScopeDispose, readonly, ref } from 'vue';

/** True while the page is no wider than a phone; as `phone.css` has it. */
export function usePhone(): Readonly<Ref<boolean>> {
  const query = window.matchMedia('(max-width: 480px)');
  const phone = ref(query.matches);
  const follow = (): void => {
    phone.value = query.matches;
  };
  query.addEventListener('change', follow);
  onScopeDispose(() => query.removeEventListener('change', follow));
  return readonly(phone);
}

import type { InjectionKey, Ref } from 'vue';
import { inject, ref } from 'vue';

/** Which parts of a long screen are open, where there is too little room to show all of them. */
export interface Folds {
  /** True where parts stand behind their headings. */
  readonly folding: Readonly<Ref<boolean>>;
  readonly isOpen: (part: string) => boolean;
  readonly toggle: (part: string) => void;
}

export const foldsKey: InjectionKey<Folds> = Symbol('folds');

/** Without any, every part is open. */
export function useFolds(): Folds {
  return inject(foldsKey, () => ({ folding: ref(false), isOpen: () => true, toggle: () => undefined }), true);
}

import type { ComputedRef } from 'vue';
import { computed, shallowRef } from 'vue';
import { idle } from './acting';

export interface AnswerSince<State> {
  /** What the wish does; idle as long as all there is is a refusal from before. */
  readonly answer: ComputedRef<State | typeof idle>;
  /** A form opens: a refusal that stands already answers another one. */
  readonly begin: () => void;
}

/** For a form about something whose last wish was perhaps another: that one's refusal is not shown as an answer to this. */
export function useAnswerSince<State extends { readonly step: string }>(acting: () => State): AnswerSince<State> {
  const before = shallowRef<State | null>(null);
  return {
    answer: computed(() => {
      const now = acting();
      return now.step === 'refused' && now === before.value ? idle : now;
    }),
    begin() {
      before.value = acting();
    },
  };
}

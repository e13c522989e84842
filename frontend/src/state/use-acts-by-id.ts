import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef } from 'vue';
import { problemText } from '../text/problem-text';
import type { Acting } from './acting';

export interface ActsById<Wish, Answer> {
  readonly state: Readonly<ShallowRef<ReadonlyMap<string, Acting<Answer>>>>;
  readonly act: (id: string, wish: Wish) => Promise<void>;
}

/** One wish at a time for each of many; a second press while one is under way goes nowhere. */
export function useActsById<Wish, Answer>(
  send: (id: string, wish: Wish) => Promise<Result<Answer>>,
): ActsById<Wish, Answer> {
  const state = shallowRef<ReadonlyMap<string, Acting<Answer>>>(new Map());
  const put = (id: string, next: Acting<Answer>): void => {
    state.value = new Map(state.value).set(id, next);
  };
  return {
    state: shallowReadonly(state),
    async act(id, wish) {
      if (state.value.get(id)?.step === 'busy') return;
      put(id, { step: 'busy' });
      const reply = await send(id, wish);
      put(
        id,
        reply.ok
          ? { step: 'confirmed', answer: reply.value }
          : { step: 'refused', text: problemText(reply.fault.code, reply.fault.message) },
      );
    },
  };
}

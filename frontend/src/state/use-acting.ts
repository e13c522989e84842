import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef } from 'vue';
import { problemText } from '../text/problem-text';
import type { Acting } from './acting';
import { idle } from './acting';

export interface OneAct<Wish, Answer> {
  readonly state: Readonly<ShallowRef<Acting<Answer>>>;
  readonly act: (wish: Wish) => Promise<void>;
  /** Forgets what came of the last wish. */
  readonly forget: () => void;
}

/** One wish at a time; a second press while one is under way goes nowhere. */
export function useActing<Wish, Answer>(send: (wish: Wish) => Promise<Result<Answer>>): OneAct<Wish, Answer> {
  const state = shallowRef<Acting<Answer>>(idle);
  return {
    state: shallowReadonly(state),
    async act(wish) {
      if (state.value.step === 'busy') return;
      state.value = { step: 'busy' };
      const reply = await send(wish);
      state.value = reply.ok
        ? { step: 'confirmed', answer: reply.value }
        : { step: 'refused', text: problemText(reply.fault.code, reply.fault.message), code: reply.fault.code };
    },
    forget() {
      state.value = idle;
    },
  };
}

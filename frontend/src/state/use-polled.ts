import type { Result } from '@ebbline/shared/errors/result';
import type { Ref, ShallowRef } from 'vue';
import { onScopeDispose, ref, shallowReadonly, shallowRef, watch } from 'vue';
import { awakeMs } from '../feed/awake-ms';
import { problemText } from '../text/problem-text';

export interface Polled<Value> {
  readonly value: Readonly<ShallowRef<Value | null>>;
  readonly problem: Readonly<Ref<string | null>>;
  /** Monotonic ms at which the value that is held came; null before the first. */
  readonly cameMs: Readonly<Ref<number | null>>;
  readonly renew: () => Promise<void>;
  /** Puts an answer that came by another way, such as the reply to a command. */
  readonly hold: (value: Value) => void;
}

export interface PollOptions {
  /** What is asked about; null asks nothing. A change forgets the value and asks at once. */
  readonly of?: () => string | null;
  readonly everyMs: number;
  /** Default: one that goes on while the machine sleeps. */
  readonly monotonicMs?: () => number;
}

/** Something that the server does not send by itself, asked for again and again. Ends with its scope. */
export function usePolled<Value>(read: (of: string) => Promise<Result<Value>>, options: PollOptions): Polled<Value> {
  const value = shallowRef<Value | null>(null);
  const problem = ref<string | null>(null);
  const cameMs = ref<number | null>(null);
  const nowMs = options.monotonicMs ?? awakeMs;
  const about = options.of ?? (() => '');
  let asked = 0;
  /** Number of the request that is under way; 0 where none is that an answer is still awaited from. */
  let awaited = 0;

  /** What was asked before this came says nothing newer. */
  function hold(next: Value): void {
    asked += 1;
    value.value = next;
    problem.value = null;
    cameMs.value = nowMs();
  }
  async function renew(): Promise<void> {
    const of = about();
    if (of === null) return;
    asked += 1;
    const mine = asked;
    awaited = mine;
    const reply = await read(of);
    if (mine !== asked) return;
    awaited = 0;
    if (reply.ok) hold(reply.value);
    else problem.value = problemText(reply.fault.code, reply.fault.message);
  }
  watch(
    about,
    () => {
      // An answer to what was asked before is none to this; nor is it where nothing is asked any more.
      asked += 1;
      value.value = null;
      problem.value = null;
      cameMs.value = null;
      void renew();
    },
    { immediate: true },
  );
  // An answer that takes longer than the interval is waited for: asked again, it would never be the newest.
  const timer = setInterval(() => {
    if (awaited !== asked) void renew();
  }, options.everyMs);
  onScopeDispose(() => clearInterval(timer));
  return { value: shallowReadonly(value), problem, cameMs, renew, hold };
}

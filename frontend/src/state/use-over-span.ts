import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { onScopeDispose, shallowReadonly, shallowRef, watch } from 'vue';
import type { SpanOfTime } from '../api/trends';
import { problemText } from '../text/problem-text';
import { spanIsOpen } from './span-is-open';

export interface OverSpanOptions<T> {
  /** What is asked for beside the time, as a text that differs where it differs; null: nothing is. */
  readonly wish: () => string | null;
  /** Of what it is: where that changes, what was found of the other goes at once. Default: the wish. */
  readonly subject?: () => string | null;
  /** ms since 1970; null while it is not known. */
  readonly span: () => { readonly fromMs: number; readonly toMs: number } | null;
  /** True where the span moves with the time: it is read anew as it does. */
  readonly following: () => boolean;
  /** The time in force, ms since 1970; null while it is not known. Where it is given, a span that is not over by then is read anew until it is. */
  readonly nowMs?: (() => number | null) | undefined;
  readonly read: (span: SpanOfTime) => Promise<Result<T>>;
  /** True of an answer that is not whole yet: it is asked for again at once. Default: of none. */
  readonly isPart?: (found: T) => boolean;
}

export interface OverSpan<T> {
  /** Kept until newer has come; null before the first, and where nothing is asked for. */
  readonly found: T | null;
  readonly problem: string | null;
  readonly busy: boolean;
  /** What was found is of another time than the one asked for now. */
  readonly isOfOther: boolean;
}

/** Waits for a row of key strokes to end before it asks. ms */
const settleMs = 150;
const partMs = 700;

/** Something over a span of time, of the span asked for last, whichever answer comes last. Ends with its scope. */
export function useOverSpan<T>(options: OverSpanOptions<T>): Readonly<ShallowRef<OverSpan<T>>> {
  const nothing = { found: null, problem: null, busy: false, isOfOther: false };
  const held = shallowRef<OverSpan<T>>(nothing);
  let asked = 0;
  let settle: ReturnType<typeof setTimeout> | undefined;
  let again: ReturnType<typeof setTimeout> | undefined;

  async function renew(): Promise<void> {
    clearTimeout(again);
    asked += 1;
    const mine = asked;
    const span = options.span();
    if (options.wish() === null || span === null) {
      held.value = nothing;
      return;
    }
    held.value = { ...held.value, busy: true };
    // As it was when it was asked: what came after that is not in the answer.
    const goesOn = options.following() || spanIsOpen(span.toMs, options.nowMs);
    const iso = { from: new Date(span.fromMs).toISOString(), to: new Date(span.toMs).toISOString() };
    const reply = await options.read(iso);
    if (mine !== asked) return;
    held.value = reply.ok
      ? { found: reply.value, problem: null, busy: false, isOfOther: false }
      : { ...held.value, problem: problemText(reply.fault.code, reply.fault.message), busy: false };
    const isPart = reply.ok && options.isPart?.(reply.value) === true;
    if (isPart) again = setTimeout(() => void renew(), partMs);
    else if (goesOn || !reply.ok) again = setTimeout(() => void renew(), renewMs(span.toMs - span.fromMs));
  }

  const wanted = (): string => {
    const span = options.span();
    if (span === null) return '';
    return options.following() ? String(span.toMs - span.fromMs) : `${span.fromMs} ${span.toMs}`;
  };
  const subject = (): string | null => (options.subject ?? options.wish)();
  const time = (): string => `${String(options.following())} ${wanted()}`;
  watch(
    [subject, time, options.wish],
    ([of, at], [ofBefore, atBefore]) => {
      // What is on its way is of what was asked for before.
      if (of !== ofBefore || at !== atBefore) asked += 1;
      if (of !== ofBefore) held.value = nothing;
      else if (at !== atBefore) held.value = { ...held.value, isOfOther: held.value.found !== null };
      clearTimeout(settle);
      settle = setTimeout(() => void renew(), settleMs);
    },
    { immediate: true },
  );
  onScopeDispose(() => {
    asked += 1;
    clearTimeout(settle);
    clearTimeout(again);
  });
  return shallowReadonly(held);
}

/** As often as the history beside it is. ms */
const renewMs = (lengthMs: number): number => Math.min(60_000, Math.max(10_000, lengthMs / 200));

import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { onScopeDispose, shallowReadonly, shallowRef, watch } from 'vue';
import type { HistoryWish } from '../api/history';
import { readHistory } from '../api/history';
import { problemText } from '../text/problem-text';
import { spanIsOpen } from './span-is-open';
import type { TrendName } from '../text/trend-link';
import { trendBuckets } from './trend-buckets';

export interface TrendsOptions {
  readonly points: () => readonly TrendName[];
  /** What differs where what was read before would be drawn at another time: it goes at once then. Default: nothing does. */
  readonly subject?: () => number | null;
  /** What is to be read, ms since 1970; null while it is not known. */
  readonly span: () => { readonly fromMs: number; readonly toMs: number } | null;
  /** True where the span moves with the time: it is read anew as it does. */
  readonly following: () => boolean;
  /** The time in force, ms since 1970; null while it is not known. Where it is given, a span that is not over by then is read anew until it is. */
  readonly nowMs?: () => number | null;
  /** Default: the server. */
  readonly read?: (wish: HistoryWish) => Promise<Result<HistoryColumns>>;
}

export interface TrendsRead {
  /** By `unit:point`. Kept until newer ones have come, so that a picture does not blink. */
  readonly columns: ReadonlyMap<string, HistoryColumns>;
  /** In words, by `unit:point`. */
  readonly problems: ReadonlyMap<string, string>;
  readonly busy: boolean;
  /** What was read is of another span, or of other points, than what is asked for now. */
  readonly isOfOther: boolean;
}

/** Waits for a zoom or a row of key strokes to end before it asks. ms */
const settleMs = 150;

/** History of many points over one span; of the span asked for last, whichever answer comes last. Ends with its scope. */
export function useTrends(options: TrendsOptions): Readonly<ShallowRef<TrendsRead>> {
  const read = options.read ?? readHistory;
  const held = shallowRef<TrendsRead>({ columns: new Map(), problems: new Map(), busy: false, isOfOther: false });
  let asked = 0;
  let settle: ReturnType<typeof setTimeout> | undefined;
  let again: ReturnType<typeof setTimeout> | undefined;

  async function renew(): Promise<void> {
    clearTimeout(again);
    const span = options.span();
    const points = options.points();
    if (span === null || points.length === 0) {
      held.value = { ...held.value, busy: false };
      return;
    }
    asked += 1;
    const mine = asked;
    held.value = { ...held.value, busy: true };
    // As it was when it was asked: what came after that is not in the answer.
    const goesOn = options.following() || spanIsOpen(span.toMs, options.nowMs);
    const buckets = trendBuckets(span.toMs - span.fromMs);
    const from = new Date(span.fromMs).toISOString();
    const to = new Date(span.toMs).toISOString();
    const replies = await Promise.all(
      points.map(async (name) => ({
        key: `${name.unit}:${name.point}`,
        reply: await read({ ...name, from, to, buckets }),
      })),
    );
    if (mine !== asked) return;
    held.value = {
      columns: new Map(replies.flatMap(({ key, reply }) => (reply.ok ? [[key, reply.value] as const] : []))),
      problems: new Map(
        replies.flatMap(({ key, reply }) =>
          reply.ok ? [] : [[key, problemText(reply.fault.code, reply.fault.message)] as const],
        ),
      ),
      busy: false,
      isOfOther: false,
    };
    if (goesOn || held.value.problems.size > 0)
      again = setTimeout(() => void renew(), renewMs(span.toMs - span.fromMs));
  }
  const soon = (): void => {
    clearTimeout(settle);
    settle = setTimeout(() => void renew(), settleMs);
  };
  /** What is on its way is of what was asked for before. */
  const change = (kept: Pick<TrendsRead, 'columns' | 'problems' | 'busy'>): void => {
    asked += 1;
    held.value = { ...kept, isOfOther: options.points().length > 0 };
    soon();
  };
  const subject = (): number | null => options.subject?.() ?? null;
  watch([options.points, options.following, () => wanted(options)], () => change(held.value), { immediate: true });
  watch(subject, () => change({ columns: new Map(), problems: new Map(), busy: false }));
  onScopeDispose(() => {
    asked += 1;
    clearTimeout(settle);
    clearTimeout(again);
  });
  return shallowReadonly(held);
}

/** A span that follows is asked for by its length alone; it is renewed by time. */
function wanted(options: TrendsOptions): string {
  const span = options.span();
  if (span === null) return '';
  return options.following() ? String(span.toMs - span.fromMs) : `${span.fromMs} ${span.toMs}`;
}

/** Often enough that the live values between are few, seldom enough that a long span is no burden. ms */
const renewMs = (lengthMs: number): number => Math.min(60_000, Math.max(10_000, lengthMs / 200));

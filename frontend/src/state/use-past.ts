import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { PastHall, PastMarks, PastUnit } from '@ebbline/shared/contract/past';
import type { Result } from '@ebbline/shared/errors/result';
import type { Ref, ShallowRef } from 'vue';
import { onScopeDispose, ref, shallowReadonly, shallowRef, watch } from 'vue';
import { readPastHall, readPastMarks, readPastTrails, readPastUnit } from '../api/past';
import { problemText } from '../text/problem-text';

export interface PastShown<Value> {
  /** The newest answer to what was asked for, or the one before while another is being read; it says itself of when it is. */
  readonly value: Readonly<ShallowRef<Value | null>>;
  /** Why there is no answer to what is asked for now. */
  readonly problem: Readonly<Ref<string | null>>;
  /** What is asked for now has no answer yet. */
  readonly reading: Readonly<Ref<boolean>>;
  readonly again: () => void;
}

/** Hand over what was asked so long after the last change: who drags over a scale asks for one moment of the many. ms */
const settleMs = 120;

/**
 * Asks for a past moment: one question at a time, the newest wins, and an answer to another question than the newest is thrown
 * away. Where there is no answer nothing is shown, never another moment in its place.
 * @param wanted what is asked for, as a text that differs with it; null asks nothing
 */
function usePast<Value>(
  wanted: () => string | null,
  read: (wanted: string) => Promise<Result<Value>>,
): PastShown<Value> {
  const value = shallowRef<Value | null>(null);
  const problem = ref<string | null>(null);
  const reading = ref(false);
  let running = false;
  let ended = false;
  let answered: string | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;

  async function ask(): Promise<void> {
    const asked = wanted();
    if (running || ended || asked === null || asked === answered) return;
    running = true;
    const reply = await read(asked);
    running = false;
    if (ended) return;
    if (wanted() !== asked) return void ask();
    answered = asked;
    reading.value = false;
    value.value = reply.ok ? reply.value : null;
    problem.value = reply.ok ? null : problemText(reply.fault.code, reply.fault.message);
  }
  function soon(): void {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => void ask(), settleMs);
  }
  watch(
    wanted,
    (now, before) => {
      problem.value = null;
      answered = null;
      reading.value = now !== null;
      if (before === undefined || before === null) void ask();
      else soon();
    },
    { immediate: true },
  );
  onScopeDispose(() => {
    ended = true;
    if (timer !== null) clearTimeout(timer);
  });
  const again = (): void => {
    answered = null;
    problem.value = null;
    reading.value = true;
    void ask();
  };
  return { value: shallowReadonly(value), problem, reading, again };
}

/** A hall as it stood. @param at the second that is asked for; null asks nothing */
export const usePastHall = (hall: () => string, at: () => string | null): PastShown<PastHall> =>
  usePast(at, (asked) => readPastHall(hall(), asked));

/** The hour of each loop of a hall that ended with a minute. @param minute its begin; null asks nothing */
export const usePastTrails = (hall: () => string, minute: () => string | null): PastShown<HallTrails> =>
  usePast(minute, (asked) => readPastTrails(hall(), asked));

/** A unit as it stood. */
export const usePastUnit = (unit: () => string, at: () => string | null): PastShown<PastUnit> =>
  usePast(at, (asked) => readPastUnit(unit(), asked));

/** What happened in a period. @param period its begin and end, ISO 8601; null asks nothing */
export const usePastMarks = (
  place: () => { readonly hall: string } | { readonly unit: string },
  period: () => readonly [from: string, to: string] | null,
): PastShown<PastMarks> =>
  usePast(
    () => period()?.join(' ') ?? null,
    (asked) => readPastMarks(place(), ...(asked.split(' ') as [string, string])),
  );

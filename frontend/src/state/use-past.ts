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
/** So often what can change is asked for again. ms */
const renewMs = 30_000;
/** So long after a period has ended all of it is sure to be on record. ms */
const recordedMs = 10_000;

/**
 * Asks for a past moment: one question at a time, the newest wins, and an answer to another question than the newest is thrown
 * away. Where there is no answer nothing is shown, never another moment in its place.
 * @param wanted what is asked for, as a text that differs with it; null asks nothing
 * @param isFinal false of an answer, or of none, after which the same is asked for again by itself; what is held stays meanwhile
 */
function usePast<Value>(
  wanted: () => string | null,
  read: (wanted: string) => Promise<Result<Value>>,
  isFinal: (reply: Result<Value>, wanted: string) => boolean = () => true,
): PastShown<Value> {
  const value = shallowRef<Value | null>(null);
  const problem = ref<string | null>(null);
  const reading = ref(false);
  let running = false;
  let ended = false;
  let answered: string | null = null;
  /** What the value answers to; null where it is of something that was asked for before. */
  let valueOf: string | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let renewal: ReturnType<typeof setTimeout> | undefined;

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
    if (reply.ok) [value.value, valueOf] = [reply.value, asked];
    else if (valueOf !== asked) value.value = null;
    problem.value = reply.ok ? null : problemText(reply.fault.code, reply.fault.message);
    if (!isFinal(reply, asked)) renewal = setTimeout(renew, renewMs);
  }
  function renew(): void {
    clearTimeout(renewal);
    answered = null;
    void ask();
  }
  function soon(): void {
    clearTimeout(timer);
    timer = setTimeout(() => void ask(), settleMs);
  }
  watch(
    wanted,
    (now, before) => {
      clearTimeout(renewal);
      problem.value = null;
      answered = null;
      valueOf = null;
      reading.value = now !== null;
      if (before === undefined || before === null) void ask();
      else soon();
    },
    { immediate: true },
  );
  onScopeDispose(() => {
    ended = true;
    clearTimeout(timer);
    clearTimeout(renewal);
  });
  const again = (): void => {
    problem.value = null;
    reading.value = valueOf === null;
    renew();
  };
  return { value: shallowReadonly(value), problem, reading, again };
}

/** A hall as it stood. @param at the second that is asked for; null asks nothing */
export const usePastHall = (hall: () => string, at: () => string | null): PastShown<PastHall> =>
  usePast(at, (asked) => readPastHall(hall(), asked));

/** The hour of each loop of a hall that ended with a minute; asked for again where it could not be read. @param minute its begin; null asks nothing */
export const usePastTrails = (hall: () => string, minute: () => string | null): PastShown<HallTrails> =>
  usePast(
    minute,
    (asked) => readPastTrails(hall(), asked),
    (reply) => reply.ok,
  );

/** A unit as it stood. */
export const usePastUnit = (unit: () => string, at: () => string | null): PastShown<PastUnit> =>
  usePast(at, (asked) => readPastUnit(unit(), asked));

/**
 * What happened in a period; asked for again while the period goes on, and where it could not be read.
 * @param period its begin and end, ISO 8601; null asks nothing
 */
export const usePastMarks = (
  place: () => { readonly hall: string } | { readonly unit: string },
  period: () => readonly [from: string, to: string] | null,
): PastShown<PastMarks> =>
  usePast(
    () => period()?.join(' ') ?? null,
    (asked) => readPastMarks(place(), ...(asked.split(' ') as [string, string])),
    (reply) => reply.ok && Date.parse(reply.value.now) >= Date.parse(reply.value.to) + recordedMs,
  );

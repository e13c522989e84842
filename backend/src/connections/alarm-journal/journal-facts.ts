import type { JournalFacts } from '@ebbline/shared/contract/journal-facts';
import type { ToldTransition } from '../../ports/alarm-journal';
import { storedText } from './stored-text';

/** Facts as they are stored: JSON in which nothing stands that the row does not say; null where it says no more. */
export function factsText(facts: { readonly [Fact in keyof JournalFacts]: JournalFacts[Fact] | null }): string | null {
  const told = Object.entries(facts).filter(([, value]) => value !== undefined && value !== null);
  return told.length === 0 ? null : storedText(JSON.stringify(Object.fromEntries(told)));
}

/** What a change of an alarm says beside the columns of its row; of a mode that it leaves, all that is known of that mode. */
export function factsOfTransition(transition: ToldTransition): Parameters<typeof factsText>[0] {
  const { quality, position, detail, mode, modeFrom, modeSinceMs, modeUntilMs, modeBy, modeReason } = transition;
  const beganMs = mode === 'shelved' && modeFrom !== undefined ? (modeSinceMs ?? null) : null;
  return {
    quality: quality ?? null,
    class: transition.class ?? null,
    position: position ?? null,
    detail: detail ?? null,
    fromMode: modeFrom ?? null,
    toMode: modeFrom === undefined ? (mode ?? null) : (mode ?? 'inService'),
    setAsideSince: timeOf(modeSinceMs),
    setAsideUntil: timeOf(modeUntilMs),
    setAsideBy: modeBy ?? null,
    setAsideReason: modeReason === '' ? null : (modeReason ?? null),
    minutes: beganMs === null || typeof modeUntilMs !== 'number' ? null : (modeUntilMs - beganMs) / 60_000,
    interimMeasures: transition.interimMeasures ?? null,
  };
}

const timeOf = (ms: number | null | undefined): string | null =>
  ms === undefined || ms === null || !Number.isFinite(ms) ? null : new Date(ms).toISOString();

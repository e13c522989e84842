import type { JournalFacts } from '@ebbline/shared/contract/journal-facts';
import type { AlarmTransition } from '../../evaluation/pipeline/outputs';
import { storedText } from './stored-text';

/** Facts as they are stored: JSON in which nothing stands that the row does not say; null where it says no more. */
export function factsText(facts: JournalFacts): string | null {
  const told = Object.entries(facts).filter(([, value]) => value !== undefined && value !== null);
  return told.length === 0 ? null : storedText(JSON.stringify(Object.fromEntries(told)));
}

/** What a change of an alarm says beside the columns of its row. */
export const factsOfTransition = ({ detail }: AlarmTransition): JournalFacts => ({
  ...(detail === undefined ? {} : { detail }),
});

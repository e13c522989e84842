import type { AlarmJournal } from '../../ports/alarm-journal';

/** A line of the journal about a change that a site file left behind, or that fits again. */
export interface ToldOfChange {
  readonly cause: 'settingRefused' | 'settingFits';
  readonly reason: string;
}

/** All such lines that the journal can still search, oldest first. */
export function toldOfChanges(journal: Pick<AlarmJournal, 'page'>): readonly ToldOfChange[] {
  return (['settingRefused', 'settingFits'] as const)
    .flatMap((cause) => rowsOf(journal, cause))
    .sort((a, b) => a.sequence - b.sequence);
}

function rowsOf(
  journal: Pick<AlarmJournal, 'page'>,
  cause: ToldOfChange['cause'],
): (ToldOfChange & { readonly sequence: number })[] {
  const found: (ToldOfChange & { readonly sequence: number })[] = [];
  let after: number | null = null;
  do {
    const { next, rows } = journal.page({ fromMs: null, toMs: null, after, text: cause });
    for (const { cause: of, reason, sequence } of rows)
      if (of === cause && reason !== null) found.push({ cause, reason, sequence });
    after = next;
  } while (after !== null);
  return found;
}

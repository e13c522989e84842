import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { mostMarks, type MarkKind, type PastMark, type PastMarks } from '@ebbline/shared/contract/past';
import { floodCauses } from '../../evaluation/alarm-performance/journal-step';
import { stateFacts } from '../../evaluation/alarm-lifecycle/states';
import { catalogue } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { MarksWanted } from '../../ports/past-desk';
import { untilOthersRan } from '../performance/read-steps';

/** So many pages of the journal are read for one period; each is bounded by itself. */
const mostPages = 40;

/** What the journal has of a period, as marks: the oldest first. */
export async function marksOf(
  journal: Pick<AlarmJournal, 'page'>,
  site: CompiledSite,
  { hall, unit, fromMs, toMs }: MarksWanted,
): Promise<Pick<PastMarks, 'marks' | 'more'>> {
  const units = new Set(site.halls.find(({ id }) => id === hall)?.units.map((at) => site.units[at]?.id));
  /** A flood is of the whole site. */
  const concerns = (row: JournalRow): boolean => {
    if (row.alarm === null) return true;
    if (unit !== null) return row.unit === unit;
    return hall === null || row.hall === hall || units.has(row.unit ?? '');
  };
  const marks: PastMark[] = [];
  const leads = new Set<string>();
  let after: number | null = 0;
  for (let page = 0; after !== null && page < mostPages; page += 1) {
    const found = journal.page({ fromMs, toMs, after, audit: false });
    for (const row of found.rows) {
      if (row.foldedUnder !== null && row.foldedUnder !== undefined) leads.add(row.foldedUnder);
      const kind = kindOf(row);
      if (kind !== null && concerns(row)) marks.push(markOf(row, kind));
    }
    after = found.next;
    await untilOthersRan();
  }
  const told = marks.map((mark) => ({ ...mark, firstOut: mark.kind === 'raised' && leads.has(mark.alarm ?? '') }));
  return { marks: mostUrgent(told), more: after !== null || told.length > mostMarks };
}

const kindOfCause: Readonly<Record<string, MarkKind>> = {
  [floodCauses.began]: 'floodBegan',
  [floodCauses.ended]: 'floodEnded',
  permitOpened: 'permitOpened',
  permitClosed: 'permitClosed',
  programStarted: 'programStarted',
  programEnded: 'programEnded',
};

function kindOf({ from, to, cause }: JournalRow): MarkKind | null {
  const other = kindOfCause[cause ?? ''];
  if (other !== undefined) return other;
  if (from === null || to === null || from === to) return null;
  if (to === 'unacknowledged') return 'raised';
  return stateFacts[from].active && !stateFacts[to].active ? 'gone' : null;
}

const markOf = (row: JournalRow, kind: MarkKind): PastMark => ({
  time: row.sourceTime,
  kind,
  alarm: row.alarm,
  unit: row.unit,
  title: titleOf(row),
  where: row.where,
  priority: row.priority,
  firstOut: false,
  foldedUnder: row.foldedUnder ?? null,
});

function titleOf({ entry, reason }: JournalRow): string {
  const known = entryIds.find((id) => id === entry);
  return known === undefined ? (reason ?? '') : catalogue[known].title;
}

/** All where there are not too many; else what asks most for a person, in order of time. */
function mostUrgent(marks: readonly PastMark[]): PastMark[] {
  const rank = ({ kind, priority }: PastMark): number => (kind === 'gone' ? 4 : 0) + (priority ?? 0);
  const chosen = marks.length <= mostMarks ? marks : [...marks].sort((a, b) => rank(a) - rank(b)).slice(0, mostMarks);
  return [...chosen].sort((a, b) => a.time.localeCompare(b.time));
}

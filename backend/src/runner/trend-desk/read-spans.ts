import type { AlarmSpan, AlarmSpans } from '@ebbline/shared/contract/trends';
import { groupEntryIds } from '../../evaluation/alarm-rules/entry-ids';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { JournalPage, JournalQuery } from '../../ports/journal-query';
import type { SpansQuery } from '../../ports/trend-desk';
import { journalBegan } from '../performance/journal-began';
import { untilOthersRan, type Pause } from '../performance/read-steps';
import { titleOf } from '../performance/title-of';
import { SpanLog, type Span } from './alarm-spans';

/** More pages than these are not read of one unit, or one entry of a hall, for one answer: some ten thousand rows. */
const mostPages = 40;

/** Entries that may be of a hall, of a loop of several units, or of a gateway of several. */
const entriesOfHalls = [...groupEntryIds, 'INS-1', 'COM-1'] as const;

type SpansJournal = Pick<AlarmJournal, 'page' | 'standing'>;

/**
 * When which alarm of some units, and of some halls as a whole, stood. Read from the first time on until now and not only to the last: what stood all through the period has
 * its next row after it.
 */
export async function readSpans(
  journal: SpansJournal,
  { fromMs, toMs, units, halls }: SpansQuery & { readonly halls: readonly string[] },
  pause: Pause = untilOthersRan,
  pages = mostPages,
): Promise<AlarmSpans> {
  const log = new SpanLog();
  let readToMs = Infinity;
  const readAll = async (of: Pick<JournalQuery, 'unit' | 'hall' | 'entry'>): Promise<void> => {
    readToMs = Math.min(readToMs, await readRows(journal, of, fromMs, log, pause, pages));
  };
  for (const unit of units) await readAll({ unit });
  for (const hall of halls) for (const entry of entriesOfHalls) await readAll({ hall, entry });
  const standing = journal
    .standing()
    .filter(({ unit, hall }) => (unit === null ? hall !== null && halls.includes(hall) : units.includes(unit)));
  const overlapping = log.ended(standing).filter((span) => span.fromMs < toMs && span.toMs > fromMs);
  const beganMs = journalBegan(journal);
  return {
    from: new Date(fromMs).toISOString(),
    to: new Date(toMs).toISOString(),
    searchableFrom: orNull(beganMs),
    readTo: orNull(readToMs),
    spans: overlapping.map(toContract),
  };
}

/** Gives back up to when its rows were read, ms; Infinity where all were. */
async function readRows(
  journal: SpansJournal,
  of: Pick<JournalQuery, 'unit' | 'hall' | 'entry'>,
  fromMs: number,
  log: SpanLog,
  pause: Pause,
  most: number,
): Promise<number> {
  let after: number | null = null;
  let lastMs = fromMs;
  for (let pages = 0; pages < most; pages += 1) {
    const page: JournalPage = journal.page({ ...of, fromMs, toMs: null, after, order: 'oldest', audit: false });
    // Rows of the units of a hall are theirs.
    for (const row of page.rows) if (of.unit !== undefined || row.unit === null) log.take(row);
    if (page.next === null) return Infinity;
    const last = page.rows.at(-1);
    if (last !== undefined) lastMs = Date.parse(last.sourceTime);
    after = page.next;
    await pause();
  }
  return lastMs;
}

const orNull = (ms: number | null): string | null =>
  ms === null || !Number.isFinite(ms) ? null : new Date(ms).toISOString();

const toContract = (span: Span): AlarmSpan => ({
  alarm: span.alarm,
  unit: span.unit,
  hall: span.hall,
  entry: span.entry,
  title: titleOf(span.entry),
  priority: span.priority,
  from: orNull(span.fromMs),
  to: orNull(span.toMs),
  acknowledged: orNull(span.acknowledgedMs),
  where: span.where,
  foldedUnder: span.foldedUnder,
});

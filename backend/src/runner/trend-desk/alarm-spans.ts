import type { AlarmState, JournalRow, Priority } from '@ebbline/shared/contract/alarm';
import { stateFacts } from '../../evaluation/alarm-lifecycle/states';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';

/** How long one alarm stood, ms. */
export interface Span {
  readonly alarm: string;
  /** Null: of a hall, or of several units. */
  readonly unit: string | null;
  readonly hall: string | null;
  readonly entry: string;
  priority: Priority;
  /** When it was raised; −Infinity: before what was read, and it is not known when. */
  readonly fromMs: number;
  /** When its condition had gone; Infinity: it stands. */
  toMs: number;
  acknowledgedMs: number | null;
  where: string | null;
  foldedUnder: string | null;
}

/** Members of a row of the journal that a span is made from. */
export type SpanRow = Pick<
  JournalRow,
  | 'kind'
  | 'alarm'
  | 'unit'
  | 'hall'
  | 'entry'
  | 'from'
  | 'to'
  | 'priority'
  | 'sourceTime'
  | 'since'
  | 'cause'
  | 'where'
  | 'foldedUnder'
>;

/**
 * Follows the rows of some units from a time on, oldest first, and tells when which alarm stood: from the row that raised it to the row
 * with which its condition had gone, whatever a person did meanwhile. What stood at the first time is known from the state
 * that the next row of the alarm leaves, and where none follows from the alarms that stand now.
 */
export class SpanLog {
  private readonly spans: Span[] = [];
  /** By alarm, of each that a row was read of; null: it does not stand. */
  private readonly open = new Map<string, Span | null>();

  take(row: SpanRow): void {
    const { alarm, entry, kind, to } = row;
    if (alarm === null || entry === null || to === null) return;
    if (kind === 'system') this.follow(this.open.get(alarm) ?? null, row);
    else this.move({ ...row, alarm, entry, to });
  }

  /** What was read, with what stands now and no row was read of. @param standing as the journal has committed it */
  ended(standing: readonly AlarmRecord[]): readonly Span[] {
    const never = standing.filter(({ active, alarm }) => active && !this.open.has(alarm));
    const all = [
      ...this.spans,
      ...never.map(({ acknowledgedAtMs, alarm, entry, foldedUnder, priority, sinceMs, unit, hall, where }) => ({
        ...{ alarm, entry, unit, hall, priority, where, foldedUnder },
        ...{ fromMs: sinceMs, toMs: Infinity, acknowledgedMs: acknowledgedAtMs },
      })),
    ];
    return all.sort((one, other) => one.fromMs - other.fromMs || one.alarm.localeCompare(other.alarm));
  }

  private move(row: SpanRow & { alarm: string; entry: string; to: AlarmState }): void {
    const atMs = Date.parse(row.sourceTime);
    const before = this.open.get(row.alarm);
    const stood = before === undefined && stateFacts[row.from ?? 'normal'].active;
    let span = stood ? this.begin(row, Date.parse(row.since ?? '')) : (before ?? null);
    const active = stateFacts[row.to].active;
    if (active && span === null) span = this.begin(row, atMs);
    if (span !== null) this.follow(span, row);
    if (span !== null && !active) span.toMs = atMs;
    this.open.set(row.alarm, active ? span : null);
  }

  private begin(row: SpanRow & { alarm: string; entry: string }, fromMs: number): Span {
    const { alarm, entry, priority, unit, where } = row;
    const hall = row.hall ?? null;
    const rest = { toMs: Infinity, acknowledgedMs: null, where, foldedUnder: null };
    const span: Span = {
      alarm,
      entry,
      unit,
      hall,
      priority: priority ?? 3,
      fromMs: Number.isNaN(fromMs) ? -Infinity : fromMs,
      ...rest,
    };
    this.spans.push(span);
    return span;
  }

  private follow(span: Span | null, { cause, foldedUnder, priority, sourceTime }: SpanRow): void {
    if (span === null) return;
    if (priority !== null && priority < span.priority) span.priority = priority;
    span.foldedUnder = foldedUnder ?? span.foldedUnder;
    if (cause === 'acknowledge') span.acknowledgedMs ??= Date.parse(sourceTime);
  }
}

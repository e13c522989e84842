import { createHash } from 'node:crypto';
import type { HistoryLayout } from '../../../ports/history-store';

/** A layout with the name under which blocks refer to it. */
export interface QueuedLayout {
  /** First 16 hex digits of the SHA-256 of its text. */
  readonly id: string;
  readonly text: string;
  readonly layout: HistoryLayout;
  /** Values of a row, by holder. */
  readonly widths: readonly number[];
}

const layoutDigits = 16;

export function queuedLayout(layout: HistoryLayout): QueuedLayout {
  const holders = layout.holders.map(({ id, columns }) => ({
    id,
    columns: columns.map(({ point, unitOfMeasure }) => ({ point, unitOfMeasure })),
  }));
  return named(JSON.stringify({ holders }));
}

/** Null where the text is not the one of that name: damaged, or another's. */
export function readLayout(id: string, text: string): QueuedLayout | null {
  return idOf(text) === id ? named(text) : null;
}

const idOf = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, layoutDigits);

function named(text: string): QueuedLayout {
  const layout = JSON.parse(text) as HistoryLayout;
  return { id: idOf(text), text, layout, widths: layout.holders.map(({ columns }) => columns.length) };
}

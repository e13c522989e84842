import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { Handover } from '@ebbline/shared/contract/handover';

export const handoverId = (sequence: number): string => `h${sequence}`;

/** The handovers among these rows, in the order in which they were recorded. Rows that take one over must be among them. */
export function toHandovers(rows: readonly JournalRow[]): Handover[] {
  const takenBy = new Map<number, JournalRow>();
  for (const row of rows)
    if (row.cause === 'shiftTakenOver' && row.facts?.of !== undefined) takenBy.set(row.facts.of, row);
  return rows.flatMap((row): Handover[] => {
    const shift = row.facts?.shift;
    if (row.cause !== 'shiftHandedOver' || shift === undefined) return [];
    const taken = takenBy.get(row.sequence);
    return [
      {
        id: handoverId(row.sequence),
        hall: row.hall ?? null,
        from: shift.from,
        to: shift.to,
        by: row.actor ?? '',
        station: row.station ?? '',
        at: row.sourceTime,
        takerNamed: shift.takerNamed,
        text: row.reason ?? '',
        taken:
          taken === undefined
            ? null
            : {
                by: taken.actor ?? '',
                station: taken.station ?? '',
                at: taken.sourceTime,
                text: taken.reason ?? '',
              },
      },
    ];
  });
}

import { toZoneLocal } from '../../text/zone-time';

export interface HourStroke {
  readonly key: string;
  /** Hours from the beginning of the row. */
  readonly hour: number;
  readonly annunciations: number;
  /** `2026-03-01 14:00` */
  readonly words: string;
}

export interface HourRow {
  readonly key: string;
  readonly label: string;
  readonly hours: 24 | 168;
  readonly annunciations: number;
  readonly most: number;
  readonly strokes: readonly HourStroke[];
}

/** More rows of a day than this are no picture any more: a row is then a week. */
const mostDays = 45;
const dayMs = 86_400_000;

/** Midnight of the day that a moment lies in, or of its Monday, as if the site's clock were UTC. */
function rowStart(localMs: number, weekly: boolean): number {
  const day = Math.floor(localMs / dayMs);
  // 1970-01-01 was a Thursday.
  return (weekly ? day - ((day + 3) % 7) : day) * dayMs;
}

/**
 * Hours with any as rows, one for each day or, of a long time, each week; rows without any are there too.
 * @param from, to ISO 8601; the period is half-open
 */
export function hourRows(
  perHour: readonly { readonly from: string; readonly annunciations: number }[],
  period: { readonly from: string; readonly to: string },
  zone: string,
): readonly HourRow[] {
  const local = (iso: string): number => Date.parse(`${toZoneLocal(iso, zone)}Z`);
  const [start, end] = [local(period.from), local(period.to)];
  const weekly = end - start > mostDays * dayMs;
  const length = weekly ? 7 * dayMs : dayMs;
  const strokes = perHour.map((one) => {
    const at = local(one.from);
    const row = rowStart(at, weekly);
    const words = toZoneLocal(one.from, zone).replace('T', ' ').slice(0, 16);
    return { row, key: one.from, hour: (at - row) / 3_600_000, annunciations: one.annunciations, words };
  });
  const rows: HourRow[] = [];
  for (let row = rowStart(start, weekly); row < end; row += length) {
    const own = strokes.filter((one) => one.row === row);
    rows.push({
      key: String(row),
      label: new Date(row).toISOString().slice(0, 10),
      hours: weekly ? 168 : 24,
      annunciations: own.reduce((sum, one) => sum + one.annunciations, 0),
      most: own.reduce((most, one) => Math.max(most, one.annunciations), 0),
      strokes: own,
    });
  }
  return rows;
}

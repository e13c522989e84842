import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';

const nothing = 0;
const good = 1;

/**
 * Quality of a row by position, one byte each as in `HistoryRows`; null where every value is good and every
 * position without a value has nothing to say, which is nearly always.
 */
export function rowQuality(rows: HistoryRows, row: number, positions: Int32Array): Uint8Array | null {
  const offset = rows.offset[row] ?? 0;
  let plain = true;
  for (let column = 0; column < positions.length && plain; column++) {
    const expected = Number.isFinite(rows.values[offset + column]) ? good : nothing;
    plain = rows.quality[offset + column] === expected;
  }
  if (plain) return null;
  const quality = new Uint8Array(Math.max(0, ...positions) + 1);
  positions.forEach((position, column) => (quality[position] = rows.quality[offset + column] ?? nothing));
  return quality;
}

/** What `null` stands for, at one position. */
export function qualityAt(quality: Uint8Array | null, position: number, value: number | null): number {
  if (quality !== null) return quality[position] ?? nothing;
  return value === null ? nothing : good;
}

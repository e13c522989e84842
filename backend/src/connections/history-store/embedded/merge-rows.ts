import { qualityAt } from './row-quality';

export interface MergedRow {
  readonly values: readonly (number | null)[];
  readonly quality: Uint8Array | null;
}

/**
 * Two writes of one (holder, second), value by value: the later value wins with its quality; where the later write
 * has no value the earlier one stays, since "nothing" takes nothing away. A bad mark without a value is kept only
 * where there is no value at all.
 */
export function mergeRows(earlier: MergedRow, later: MergedRow): MergedRow {
  const width = Math.max(earlier.values.length, later.values.length);
  const values: (number | null)[] = [];
  const quality = new Uint8Array(width);
  for (let position = 0; position < width; position++) {
    const before = earlier.values[position] ?? null;
    const after = later.values[position] ?? null;
    const beforeQuality = qualityAt(earlier.quality, position, before);
    const afterQuality = qualityAt(later.quality, position, after);
    const takesLater = after !== null || (before === null && afterQuality !== 0);
    values.push(takesLater ? after : before);
    quality[position] = takesLater ? afterQuality : beforeQuality;
  }
  const plain = values.every((value, position) => quality[position] === (value === null ? 0 : 1));
  return { values, quality: plain ? null : quality };
}

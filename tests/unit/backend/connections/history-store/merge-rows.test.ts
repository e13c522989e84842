import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeRows, type MergedRow } from '../../../../../backend/src/connections/history-store/embedded/merge-rows';
import { qualityAt } from '../../../../../backend/src/connections/history-store/embedded/row-quality';

const width = 3;
/** A value with quality good or uncertain, nothing, or bad. */
const cell = fc.oneof(
  fc.record({ value: fc.integer(), quality: fc.constantFrom(1, 2) }),
  fc.record({ value: fc.constant(null), quality: fc.constantFrom(0, 3) }),
);
const row = fc.array(cell, { minLength: width, maxLength: width }).map((cells): MergedRow => ({
  values: cells.map(({ value }) => value),
  quality: Uint8Array.from(cells, ({ quality }) => quality),
}));
const cells = (merged: MergedRow) =>
  merged.values.map((value, position) => [value, qualityAt(merged.quality, position, value)]);

describe('two writes of one second', () => {
  it('give the later value where there is one and keep the earlier where there is none', () => {
    fc.assert(
      fc.property(row, row, (earlier, later) => {
        mergeRows(earlier, later).values.forEach((value, position) => {
          expect(value).toBe(later.values[position] ?? earlier.values[position]);
        });
      }),
    );
  });

  it('merge in any grouping to the same, and a repeated write changes nothing', () => {
    fc.assert(
      fc.property(row, row, row, (a, b, c) => {
        expect(cells(mergeRows(mergeRows(a, b), c))).toEqual(cells(mergeRows(a, mergeRows(b, c))));
        expect(cells(mergeRows(mergeRows(a, b), b))).toEqual(cells(mergeRows(a, b)));
      }),
    );
  });

  it('carry the quality of the value that stays', () => {
    const earlier = { values: [1, 2, null], quality: Uint8Array.from([2, 1, 3]) };
    const later = { values: [null, 5, null], quality: Uint8Array.from([3, 2, 0]) };
    expect(cells(mergeRows(earlier, later))).toEqual([
      [1, 2],
      [5, 2],
      [null, 3],
    ]);
  });

  it('need no quality where all is good', () => {
    const earlier = { values: [1, null], quality: Uint8Array.from([2, 0]) };
    expect(mergeRows(earlier, { values: [3, null], quality: null }).quality).toBeNull();
  });
});

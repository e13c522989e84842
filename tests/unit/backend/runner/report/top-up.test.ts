import { describe, expect, it } from 'vitest';
import type { HistoryBuckets } from '../../../../../backend/src/ports/history-store';
import { bucketFigures } from '../../../../../backend/src/runner/report/bucket-figures';
import { countedOf, expandedOf, togetherOf } from '../../../../../backend/src/runner/report/top-up';

const none = { absolute: Number.NaN, relative: Number.NaN, normalAbsolute: Number.NaN, normalRelative: Number.NaN };
const liters = (values: readonly (readonly [min: number, max: number] | null)[]): HistoryBuckets =>
  buckets(values.map((one) => (one === null ? null : [one[0] / 1000, one[1] / 1000])));

/** One bucket a minute from time 0 on; the mean is half-way, of 60 samples. */
function buckets(values: readonly (readonly [min: number, max: number] | null)[]): HistoryBuckets {
  const of = (pick: (one: readonly [number, number]) => number) =>
    Float64Array.from(values, (one) => (one === null ? Number.NaN : pick(one)));
  return {
    bucketMs: 60_000,
    resolution: 'second',
    startMs: Float64Array.from(values, (_, at) => at * 60_000),
    min: of(([min]) => min),
    mean: of(([min, max]) => (min + max) / 2),
    max: of(([, max]) => max),
    count: Float64Array.from(values, (one) => (one === null ? 0 : 60)),
  };
}

describe('top-up by a counter', () => {
  it('is from its first reading to its last, through a gap: it counts on while nobody listens', () => {
    const counted = countedOf(liters([null, [100, 101], null, null, [104, 104], [104, 106.5], null]), none);
    expect(counted.volume).toBeCloseTo(0.0065, 12);
    expect(counted).toMatchObject({ expandedUncertainty: null, fromMs: 60_000, toMs: 360_000, notes: [] });
  });

  it('is not told by a counter that was never heard', () => {
    expect(countedOf(liters([null, null]), none)).toMatchObject({ volume: null, fromMs: null, toMs: null });
  });

  it('leaves out a set-back, and says so', () => {
    const counted = countedOf(
      liters([
        [900, 902],
        [0, 3],
        [3, 4],
      ]),
      none,
    );
    expect(counted.volume).toBeCloseTo(0.006, 12);
    expect(counted.notes).toEqual(['The counter went back once: what was topped up around then is not in the sum.']);
  });

  it.for([
    [
      'in the midst',
      [
        [900, 901],
        [0, 901],
        [0.5, 1],
      ],
      2,
    ],
    [
      'in the first',
      [
        [0, 901],
        [0.5, 1],
      ],
      1,
    ],
    [
      'in the last',
      [
        [900, 901],
        [0, 901],
      ],
      1,
    ],
    ['before a gap', [[900, 901], [0, 901], null, [4, 5]], 6],
    [
      'at whose end it stood low',
      [
        [899, 900],
        [0, 901],
        [0, 0],
        [0, 3],
      ],
      4,
    ],
  ] as const)('does not count what stood on it where it was set back within a bucket %s', ([, values, counted]) => {
    const { volume, notes } = countedOf(liters(values), none);
    expect(volume).toBeCloseTo(counted / 1000, 12);
    expect(notes).toEqual(['The counter went back once: what was topped up around then is not in the sum.']);
  });

  it('does not count the whole of it where one reading fell out', () => {
    expect(
      countedOf(
        liters([
          [900, 901],
          [0, 901],
          [901, 902],
        ]),
        none,
      ).volume,
    ).toBeCloseTo(0.002, 12);
  });

  // 2 % of 6 L as a half-width: 0.12 L, u = 0.12/√3, U = 2u = 0.13856 L.
  it('is as sure as the site file says of its counter, k = 2', () => {
    expect(expandedOf(0.006, { ...none, relative: 0.02 })).toBeCloseTo(0.000138564, 9);
  });

  // ±0.5 L at either end: u² = 2·0.25/3 L², U = 2·0.408248 = 0.816497 L; a certificate's 0.3 L each: U = 2·√(2·0.09) = 0.848528 L.
  it('has the errors of two readings where they are absolute', () => {
    expect(expandedOf(0, { ...none, absolute: 0.0005 })).toBeCloseTo(0.000816497, 9);
    expect(expandedOf(0, { ...none, normalAbsolute: 0.0003 })).toBeCloseTo(0.000848528, 9);
  });

  const one = { volume: 0.002, expandedUncertainty: 0.0003, fromMs: 0, toMs: 600_000, notes: [] };
  it('of a loop is that of all its units, their uncertainties as squares, over the time that all of them tell', () => {
    const other = {
      ...one,
      volume: 0.001,
      expandedUncertainty: 0.0004,
      fromMs: 60_000,
      toMs: 540_000,
      notes: ['set back'],
    };
    const sum = togetherOf([
      ['n1', one],
      ['n2', other],
    ]);
    expect(sum.volume).toBeCloseTo(0.003, 12);
    expect(sum.expandedUncertainty).toBeCloseTo(0.0005, 12);
    expect(sum).toMatchObject({
      from: '1970-01-01T00:01:00.000Z',
      to: '1970-01-01T00:09:00.000Z',
      notes: ['set back'],
    });
  });

  it('of a loop is not known where one of its counters was silent, or where it has none', () => {
    const silent = { volume: null, expandedUncertainty: null, fromMs: null, toMs: null, notes: [] };
    expect(
      togetherOf([
        ['n1', one],
        ['n2', silent],
      ]),
    ).toMatchObject({
      ...{ volume: null, expandedUncertainty: null, notes: ['The counter of n2 told nothing in this time.'] },
    });
    expect(togetherOf([])).toMatchObject({ volume: null, expandedUncertainty: null, from: null, to: null });
  });
});

describe('figures of a period', () => {
  it('are of what was measured, with its share; a gap is no zero', () => {
    expect(bucketFigures(buckets([[3, 5], null, [1, 9], [4, 6]]))).toEqual({
      ...{ least: 1, most: 9, mean: 14 / 3, last: 5, lastAtMs: 180_000, leastAtMs: 120_000, share: 0.75 },
    });
    expect(bucketFigures(buckets([null, null]))).toEqual({
      ...{ least: null, most: null, mean: null, last: null, lastAtMs: null, leastAtMs: null, share: 0 },
    });
  });
});

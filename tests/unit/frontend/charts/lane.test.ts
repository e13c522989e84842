import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignLines, alonePlaces } from '../../../../frontend/src/charts/align-lines';
import type { Lane } from '../../../../frontend/src/charts/lane';
import { laneLine } from '../../../../frontend/src/charts/lane-line';
import { laneRange } from '../../../../frontend/src/charts/lane-range';
import { timeTicks } from '../../../../frontend/src/charts/time-ticks';

/** A unit of measure that is shown as it is kept. */
const plain = { factor: 1 };
const history = (mean: (number | null)[], bucketMs = 1000, counted = 1): HistoryColumns => ({
  unit: 'e7',
  point: 'x',
  unit_of_measure: '1',
  bucketMs,
  resolution: 'second',
  start: mean.map((_, index) => new Date(index * bucketMs).toISOString()),
  min: mean,
  mean,
  max: mean,
  count: mean.map((value) => (value === null ? 0 : counted)),
});

describe('a line of history and live values', () => {
  it('goes on between the values of a sensor that is polled seldom', () => {
    const polled = Array.from({ length: 40 }, (_, index) => (index % 10 === 0 ? index : null));
    expect(laneLine(history(polled), plain).mean).toEqual([0, 10, 20, 30]);
  });

  it('keeps a silence as a gap', () => {
    expect(laneLine(history([1, 2, 3, null, null, null, null, null, 4, 5]), plain).mean).toEqual([1, 2, 3, null, 4, 5]);
  });

  it('keeps a single empty bucket as a gap where buckets hold many values, up to years', () => {
    for (const [bucketMs, counted] of [
      [10_000, 10],
      [60_000, 60],
      [52_560_000, 52_560],
    ] as const)
      expect(laneLine(history([1, null, 2, 3, 4], bucketMs, counted), plain).mean).toEqual([1, null, 2, 3, 4]);
  });

  it('bridges an empty bucket where a value comes a bucket, as one that comes a little late leaves one', () => {
    expect(laneLine(history([1, null, 2, 3, 4], 6000, 1), plain).mean).toEqual([1, 2, 3, 4]);
  });

  it('adds what came live after the history, and nothing twice', () => {
    const live = [
      { seconds: 1.2, value: 99 },
      { seconds: 2.5, value: 3 },
      { seconds: 9, value: 4 },
    ];
    const line = laneLine(history([1, 2]), { factor: 10 }, live);
    expect(line.mean).toEqual([10, 20, 30, null, 40]);
    expect(line.seconds).toEqual([0.5, 1.5, 2.5, 5.75, 9]);
  });

  it('has times that only rise', () => {
    const cell = fc.option(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { nil: null });
    fc.assert(
      fc.property(fc.array(cell, { maxLength: 60 }), (mean) => {
        const { seconds } = laneLine(history(mean), plain);
        expect(seconds.every((at, index) => index === 0 || at > (seconds[index - 1] ?? at))).toBe(true);
      }),
    );
  });
});

describe('lines on one array of times', () => {
  const one = { seconds: [0, 2, 4], min: [1, 2, 3], mean: [1, 2, 3], max: [1, 2, 3], uncertainty: [0.5, null, 0.1] };
  const other = { seconds: [1, 2], min: [null, 7], mean: [null, 7], max: [null, 7], uncertainty: null };
  it('have nothing where only another has a time, and keep their gaps', () => {
    const { seconds, columns } = alignLines([one, other]);
    expect(seconds).toEqual([0, 1, 2, 4]);
    expect(columns[0]?.mean).toEqual([1, undefined, 2, 3]);
    expect(columns[1]?.mean).toEqual([undefined, null, 7, undefined]);
    expect(columns[0]?.uncertainty).toEqual([0.5, undefined, null, 0.1]);
    expect(columns[1]?.uncertainty).toEqual([undefined, undefined, undefined, undefined]);
  });

  it('show a value alone between gaps as a dot, whatever the others have between', () => {
    expect(alonePlaces([undefined, 5, undefined, null, 6, 7, null])).toEqual([1]);
  });
});

const lane = (values: number[], limits: number[], range: Lane['scale']['range'] = null): Lane => ({
  id: 'x',
  title: 'x',
  scale: { unit: '', words: null, range, say: String },
  lines: [
    {
      key: 'k',
      letter: 'a',
      ink: 0,
      seconds: values.map((_, at) => at),
      min: values,
      mean: values,
      max: values,
      uncertainty: null,
    },
  ],
  limits: limits.map((value) => ({ value, name: `limit ${value}` })),
});

describe('the axis of a lane', () => {
  it('holds its values and the limits near them', () => {
    const { range, far } = laneRange(lane([10, 20], [25]));
    expect(range[0]).toBeLessThan(10);
    expect(range[1]).toBeGreaterThan(25);
    expect(far).toEqual([]);
  });

  it('is not flattened by a limit far off: that is told in words', () => {
    const { range, far } = laneRange(lane([10, 20], [500]));
    expect(range[1]).toBeLessThan(30);
    expect(far.map(({ name }) => name)).toEqual(['limit 500']);
  });

  it('has a height where nothing moves, and keeps the ends of words', () => {
    const { range } = laneRange(lane([5, 5], []));
    expect(range[1]).toBeGreaterThan(range[0]);
    expect(laneRange(lane([0, 1], [], [-0.3, 1.3])).range).toEqual([-0.3, 1.3]);
  });
});

describe('the words under a time axis', () => {
  const at = (iso: string): number => Date.parse(iso) / 1000;
  it('are clocks in the site’s zone, with the date where it begins', () => {
    const splits = [at('2026-03-01T22:00:00Z'), at('2026-03-01T23:00:00Z'), at('2026-03-02T00:00:00Z')];
    expect(timeTicks(splits, 3600, 'Europe/Oslo')).toEqual(['23:00\n2026-03-01', '00:00\n2026-03-02', '01:00']);
  });

  it('are dates where ticks stand a day apart', () => {
    expect(timeTicks([at('2026-03-01T00:00:00Z')], 86_400, 'UTC')).toEqual(['2026-03-01']);
  });
});

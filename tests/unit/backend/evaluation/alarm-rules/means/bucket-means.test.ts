import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BucketMeans,
  dayMeans,
  tenMinuteMeans,
} from '../../../../../../backend/src/evaluation/alarm-rules/means/bucket-means';

const minute = 60_000;
const hour = 3_600_000;

/** One value a second over so many minutes, from a minute on. */
function feed(means: BucketMeans, fromMinute: number, minutes: number, value: number, stepMs = 1000): void {
  for (let t = fromMinute * minute; t < (fromMinute + minutes) * minute; t += stepMs) means.push(0, value, t);
}

describe('means of the last ten minutes', () => {
  it('are not known before five minutes are whole', () => {
    const means = tenMinuteMeans(1);
    feed(means, 0, 5, 7);
    expect(means.mean(0)).toBeNaN();
    means.push(0, 7, 5 * minute);
    expect(means.mean(0)).toBe(7);
  });

  it('forget what is older than ten minutes', () => {
    const means = tenMinuteMeans(1);
    feed(means, 0, 10, 1);
    feed(means, 10, 10, 3);
    means.push(0, 3, 20 * minute);
    expect(means.mean(0)).toBe(3);
  });

  it('count a minute with one sample as much as one with sixty', () => {
    const means = tenMinuteMeans(1);
    feed(means, 0, 5, 1);
    feed(means, 5, 5, 3, minute);
    means.push(0, 3, 10 * minute);
    expect(means.mean(0)).toBe(2);
  });

  it('leave bad values out, and are not known after a gap of ten minutes', () => {
    const means = tenMinuteMeans(1);
    feed(means, 0, 6, 4);
    feed(means, 6, 2, Number.NaN);
    means.push(0, 4, 8 * minute);
    expect(means.mean(0)).toBe(4);
    means.push(0, 4, 40 * minute);
    expect(means.mean(0)).toBeNaN();
  });

  it('never mix the values of two signals', () => {
    const means = tenMinuteMeans(2);
    for (let t = 0; t <= 10 * minute; t += 1000) {
      means.push(0, 1, t);
      means.push(1, 9, t);
    }
    expect([means.mean(0), means.mean(1)]).toEqual([1, 9]);
    means.forget(0);
    expect([means.mean(0), means.mean(1)]).toEqual([Number.NaN, 9]);
  });
});

describe('the mean of a day', () => {
  it('is known after twelve hours and is the mean of the last 24', () => {
    const means = dayMeans(1);
    for (let h = 0; h < 12; h += 1) means.push(0, 1, h * hour);
    expect(means.mean(0)).toBeNaN();
    means.push(0, 1, 12 * hour);
    expect(means.mean(0)).toBe(1);
    for (let h = 13; h <= 36; h += 1) means.push(0, 2, h * hour);
    // 24 closed hours, 12 to 35, of which the first still held 1.
    expect(means.mean(0)).toBeCloseTo((1 + 23 * 2) / 24, 12);
  });

  it('lies between the least and the most that was pushed', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 60, maxLength: 200 }),
        (values) => {
          const means = dayMeans(1);
          values.forEach((value, i) => means.push(0, value, i * (hour / 2)));
          expect(means.mean(0)).toBeGreaterThanOrEqual(Math.min(...values) - 1e-6);
          expect(means.mean(0)).toBeLessThanOrEqual(Math.max(...values) + 1e-6);
        },
      ),
    );
  });
});

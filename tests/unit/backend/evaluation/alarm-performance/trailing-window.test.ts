import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countsPerSpan, mostInWindow } from '../../../../../backend/src/evaluation/alarm-performance/trailing-window';

const ordered = fc
  .array(fc.integer({ min: 0, max: 120 }), { maxLength: 60 })
  .map((times) => [...times].sort((a, b) => a - b));

describe('mostInWindow', () => {
  it('agrees with a count at every whole time, whatever comes', () => {
    fc.assert(
      fc.property(ordered, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 90 }), (times, window, from) => {
        const to = from + 30;
        let most = 0;
        for (let at = from; at < to; at += 1)
          most = Math.max(most, times.filter((time) => time > at - window && time <= at).length);
        expect(mostInWindow(times, window, from, to)).toBe(most);
      }),
    );
  });

  it('looks back before the period, and not beyond its end', () => {
    expect(mostInWindow([90, 95, 100], 10, 99, 101)).toBe(2);
    expect(mostInWindow([90, 95, 100], 10, 80, 95)).toBe(1);
  });
});

describe('countsPerSpan', () => {
  it('counts each time of the period once, in the span that it is in', () => {
    fc.assert(
      fc.property(ordered, fc.integer({ min: 1, max: 30 }), (times, span) => {
        const counts = countsPerSpan(times, span, 10, 100);
        expect(counts.length).toBe(Math.ceil(90 / span));
        counts.forEach((count, i) => {
          const [from, to] = [10 + i * span, Math.min(100, 10 + (i + 1) * span)];
          expect(count).toBe(times.filter((time) => time >= from && time < to).length);
        });
      }),
    );
  });
});

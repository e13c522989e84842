import { describe, expect, it } from 'vitest';
import { TickFigures } from '../../../../../backend/src/runner/watch/tick-figures';

describe('figures of ticks', () => {
  it('count slices, and how late the oldest of each tick was once it was judged', () => {
    const figures = new TickFigures();
    figures.ticked('wall', 10_000, 4);
    figures.ticked('wall', 10_050, 5);
    expect(figures.takeWorstLagS()).toBeCloseTo(0.005, 9);
    // Three seconds of nothing: 60 slices at once, the first due at 10,100 ms.
    figures.ticked('wall', 13_050, 200);
    expect(figures.slice.count).toBe(62);
    expect(figures.takeWorstLagS()).toBeCloseTo(3.15, 9);
    expect(figures.takeWorstLagS()).toBe(0);
    expect(figures.duration.count).toBe(3);
    expect(figures.duration.sum).toBeCloseTo(0.209, 9);
  });

  it('leave out a tick that found nothing due', () => {
    const figures = new TickFigures();
    figures.ticked('wall', 10_000, 4);
    figures.ticked('wall', 10_049, 1);
    figures.ticked('wall', Number.NaN, 1);
    expect([figures.slice.count, figures.duration.count]).toEqual([1, 1]);
  });

  it('know no lateness on the source clock, where nothing is due by itself', () => {
    const figures = new TickFigures();
    figures.ticked('source', 10_000, 4);
    figures.ticked('source', 90_000, 4);
    expect([figures.lag.count, figures.takeWorstLagS(), figures.slice.count]).toEqual([0, 0, 1601]);
  });
});

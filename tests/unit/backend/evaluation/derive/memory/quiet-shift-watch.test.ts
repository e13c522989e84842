import { describe, expect, it } from 'vitest';
import { ShiftWatch } from '../../../../../../backend/src/evaluation/derive/memory/shift-watch';
import { PatternWatch } from '../../../../../../backend/src/evaluation/derive/memory/pattern-watch';
import { patternSignals, shiftSignals } from '../../../../../../backend/src/evaluation/derive/watched-signals';
import { seededRandom } from '../../../../../../simulator/src/scenario/seeded-random';
import { normal } from '../../../../../../simulator/src/sensors/random-source';

/** A week of means of ten minutes, which is how the charts are fed. */
const week = 7 * 144;
/** Readings that a mean is made of here: one in ten seconds. */
const perMean = 60;

const normals = (seed: string): (() => number) => {
  const source = seededRandom(7, seed);
  return () => normal(source);
};

/** Means of noise that forgets within `memoryS` seconds; 0: white. A first-order autoregression. */
function means(seed: string, memoryS: number): () => number {
  const step = normals(seed);
  const kept = memoryS === 0 ? 0 : Math.exp(-10 / memoryS);
  let now = step();
  return () => {
    let sum = 0;
    for (let i = 0; i < perMean; i += 1) {
      now = kept * now + Math.sqrt(1 - kept * kept) * step();
      sum += now;
    }
    return sum / perMean;
  };
}

/** Greatest share of the limit over a week after a known-good week, of all figures of a unit. */
function greatestShare(seed: string, memoryS: number): number {
  const watch = new ShiftWatch(1);
  let greatest = 0;
  for (let signal = 0; signal < shiftSignals.length; signal += 1) {
    const next = means(`${seed} ${signal}`, memoryS);
    for (let i = 0; i < 2 * week; i += 1) {
      watch.take(0, signal, next(), week);
      if (i >= week) greatest = Math.max(greatest, Math.abs(watch.share(0, signal)));
    }
  }
  return greatest;
}

const seeds = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

describe('the charts of a unit in which nothing changes', () => {
  it.each(seeds)('are silent for a week of white noise (%s)', (seed) => {
    expect(greatestShare(seed, 0)).toBeLessThan(1);
  });

  it.each(seeds)('are silent for a week of noise that lasts a minute (%s)', (seed) => {
    expect(greatestShare(seed, 60)).toBeLessThan(1);
  });

  it.each([5, -5])('speak within four means, 40 minutes, of a shift by %i standard deviations', (shift) => {
    const watch = new ShiftWatch(1);
    const next = normals(`shift ${shift}`);
    for (let i = 0; i < 2 * week; i += 1) watch.take(0, 0, next(), week);
    expect(Math.abs(watch.share(0, 0))).toBeLessThan(1);
    for (let i = 0; i < 4; i += 1) watch.take(0, 0, next() + shift, week);
    expect(watch.share(0, 0) * Math.sign(shift)).toBeGreaterThan(1);
  });
});

describe('the pattern of a unit in which nothing changes', () => {
  const size = patternSignals.length;
  const has = patternSignals.map(() => true);
  /** All follow one load, as they do in a loop, each with its own noise. */
  const sampled = (seed: string, memoryS: number): (() => Float64Array) => {
    const load = means(`${seed} load`, memoryS);
    const own = patternSignals.map((_, i) => means(`${seed} ${i}`, memoryS));
    return () => {
      const now = load();
      return Float64Array.from(own, (next) => now + 0.3 * next());
    };
  };
  const learnt = (next: () => Float64Array): PatternWatch => {
    const watch = new PatternWatch(1);
    for (let i = 0; i < week; i += 1) give(watch, next());
    return watch;
  };
  const give = (watch: PatternWatch, sample: Float64Array): void =>
    watch.take(0, (signal) => sample[signal] as number, has, week);
  const beyond = (watch: PatternWatch): boolean => (watch.along[0] as number) > 1 || (watch.off[0] as number) > 1;

  it.each([
    ['white noise', 0],
    ['noise that lasts a minute', 60],
  ])('is never beyond its limit for 40 minutes on end in a week of %s', (_, memoryS) => {
    for (const seed of seeds) {
      const next = sampled(seed, memoryS);
      const watch = learnt(next);
      let running = 0;
      let longest = 0;
      for (let i = 0; i < week; i += 1) {
        give(watch, next());
        running = beyond(watch) ? running + 1 : 0;
        longest = Math.max(longest, running);
      }
      expect(longest, seed).toBeLessThan(4);
    }
  });

  it('is beyond its limit at each of four means once one signal has left the others by 5 of its standard deviations', () => {
    const next = sampled('broken', 0);
    const watch = learnt(next);
    for (let i = 0; i < 4; i += 1) {
      const sample = next();
      sample[size - 1] = (sample[size - 1] as number) + (5 * Math.hypot(1, 0.3)) / Math.sqrt(perMean);
      give(watch, sample);
      expect(beyond(watch)).toBe(true);
    }
  });
});

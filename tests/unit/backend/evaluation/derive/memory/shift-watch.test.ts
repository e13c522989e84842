import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ShiftWatch, shiftLimit } from '../../../../../../backend/src/evaluation/derive/memory/shift-watch';

const good = 24;
/** A watch of two units that has learnt mean 1 and deviation 0.1 of the first figure of the second unit. */
function learnt(): ShiftWatch {
  const watch = new ShiftWatch(2);
  const half = 0.1 * Math.sqrt((good - 1) / good);
  for (let i = 0; i < good; i += 1) watch.take(1, 0, 1 + (i % 2 === 0 ? half : -half), good);
  return watch;
}

describe('a chart of change', () => {
  it('has learnt once it saw as many means as the period has, and stands at zero then', () => {
    const watch = learnt();
    expect(watch.isLearnt(1, 0, good)).toBe(true);
    expect(watch.isLearnt(1, 1, good)).toBe(false);
    expect(watch.isLearnt(0, 0, good)).toBe(false);
    expect(watch.share(1, 0)).toBe(0);
  });

  it('never learns the fault: a shift of one deviation that stays is found, and found ever more surely', () => {
    const watch = learnt();
    let before = 0;
    for (let i = 0; i < 100; i += 1) {
      watch.take(1, 0, 1.1, good);
      expect(watch.share(1, 0)).toBeGreaterThan(before);
      before = watch.share(1, 0);
    }
    // Half a deviation is gained with each mean.
    expect(before).toBeCloseTo(50 / shiftLimit, 6);
  });

  it('tells a fall by its sign', () => {
    const watch = learnt();
    for (let i = 0; i < 40; i += 1) watch.take(1, 0, 0.9, good);
    expect(watch.share(1, 0)).toBeLessThan(-1);
  });

  it('says nothing while the figure strays by less than half a deviation', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.951, max: 1.049, noNaN: true }), { maxLength: 200 }), (means) => {
        const watch = learnt();
        for (const mean of means) watch.take(1, 0, mean, good);
        expect(watch.share(1, 0)).toBe(0);
      }),
    );
  });

  it('leaves out a mean that is not known', () => {
    const watch = learnt();
    watch.take(1, 0, 1.3, good);
    const before = watch.share(1, 0);
    watch.take(1, 0, Number.NaN, good);
    expect(watch.share(1, 0)).toBe(before);
  });

  it('has no share where what it learnt from stood still', () => {
    const watch = new ShiftWatch(1);
    for (let i = 0; i < good; i += 1) watch.take(0, 0, 1, good);
    expect(watch.share(0, 0)).toBeNaN();
  });

  it('learns anew once it has forgotten, and no other unit with it', () => {
    const watch = learnt();
    watch.forget(0);
    expect(watch.isLearnt(1, 0, good)).toBe(true);
    watch.forget(1);
    expect(watch.isLearnt(1, 0, good)).toBe(false);
  });
});

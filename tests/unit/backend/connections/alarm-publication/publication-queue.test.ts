import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  PublicationQueue,
  type WaitingState,
} from '../../../../../backend/src/connections/alarm-publication/publication-queue';

const state = (alarm: string, payload: string): WaitingState => ({ alarm, payload, ends: false });

function takeAll(queue: PublicationQueue): WaitingState[] {
  const all: WaitingState[] = [];
  for (let one = queue.take(); one !== null; one = queue.take()) all.push(one);
  return all;
}

describe('states that wait for the broker', () => {
  it('go in the order in which they came, every one, while there is room', () => {
    const queue = new PublicationQueue(10);
    const all = [state('a', '1'), state('b', '1'), state('a', '2')];
    for (const one of all) queue.put(one);
    expect(takeAll(queue)).toEqual(all);
    expect(queue.lost).toBe(false);
  });

  it('are given up for a newer one of the same alarm where room is short', () => {
    const queue = new PublicationQueue(3);
    for (const payload of ['1', '2', '3']) queue.put(state('a', payload));
    queue.put(state('b', '1'));
    expect(takeAll(queue)).toEqual([state('a', '3'), state('b', '1')]);
    expect(queue.lost).toBe(false);
  });

  it('say that some were lost where each was of another alarm', () => {
    const queue = new PublicationQueue(3);
    for (const alarm of ['a', 'b', 'c', 'd']) queue.put(state(alarm, '1'));
    expect(queue.lost).toBe(true);
    expect(takeAll(queue).map(({ alarm }) => alarm)).toEqual(['c', 'd']);
  });

  it('never are more than the limit; keep their order; and without a loss the newest of each alarm is among them', () => {
    const step = fc.oneof(
      { weight: 5, arbitrary: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f') },
      fc.constant('take' as const),
      fc.constant('keepNewest' as const),
    );
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 8 }), fc.array(step, { maxLength: 200 }), (limit, steps) => {
        const queue = new PublicationQueue(limit);
        const newest = new Map<string, number>();
        const taken: WaitingState[] = [];
        steps.forEach((what, i) => {
          if (what === 'keepNewest') queue.keepNewest();
          else if (what === 'take') {
            const one = queue.take();
            if (one !== null) taken.push(one);
          } else {
            newest.set(what, i);
            queue.put(state(what, `${i}`));
          }
          expect(queue.length).toBeLessThanOrEqual(limit);
        });
        taken.push(...takeAll(queue));
        const order = taken.map(({ payload }) => Number(payload));
        expect(order).toEqual([...order].sort((a, b) => a - b));
        if (queue.lost) return;
        for (const [alarm, i] of newest)
          expect(taken.filter((one) => one.alarm === alarm).at(-1)?.payload).toBe(`${i}`);
      }),
    );
  });
});

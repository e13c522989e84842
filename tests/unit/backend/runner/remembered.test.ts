import { fail, ok } from '@ebbline/shared/errors/result';
import { describe, expect, it } from 'vitest';
import type { Pipeline } from '../../../../backend/src/evaluation/pipeline/pipeline';
import type { Learnt } from '../../../../backend/src/evaluation/pipeline/remembered/memory-image';
import type { MemoryStore } from '../../../../backend/src/ports/memory-store';
import { Remembered } from '../../../../backend/src/runner/remembered';

const image = (number: number): Learnt => ({ head: '{}', numbers: Float64Array.of(number) });

function bench(store: Partial<MemoryStore>, malformed = false) {
  const recalled: Learnt[] = [];
  const pipeline = {
    learnt: (nowMs: number) => image(nowMs),
    recall(learnt: Learnt) {
      recalled.push(learnt);
      return malformed ? fail({ code: 'MEMORY_MALFORMED', message: 'cut off' }) : ok(null);
    },
  } as unknown as Pipeline;
  const saved: number[] = [];
  const whole: MemoryStore = {
    load: () => null,
    save: ({ numbers }) => {
      saved.push(numbers[0] ?? -1);
      return Promise.resolve();
    },
    ...store,
  };
  let nowMs = Number.NaN;
  const remembered = new Remembered(pipeline, whole, () => nowMs);
  return { remembered, recalled, saved, at: (time: number) => void (nowMs = time) };
}

describe('what the runner keeps over a restart', () => {
  it('is given back at the start, where there is any', () => {
    const { remembered, recalled } = bench({ load: () => image(7) });
    remembered.recall();
    expect(recalled).toEqual([image(7)]);
    expect(remembered.trouble()).toBeNull();
  });

  it('is kept once the time is known, one image after the other, and once more at the end', async () => {
    const { remembered, saved, at } = bench({});
    remembered.save();
    expect(saved).toEqual([]);
    at(1);
    remembered.save();
    remembered.save();
    at(2);
    await remembered.end();
    expect(saved).toEqual([1, 2]);
  });

  it('is kept as soon as the time is known, and not so again: the newest image is then one of this run', async () => {
    const { remembered, saved, at } = bench({});
    remembered.saveFirst();
    at(1);
    remembered.saveFirst();
    await Promise.resolve();
    at(2);
    remembered.saveFirst();
    expect(saved).toEqual([1]);
    await remembered.end();
    expect(saved).toEqual([1, 2]);
  });

  it('says what is wrong until an image is kept again', async () => {
    const broken = bench({ load: () => image(7) }, true);
    broken.remembered.recall();
    expect(broken.remembered.trouble()).toBe('cut off');
    broken.at(1);
    await broken.remembered.end();
    expect(broken.remembered.trouble()).toBeNull();
    const full = bench({ save: () => Promise.reject(new Error('no space')) });
    full.at(1);
    await full.remembered.end();
    expect(full.remembered.trouble()).toBe('no space');
  });
});

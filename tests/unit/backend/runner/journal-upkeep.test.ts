import { describe, expect, it } from 'vitest';
import type { SealDue } from '../../../../backend/src/ports/alarm-journal';
import { JournalUpkeep } from '../../../../backend/src/runner/journal-upkeep';

const day = 86_400_000;
const nowMs = Date.UTC(2031, 4, 6);
/** It has gone on evenly for a day when it is looked for the second time. */
function evenly() {
  let monotonicMs = 0;
  let stepMs = 0;
  return {
    wallMs: () => nowMs - day + monotonicMs + stepMs,
    monotonicMs: () => monotonicMs,
    goOn: (ms: number) => void (monotonicMs += ms),
    step: (ms: number) => void (stepMs += ms),
  };
}

/** An upkeep that has looked once a day ago. */
async function steady(journal: ReturnType<typeof due>): Promise<JournalUpkeep> {
  const clock = evenly();
  const upkeep = new JournalUpkeep(journal, clock, 400);
  await upkeep.look();
  clock.goOn(day);
  return upkeep;
}

/** A journal that has so many files' worth of rows due, and refuses while it is told to. */
function due(files: number): { asked: SealDue[]; refuses: boolean; sealOldest(due: SealDue): Promise<number> } {
  return {
    asked: [],
    refuses: false,
    sealOldest(when) {
      this.asked.push(when);
      if (this.refuses) return Promise.reject(new Error('the disk is full'));
      files -= 1;
      return Promise.resolve(files >= 0 ? 2000 : 0);
    },
  };
}

describe('the upkeep of the journal', () => {
  it('seals until nothing is due that was kept for long enough', async () => {
    const journal = due(3);
    const upkeep = await steady(journal);
    await upkeep.look();
    expect(journal.asked).toHaveLength(4);
    for (const asked of journal.asked)
      expect(asked).toEqual({ beforeMs: nowMs - 400 * day, urgentMs: nowMs - 431 * day, wallMs: nowMs });
    expect(upkeep.reasons()).toEqual([]);
  });

  it('seals nothing by a clock that was stepped within a day, however far ahead it is, and goes on a day after', async () => {
    const journal = due(1);
    const clock = evenly();
    const upkeep = new JournalUpkeep(journal, clock, 400);
    const tenMinutes = async (times: number): Promise<void> => {
      for (let time = 0; time < times; time += 1) {
        await upkeep.look();
        clock.goOn(600_000);
      }
    };
    clock.step(500 * day);
    await tenMinutes(143);
    expect(journal.asked).toEqual([]);
    clock.step(-500 * day);
    await tenMinutes(144);
    expect(journal.asked).toEqual([]);
    await tenMinutes(1);
    expect(journal.asked.length).toBeGreaterThan(0);
  });

  it('looks by itself, one look at a time, and ends with what is under way', async () => {
    const journal = due(1);
    const upkeep = await steady(journal);
    const ticks: (() => void)[] = [];
    let stopped = false;
    const following = upkeep.follow({ every: (_, work) => (ticks.push(work), { stop: () => void (stopped = true) }) });
    expect(journal.asked).toEqual([]);
    for (const tick of [...ticks, ...ticks]) tick();
    await following.stop();
    expect(stopped).toBe(true);
    expect(journal.asked).toHaveLength(2);
  });

  it('tells health what is wrong, until it is done again', async () => {
    const journal = due(0);
    const upkeep = await steady(journal);
    journal.refuses = true;
    await upkeep.look();
    expect(upkeep.reasons()).toEqual([{ code: 'JOURNAL_UPKEEP_FAILED', message: 'the disk is full' }]);
    journal.refuses = false;
    await upkeep.look();
    expect(upkeep.reasons()).toEqual([]);
  });
});

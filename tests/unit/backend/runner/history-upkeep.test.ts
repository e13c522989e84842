import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { describe, expect, it } from 'vitest';
import type { HistoryAge, HistoryStore } from '../../../../backend/src/ports/history-store';
import { historyAge } from '../../../../backend/src/runner/history-age';
import { HistoryUpkeep } from '../../../../backend/src/runner/history-upkeep';
import { sourceTickClock, wallTickClock, type TickClock } from '../../../../backend/src/runner/tick-clock';

const minute = 60_000;
const day = 86_400_000;
const startMs = Date.UTC(2031, 4, 6);

function bench(kind: TickClock['kind']) {
  const clock = new ManualClock(startMs);
  let stepMs = 0;
  const machine = { wallMs: () => clock.wallMs() + stepMs, monotonicMs: () => clock.monotonicMs() };
  return {
    machine,
    goOn: (ms: number) => clock.advance(ms),
    step: (ms: number) => void (stepMs += ms),
    begin() {
      const tickClock = kind === 'wall' ? wallTickClock(machine) : sourceTickClock();
      const asked: { nowMs: number; age: HistoryAge | undefined }[] = [];
      const maintain = (nowMs: number, age?: HistoryAge) => (asked.push({ nowMs, age }), Promise.resolve());
      const store = { maintain } as unknown as HistoryStore;
      const upkeep = new HistoryUpkeep(store, () => tickClock.nowMs(), historyAge(tickClock, machine));
      return { tickClock, upkeep, asked };
    },
  };
}

const nothing = { atMs: -Infinity, atMostNewest: false };

describe('the upkeep of history', () => {
  it('removes nothing for its age until the clock of the machine has gone on evenly for a day', async () => {
    const { begin, goOn, step } = bench('wall');
    step(8 * day);
    const { upkeep, asked } = begin();
    const look = async (minutes: number): Promise<void> => {
      for (let time = 0; time < minutes; time += 1) {
        upkeep.begin();
        await upkeep.end();
        goOn(minute);
      }
    };
    await look(60);
    step(-8 * day);
    await look(1440);
    expect(asked).toHaveLength(1500);
    for (const { age } of asked) expect(age).toEqual(nothing);
    await look(1);
    // The time in force is still that of the start, eight days ahead: what is old is so by the machine's clock too.
    expect(asked.at(-1)).toEqual({
      nowMs: startMs + 1500 * minute + 8 * day,
      age: { atMs: startMs + 1500 * minute, atMostNewest: false },
    });
  });

  it('goes by the time in force where the clock of the machine was set forward since', async () => {
    const { begin, goOn, step } = bench('wall');
    const { upkeep, asked } = begin();
    step(8 * day);
    for (const ms of [day, 0]) {
      upkeep.begin();
      await upkeep.end();
      goOn(ms);
    }
    expect(asked.at(-1)?.age).toEqual({ atMs: startMs + day, atMostNewest: false });
  });

  it('removes by the newest row at most on the source clock', async () => {
    const { tickClock, upkeep, asked } = bench('source').begin();
    tickClock.reach(startMs);
    upkeep.begin();
    await upkeep.end();
    expect(asked).toEqual([{ nowMs: startMs, age: { atMs: startMs, atMostNewest: true } }]);
  });
});

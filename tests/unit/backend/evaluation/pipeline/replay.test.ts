import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { HistoryRows } from '../../../../../backend/src/evaluation/pipeline/history-rows';
import type { AlarmTransition } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { atRest, Plant, plantSite, startMs } from './plant';
import { seeded, withNoise } from './sensor-noise';

const encode = (payload: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(payload));

interface Recorded {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly sourceMs: number;
}

/** Two minutes of two units with a burst of trouble in the middle, and a message that comes late. */
function stream(): Recorded[] {
  const random = seeded(42);
  const messages: Recorded[] = [];
  for (let second = 0; second < 120; second += 1) {
    const sourceMs = startMs + second * 1000;
    messages.push({ topic: 'hall/air', payload: encode({ p: 101.3, t: 27, rh: 40 }), sourceMs });
    for (const id of ['m1', 'm2']) {
      const telemetry = withNoise(atRest(), random);
      if (second > 60) telemetry.water = true;
      if (second > 70 && id === 'm1') Object.assign(telemetry, { flow: 0, pTank: 91 });
      messages.push({
        topic: `plant/${id}`,
        payload: encode({ time: sourceMs + 120, ...telemetry }),
        sourceMs: sourceMs + 120,
      });
    }
  }
  const late = messages[50];
  return late === undefined ? messages : [...messages.slice(0, 100), late, ...messages.slice(100)];
}

/** Feeds the stream on the source clock, as the runner does: slices first, then the message. */
function replay(messages: readonly Recorded[]): { transitions: AlarmTransition[]; rows: HistoryRows[] } {
  const pipeline = createPipeline(plantSite({ units: ['m1', 'm2'] }), { clock: 'source', startMs: Number.NaN });
  const transitions: AlarmTransition[] = [];
  const rows: HistoryRows[] = [];
  let newest = Number.NaN;
  for (const { topic, payload, sourceMs } of messages) {
    if (!(sourceMs <= newest)) {
      newest = sourceMs;
      transitions.push(...pipeline.advance(newest));
    }
    pipeline.accept({ topic, payload, retained: false }, newest);
    const ready = pipeline.drainHistory(newest, false);
    if (ready !== null) rows.push(ready);
  }
  const rest = pipeline.drainHistory(newest, true);
  return { transitions, rows: rest === null ? rows : [...rows, rest] };
}

describe('a replay on the source clock', () => {
  it('gives the same transitions and rows twice', () => {
    const messages = stream();
    const first = replay(messages);
    expect(replay(messages)).toEqual(first);
    expect(first.transitions.map(({ alarm }) => alarm)).toEqual(
      expect.arrayContaining(['m1:WATER-1', 'm2:WATER-1', 'm1:FLOW-2', 'm1:MARGIN-2', 'm1:MARGIN-1']),
    );
    expect(first.rows.length).toBeGreaterThan(100);
  });

  it('does nothing before the first message, and nothing backwards', () => {
    const plant = new Plant().run(5);
    const before = plant.pipeline.state.acceptedMs.slice();
    expect(plant.pipeline.advance(plant.nowMs - 3000)).toEqual([]);
    expect(plant.pipeline.state.acceptedMs).toEqual(before);
  });
});

describe('a restart', () => {
  it('takes standing alarms back as they were, clears what is gone, and annunciates nothing twice', () => {
    const before = new Plant().run(30);
    before.m1.water = true;
    before.m1.flow = 0;
    before.run(10);
    const journal = JSON.parse(JSON.stringify(before.pipeline.standing())) as ReturnType<
      typeof before.pipeline.standing
    >;
    const after = new Plant();
    after.pipeline.restore(journal);
    expect(after.pipeline.standing()).toEqual(journal);
    after.m1.water = true;
    after.run(30);
    expect(after.transitions.map(({ alarm, to }) => [alarm, to])).toEqual([['m1:FLOW-2', 'returnedUnacknowledged']]);
    expect(after.standing('WATER-1')).toEqual(journal.find((record) => record.entry === 'WATER-1'));
  });

  it('ends by configuration what the site no longer has', () => {
    const before = new Plant(plantSite({ units: ['m1', 'm2'] })).run(10);
    Object.assign(before.telemetry['m2'] ?? {}, { water: true });
    before.run(5);
    const after = new Plant();
    after.pipeline.restore(before.pipeline.standing());
    after.second = 86_400;
    after.run(2);
    // It ends with the first step after the restart, a day later; not when it last changed.
    const atMs = after.nowMs - 1000;
    expect(after.transitions).toMatchObject([{ alarm: 'm2:WATER-1', to: 'normal', cause: 'configuration', atMs }]);
    expect(after.entries()).toEqual([]);
  });
});

describe('a restart under a first-out that the site no longer has', () => {
  it('brings the alarm out again', () => {
    const before = new Plant().run(10);
    before.m1.water = true;
    before.run(5);
    const [water] = before.pipeline.standing();
    if (water === undefined) throw new Error('nothing stands');
    const after = new Plant();
    after.pipeline.restore([{ ...water, foldedUnder: 'old:COM-1' }]);
    expect(after.standing('WATER-1')).toEqual({ ...water, foldedUnder: null });
  });
});

describe('a restart beside an alert', () => {
  const points = { 'control.manual': { path: 'hand' } };
  const byHand = (hand: boolean): Plant => {
    const plant = new Plant(plantSite({ points }));
    Object.assign(plant.m1, { hand });
    return plant.run(10);
  };

  it('goes on with it: it comes no second time, and goes once', () => {
    const before = byHand(true);
    const [came] = before.pipeline.takeAlertChanges();
    expect(came).toMatchObject({ what: 'came', alert: { alert: 'm1:SET-1' } });
    const standing = before.pipeline.alerts();

    const after = new Plant(plantSite({ points }));
    after.pipeline.restoreAlerts(standing);
    Object.assign(after.m1, { hand: true });
    after.run(20);
    expect(after.pipeline.takeAlertChanges()).toEqual([]);
    expect(after.pipeline.alerts()).toMatchObject([{ alert: 'm1:SET-1', sinceMs: standing[0]?.sinceMs }]);
    Object.assign(after.m1, { hand: false });
    after.run(3605);
    expect(after.pipeline.takeAlertChanges().map(({ what }) => what)).toEqual(['went']);
    expect(after.pipeline.alerts()).toEqual([]);
  });

  it('lets one that the site no longer has go, now', () => {
    const after = new Plant();
    after.pipeline.restoreAlerts(byHand(true).pipeline.alerts());
    after.second = 3600;
    after.run(1);
    expect(after.pipeline.takeAlertChanges()).toMatchObject([{ what: 'went', atMs: after.nowMs }]);
  });
});

describe('bounded catch-up', () => {
  it('runs ten seconds at most after a gap, and counts the rest', () => {
    const plant = new Plant().run(10);
    expect(plant.pipeline.skippedMs()).toBe(0);
    plant.pipeline.advance(plant.nowMs + 9000);
    expect(plant.pipeline.skippedMs()).toBe(0);
    plant.pipeline.advance(plant.nowMs + 3_609_000);
    expect(plant.pipeline.skippedMs()).toBe(3_590_000);
  });
});

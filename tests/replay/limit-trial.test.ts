import type { LimitTrial } from '@ebbline/shared/contract/limit-trial';
import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../backend/src/evaluation/pipeline/create-pipeline';
import type { AlarmTransition } from '../../backend/src/evaluation/pipeline/outputs';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import type { SettledPlants } from '../../simulator/src/scenario/unit-plant';
import { historyInMemory, type HistoryInMemory } from '../helpers/history-in-memory';
import { deskOver, tried } from '../helpers/trial-of-limits';
import { demoSite } from './judge-recording';

const startMs = Date.UTC(2026, 2, 3, 9);
const beginsS = 90;
const unit = 'N3';
const site = demoSite();
const settled: SettledPlants = new Map();

interface Recorded {
  readonly history: HistoryInMemory;
  readonly transitions: readonly AlarmTransition[];
}

/** Plays a fault through the real pipeline, which writes history as it does live, and keeps what was told. */
function record(command: Readonly<Record<string, unknown>>, seconds: number, endsS = seconds): Recorded {
  const history = historyInMemory(site);
  const pipeline = createPipeline(site, { clock: 'source', startMs: Number.NaN });
  const transitions: AlarmTransition[] = [];
  let nowMs = Number.NEGATIVE_INFINITY;
  const messages = recordTelemetry({
    seed: 1,
    startMs,
    seconds,
    units: demoFleet.filter(({ id }) => id === unit),
    settled,
    schedule: [
      { atS: beginsS, command: { ...command, unit, action: 'start' } },
      { atS: endsS, command: { ...command, unit, action: 'repair' } },
    ],
  });
  const drain = (everything: boolean): void => {
    const rows = pipeline.drainHistory(nowMs, everything);
    if (rows !== null) history.write(rows);
  };
  for (const { payload, sourceMs, topic } of messages) {
    if (sourceMs > nowMs) {
      nowMs = sourceMs;
      transitions.push(...pipeline.advance(nowMs));
      drain(false);
    }
    pipeline.accept({ topic, payload: Buffer.from(payload), retained: false }, nowMs);
  }
  drain(true);
  return { history, transitions };
}

const secondOf = (ms: number): number => (ms - startMs) / 1000;

/** When an entry went in and out of alarm, as it was told live. */
const live = ({ transitions }: Recorded, entry: string) => {
  const own = transitions.filter(({ alarm }) => alarm === `${unit}:${entry}`);
  return {
    raised: own.filter(({ from }) => from === 'normal').map(({ atMs }) => secondOf(atMs)),
    cleared: own.filter(({ cause }) => cause === 'conditionClear').map(({ atMs }) => secondOf(atMs)),
  };
};

const spansOf = (outcome: LimitTrial['live']) => ({
  raised: (outcome?.episodes ?? []).map(({ from }) => secondOf(Date.parse(from))),
  cleared: (outcome?.episodes ?? []).flatMap(({ to }) => (to === null ? [] : [secondOf(Date.parse(to))])),
});

const trialOf = (
  recorded: Recorded,
  entry: string,
  proposed: object,
  seconds: number,
  fromMs = startMs + 30_000,
): Promise<LimitTrial> =>
  tried(deskOver(site, recorded.history), {
    entry,
    units: [unit],
    from: new Date(fromMs).toISOString(),
    to: new Date(startMs + seconds * 1000).toISOString(),
    proposed,
  });

/** Within a second: the units of a site are judged at different twentieths of a second. */
function expectAlike(found: ReturnType<typeof spansOf>, told: ReturnType<typeof spansOf>): void {
  for (const which of ['raised', 'cleared'] as const) {
    expect(found[which].length, which).toBe(told[which].length);
    found[which].forEach((second, i) => {
      expect(Math.abs(second - (told[which][i] ?? Number.NaN)), which).toBeLessThanOrEqual(1.1);
    });
  }
}

describe('a trial over a recorded cut', () => {
  it('finds what was told of it, worked out anew, and nothing with a limit far above it', async () => {
    const recorded = record({ fault: 'cutServerHose', branch: 'r3', size: 'usual', checkValve: 'good' }, 260, 150);
    const told = live(recorded, 'AIR-1');
    expect(told.raised).toHaveLength(1);
    const trial = await trialOf(recorded, 'AIR-1', { limit: 1 }, 260);
    expect(trial.method).toBe('recomputed');
    expectAlike(spansOf(trial.live), told);
    expect(trial.proposed?.raised).toBe(0);
    expect(trial.live?.episodes[0]).toMatchObject({ unit, priority: 2 });
  });

  it('finds in every entry what was told where more air comes in than is carried, on stored points or anew', async () => {
    const recorded = record({ fault: 'cutRackMain', branch: 'r3', size: 'usual' }, 330, 170);
    const methods = { 'AIR-1': 'recomputed', 'MARGIN-1': 'recomputed', 'MARGIN-2': 'stored', 'FLOW-2': 'stored' };
    for (const [entry, method] of Object.entries(methods)) {
      const told = live(recorded, entry);
      expect(told.raised.length, entry).toBeGreaterThan(0);
      const trial = await trialOf(recorded, entry, { onDelaySeconds: 300 }, 330);
      expect(trial.method, entry).toBe(method);
      expectAlike(spansOf(trial.live), told);
      expect(trial.proposed?.raised, entry).toBe(0);
    }
    // A period too long to be worked out anew: the guard is that of one place, so that the onset may differ a little more.
    const long = await trialOf(recorded, 'MARGIN-1', {}, 330, startMs - 3 * 3_600_000);
    expect([long.method, long.notes.some((note) => note.includes('anew at 1 place'))]).toEqual(['stored', true]);
    const [raised = Number.NaN] = spansOf(long.live).raised;
    expect(Math.abs(raised - (live(recorded, 'MARGIN-1').raised[0] ?? Number.NaN))).toBeLessThanOrEqual(3);
  });
});

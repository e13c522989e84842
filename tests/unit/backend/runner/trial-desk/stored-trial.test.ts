import type { LimitTrial, StartTrialRequest, TrialOutcome } from '@ebbline/shared/contract/limit-trial';
import { limitTrialSchema } from '@ebbline/shared/contract/limit-trial';
import { describe, expect, it } from 'vitest';
import { buildSite } from '../../../../helpers/compiled-site-builder';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { deskOver, tried } from '../../../../helpers/trial-of-limits';

const fromMs = Date.UTC(2031, 4, 6);
const hour = 3600;
const { site } = buildSite();
const iso = (second: number): string => new Date(fromMs + second * 1000).toISOString();

/** A trial of MARGIN-2 (below 0 Pa; ends at 500 Pa; on after 3 s, off after 5 s) over margins second by second. */
async function tryMargins(
  marginAt: (second: number) => number | null | undefined,
  proposed: StartTrialRequest['proposed'],
  seconds = hour,
): Promise<LimitTrial> {
  const history = historyInMemory(site);
  for (let second = 0; second < seconds; second += 1) {
    const margin = marginAt(second);
    if (margin !== undefined) history.put('m1', 'vacuumMargin', fromMs + second * 1000, margin);
  }
  const request = { entry: 'MARGIN-2', units: ['m1'], from: iso(0), to: iso(seconds), proposed };
  return limitTrialSchema.parse(await tried(deskOver(site, history), request));
}

const spans = (outcome: TrialOutcome | null) =>
  (outcome?.episodes ?? []).map(({ from, to }) => [
    (Date.parse(from) - fromMs) / 1000,
    to === null ? null : (Date.parse(to) - fromMs) / 1000,
  ]);

describe('a trial on stored points', () => {
  it('moves the onset along a ramp as worked out by hand, and the end with it', async () => {
    // Falls by 10 Pa/s from 6000 Pa to −3000 Pa at 900 s, and rises by 10 Pa/s again.
    const ramp = (second: number): number => (second <= 900 ? 6000 - 10 * second : -3000 + 10 * (second - 900));
    const trial = await tryMargins(ramp, { limit: 2000 });
    // Live: below 0 from 601 s on, 3 s later 604 s; 500 Pa is reached at 1250 s, 5 s later 1255 s.
    expect(spans(trial.live)).toEqual([[604, 1255]]);
    // Proposed: below 2000 from 401 s on; 2500 Pa is reached at 1450 s.
    expect(spans(trial.proposed)).toEqual([[404, 1455]]);
    expect(trial.live).toMatchObject({ raised: 1, secondsInAlarm: 651, longestSeconds: 651, shortestSeconds: 651 });
    expect(trial.proposed?.episodes).toMatchObject([
      { unit: 'm1', part: null, priority: 2, worst: -3000, limit: 2000 },
    ]);
    expect(trial).toMatchObject({ state: 'done', method: 'stored', progress: 1, point: 'vacuumMargin' });
    expect([trial.secondsJudged, trial.secondsMissing, trial.live?.perDay]).toEqual([hour, 0, 24]);
  });

  it('raises nothing one tick short of the on-delay, and once one tick over', async () => {
    const low = (ticks: number) => (second: number) => (second >= 100 && second < 100 + ticks ? -1 : 1000);
    // True since the first tick: after 10 s it is raised, which is the eleventh tick.
    expect((await tryMargins(low(10), { onDelaySeconds: 10 })).proposed?.raised).toBe(0);
    const over = await tryMargins(low(11), { onDelaySeconds: 10 });
    expect(spans(over.proposed)).toEqual([[110, 116]]);
    expect(spans(over.live)).toEqual([[103, 116]]);
  });

  it('goes on one tick short of the off-delay, and is raised anew one tick over', async () => {
    const rest = (ticks: number) => (second: number) => {
      if (second < 100 || second >= 300) return 1000;
      return second >= 200 && second < 200 + ticks ? 600 : -1;
    };
    const off = { offDelaySeconds: 20 };
    expect(spans((await tryMargins(rest(20), off)).proposed)).toEqual([[103, 320]]);
    expect(spans((await tryMargins(rest(21), off)).proposed)).toEqual([
      [103, 220],
      [224, 320],
    ]);
  });

  it('lets a deadband be left only at its far edge', async () => {
    const edge = (margin: number) => (second: number) => (second >= 100 && second < 200 ? -1 : margin);
    expect(spans((await tryMargins(edge(799), { deadband: 800 })).proposed)).toEqual([[103, null]]);
    expect(spans((await tryMargins(edge(800), { deadband: 800 })).proposed)).toEqual([[103, 205]]);
  });

  it('ends nothing while data is missing or bad, and says how much was missing', async () => {
    const gone = (second: number) => (second < 100 ? 1000 : second < 200 ? -1 : second < 1200 ? undefined : 1000);
    const missing = await tryMargins(gone, {});
    expect(spans(missing.live)).toEqual([[103, 1205]]);
    // For 5 s after the last value it may still come.
    expect(missing.secondsMissing).toBe(995);
    const bad = await tryMargins((second) => gone(second) ?? null, {});
    expect(spans(bad.live)).toEqual([[103, 1205]]);
    expect(bad.secondsMissing).toBe(0);
  });

  it('raises nothing where it is switched off, and tells what goes on at the end without an end', async () => {
    const trial = await tryMargins((second) => (second < 3000 ? 1000 : -1), { enabled: false });
    expect(spans(trial.live)).toEqual([[3003, null]]);
    expect(trial.live).toMatchObject({ secondsInAlarm: 597, longestSeconds: 597, shortestSeconds: null });
    expect(trial.proposed).toMatchObject({ raised: 0, secondsInAlarm: 0, settings: { enabled: false, limit: 0 } });
  });

  it('counts a burst of three or more within a minute as chattering, once', async () => {
    // Low for 5 s in every 15 s: four a minute, for five minutes; and later twice.
    const bursts = (second: number) =>
      (second < 300 || (second >= 2000 && second < 2030)) && second % 15 < 5 ? -1 : 900;
    const { live } = await tryMargins(bursts, {});
    expect([live?.raised, live?.chatteringTimes]).toEqual([22, 1]);
  });

  it('counts how often it would be told again at most, and never at the moment at which it ends', async () => {
    // In alarm from 103 s to 705 s: after 60, 120 … 600 s; and with 301 s once, as 602 s is its end.
    const low = (second: number): number => (second >= 100 && second < 700 ? -1 : 1000);
    const trial = await tryMargins(low, { reAlarmAfterSeconds: 60 });
    expect(spans(trial.proposed)).toEqual([[103, 705]]);
    expect([trial.live?.toldAgain, trial.proposed?.toldAgain]).toEqual([0, 10]);
    expect(trial.notes.join(' ')).toContain('acknowledged as soon as it is told');
    expect((await tryMargins(low, { reAlarmAfterSeconds: 301 })).proposed?.toldAgain).toBe(1);
    // What still stands at the end has lasted 3600 − 103 s: 58 whole minutes.
    expect((await tryMargins(() => -1, { reAlarmAfterSeconds: 60 })).proposed).toMatchObject({ toldAgain: 59 });
  });
});

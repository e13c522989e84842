import type { Clock } from '@ebbline/shared/clock/clock';
import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { AlarmTransition } from '../../../../backend/src/evaluation/pipeline/outputs';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { PipelineRunner } from '../../../../backend/src/runner/pipeline-runner';
import { RecordedAlarms } from '../../../../backend/src/runner/recorded-alarms';
import { RecordedChanges } from '../../../../backend/src/runner/recorded-changes';
import { wallTickClock } from '../../../../backend/src/runner/tick-clock';
import { runnerReasons } from '../../../../backend/src/runner/watch/runner-reasons';
import { smallSite } from '../../../helpers/small-site';
import { telemetryOfM1, topicOfM1 } from '../../../integration/app/telemetry';

const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const hourMs = 3_600_000;
const untilS = 90;
const steppedAtS = 30;

/** A machine whose clock someone sets. */
class SteppableClock implements Clock {
  private elapsedMs = 0;
  private steppedMs = 0;
  wallMs = (): number => startMs + this.elapsedMs + this.steppedMs;
  monotonicMs = (): number => this.elapsedMs;
  advance = (ms: number): void => void (this.elapsedMs += ms);
  step = (ms: number): void => void (this.steppedMs += ms);
}

interface Told {
  readonly transitions: readonly string[];
  readonly recordedMs: readonly number[];
  readonly refused: number;
  /** The seconds in which a sample went to history only. */
  readonly lateAtS: readonly number[];
  readonly seconds: readonly number[];
  readonly lastSampleAge: number | null;
  readonly reasons: readonly string[];
}

/**
 * A minute and a half of a unit, in which water is found after 40 s. `stepMs`: how the machine's clock is stepped after 30 s.
 * `gatewayStepMs`: how that of the gateway is, then and not before. Both are set right again after `machineRightAtS` and
 * `gatewayRightAtS`, if that is before the end.
 */
function run(stepMs: number, gatewayStepMs = 0, machineRightAtS = untilS, gatewayRightAtS = machineRightAtS): Told {
  const site = smallSite();
  const transitions: string[] = [];
  const recordedMs: number[] = [];
  const journal = {
    standing: () => [],
    append(some: readonly AlarmTransition[], _standing: unknown, wallMs: number) {
      for (const { entry, to, atMs } of some) {
        transitions.push(`${entry} ${to} ${atMs - startMs}`);
        recordedMs.push(wallMs);
      }
    },
    appendAlerts: () => [],
    appendPermits: () => [],
  } as unknown as AlarmJournal;
  const clock = new SteppableClock();
  const tickClock = wallTickClock(clock);
  const pipeline = createPipeline(site, { clock: 'wall', startMs: tickClock.nowMs() });
  const alarms = new RecordedAlarms(journal, () => pipeline.standing());
  const runner = new PipelineRunner(pipeline, alarms, new RecordedChanges(journal), tickClock, clock);
  let refused = 0;
  const lateAtS: number[] = [];
  for (let at = 0; at < untilS; at++) {
    if (at === steppedAtS) clock.step(stepMs);
    if (at === machineRightAtS) clock.step(-stepMs);
    const sourceMs = startMs + at * 1000 + (at < steppedAtS || at >= gatewayRightAtS ? 0 : gatewayStepMs);
    const text = telemetryOfM1(sourceMs, { leak: at < 40 ? 'dry' : 'wet' });
    const acceptance = runner.accept({ topic: topicOfM1, payload: new TextEncoder().encode(text), retained: false });
    refused += acceptance.refused;
    if (acceptance.late > 0) lateAtS.push(at);
    for (let slice = 0; slice < 20; slice++) {
      clock.advance(50);
      runner.tick();
    }
  }
  const rows = pipeline.drainHistory(tickClock.nowMs(), true);
  const seconds = rows === null ? [] : [...new Set([...rows.secondMs.subarray(0, rows.count)])];
  const reasons = runnerReasons(pipeline, {
    unrecorded: 0,
    journalTrouble: null,
    notWritten: null,
    notKept: null,
    notRemembered: null,
    steppedMs: clock.wallMs() - tickClock.nowMs(),
  });
  return {
    transitions,
    recordedMs,
    refused,
    lateAtS,
    seconds: seconds.sort((a, b) => a - b),
    lastSampleAge: runner.lastSampleAge(),
    reasons: reasons.map(({ code, message }) => `${code} ${message}`),
  };
}

describe('a step of the machine’s clock', () => {
  const calm = run(0);

  it.for([hourMs, -hourMs])('of %i ms moves no delay, no age and no row of history, and is told', (stepMs) => {
    const stepped = run(stepMs);
    expect(calm.transitions.some((text) => text.startsWith('WATER-1'))).toBe(true);
    expect(stepped.transitions).toEqual(calm.transitions);
    expect(stepped.seconds).toEqual(calm.seconds);
    expect(stepped.lastSampleAge).toBe(calm.lastSampleAge);
    expect(stepped.refused).toBe(0);
    expect(calm.reasons).toEqual([]);
    expect(stepped.reasons).toEqual([
      expect.stringContaining(`CLOCK_STEPPED The machine's clock is 3600 s ${stepMs > 0 ? 'ahead of' : 'behind'} the`),
    ]);
  });

  it.for([hourMs, -hourMs])('of %i ms is in the journal only as the time at which it was written', (stepMs) => {
    const stepped = run(stepMs);
    const moved = stepped.recordedMs.map((ms, i) => ms - (calm.recordedMs[i] ?? Number.NaN));
    expect(new Set(moved.slice(-1))).toEqual(new Set([stepMs]));
  });

  it('that sets it right, with the gateway’s right before or with it, has no sample refused: what is new is judged on', () => {
    const corrected = run(hourMs, hourMs);
    expect(corrected.refused).toBe(0);
    expect(corrected.transitions).toEqual(calm.transitions);
    // History has each row at its source time: the hour between is empty, and none is put elsewhere.
    expect(corrected.seconds).toEqual(
      expect.arrayContaining([startMs, startMs + hourMs + (untilS - 1) * 1000].map(wholeSecond)),
    );
  });

  it.for([hourMs, -hourMs])(
    'of %i ms for four seconds, which the gateway makes too, has nothing late once both are right: it is judged on',
    (stepMs) => {
      const thereAndBack = run(stepMs, stepMs, 34);
      expect(thereAndBack.refused).toBe(0);
      // An hour back all is late, as ever, while it lasts; the rest is judged.
      expect(thereAndBack.lateAtS).toEqual(stepMs > 0 ? [] : [30, 31, 32, 33]);
      expect(thereAndBack.transitions).toEqual(calm.transitions);
      expect(thereAndBack.reasons).toEqual([]);
    },
  );

  it('that is set right before or after the gateway’s has samples late or refused in the seconds between, and no longer', () => {
    const gatewayFirst = run(hourMs, hourMs, 38, 36);
    expect(gatewayFirst).toMatchObject({ refused: 0, lateAtS: [36, 37], transitions: calm.transitions });
    const machineFirst = run(hourMs, hourMs, 36, 38);
    expect(machineFirst).toMatchObject({ refused: 2, lateAtS: [], transitions: calm.transitions });
  });

  it('of a gateway alone into the future is refused, as ever', () => {
    expect(run(0, hourMs).refused).toBe(untilS - steppedAtS);
  });
});

const wholeSecond = (ms: number): number => Math.floor(ms / 1000) * 1000;

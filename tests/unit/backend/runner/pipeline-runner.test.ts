import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { AlarmTransition } from '../../../../backend/src/evaluation/pipeline/outputs';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { PipelineRunner } from '../../../../backend/src/runner/pipeline-runner';
import { RecordedAlarms } from '../../../../backend/src/runner/recorded-alarms';
import { RecordedChanges } from '../../../../backend/src/runner/recorded-changes';
import { sourceTickClock, wallTickClock } from '../../../../backend/src/runner/tick-clock';
import { slotOf, smallSite } from '../../../helpers/small-site';
import { telemetryOfM1, topicOfM1 } from '../../../integration/app/telemetry';

const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);

function bench(kind: 'wall' | 'source') {
  const site = smallSite();
  const transitions: AlarmTransition[] = [];
  const journal = {
    standing: () => [],
    append: (some: readonly AlarmTransition[]) => void transitions.push(...some),
    appendAlerts: () => [],
    appendPermits: () => [],
  } as unknown as AlarmJournal;
  const clock = new ManualClock(startMs);
  const tickClock = kind === 'wall' ? wallTickClock(clock) : sourceTickClock();
  const pipeline = createPipeline(site, { clock: kind, startMs: tickClock.nowMs() });
  const alarms = new RecordedAlarms(journal, () => pipeline.standing());
  const runner = new PipelineRunner(pipeline, alarms, new RecordedChanges(journal), tickClock, clock);
  const send = (topic: string, text: string) =>
    runner.accept({ topic, payload: new TextEncoder().encode(text), retained: false });
  return { site, pipeline, runner, clock, tickClock, transitions, send };
}

/** A minute of telemetry in which water is found after ten seconds. */
function replay(): readonly AlarmTransition[] {
  const { send, transitions } = bench('source');
  for (let second = 0; second < 60; second++) {
    send(topicOfM1, telemetryOfM1(startMs + second * 1000, { leak: second < 10 ? 'dry' : 'wet' }));
  }
  return transitions;
}

describe('the runner', () => {
  it('judges from its first tick until judging is ended', () => {
    for (const kind of ['wall', 'source'] as const) {
      const { runner } = bench(kind);
      expect(runner.isJudging()).toBe(false);
      runner.tick();
      expect(runner.isJudging()).toBe(true);
      runner.endJudging();
      expect(runner.isJudging()).toBe(false);
    }
  });
});

describe('the runner on the source clock', () => {
  it('runs what was due before a newer message with the older values', () => {
    const { site, pipeline, runner, send } = bench('source');
    const slot = slotOf(site, 'm1', 'loop.flow');
    const seen: (number | undefined)[] = [];
    const advance = pipeline.advance.bind(pipeline);
    pipeline.advance = (nowMs) => {
      seen.push(pipeline.state.value[slot]);
      return advance(nowMs);
    };
    send(topicOfM1, telemetryOfM1(startMs, { flow: 300 }));
    send(topicOfM1, telemetryOfM1(startMs + 1000, { flow: 360 }));
    send(topicOfM1, telemetryOfM1(startMs + 1000, { flow: 360 }));
    runner.tick();
    expect(seen).toEqual([Number.NaN, 300 / 60_000]);
    expect(pipeline.state.value[slot]).toBeCloseTo(360 / 60_000, 12);
  });

  it('is not moved by a message whose time is refused, nor by one that tells none', () => {
    const { tickClock, send } = bench('source');
    send(topicOfM1, telemetryOfM1(startMs));
    send(topicOfM1, telemetryOfM1(startMs + 366 * 86_400_000));
    send(topicOfM1, '{"time":"tomorrow"}');
    send('small/m2/supply/t', '95');
    send('elsewhere', '1');
    expect(tickClock.nowMs()).toBe(startMs);
  });

  it('is not moved by a message that brings no value, and moved by one good value among bad ones', () => {
    const { tickClock, send } = bench('source');
    send(topicOfM1, telemetryOfM1(startMs));
    const time = (ms: number) => new Date(ms).toISOString();
    send(topicOfM1, JSON.stringify({ time: time(startMs + 1000) }));
    send(topicOfM1, JSON.stringify({ time: time(startMs + 2000), flow: 'fast', leak: 'damp', chips: [] }));
    send(topicOfM1, JSON.stringify({ time: time(startMs + 3000), flow: 'NaN', supply: { t: '1e999' } }));
    expect(tickClock.nowMs()).toBe(startMs);
    send(topicOfM1, JSON.stringify({ time: time(startMs + 4000), flow: 'fast', supply: { t: 35 } }));
    expect(tickClock.nowMs()).toBe(startMs + 4000);
  });

  it('does the same twice with the same messages', () => {
    const once = replay();
    expect(once.map(({ entry, to }) => `${entry} ${to}`)).toContain('WATER-1 unacknowledged');
    expect(replay()).toEqual(once);
  });
});

describe('the runner on the wall clock', () => {
  it('runs with its ticks and tells how long no sample was accepted', () => {
    const { runner, clock, send, transitions } = bench('wall');
    expect(runner.lastSampleAge()).toBeNull();
    send(topicOfM1, telemetryOfM1(startMs, { leak: 'wet' }));
    clock.advance(2500);
    send(topicOfM1, 'no JSON');
    expect(runner.lastSampleAge()).toBe(2.5);
    for (let i = 0; i < 600; i++) {
      clock.advance(50);
      runner.tick();
    }
    expect(transitions.map(({ entry }) => entry)).toContain('WATER-1');
  });
});

describe('the runner that is being ended', () => {
  it('takes messages and judges no more, so that gateways that end meanwhile are not lost ones', () => {
    const ended = (how: 'judging' | 'ended'): readonly string[] => {
      const { runner, clock, send, transitions } = bench('wall');
      const second = (): void => {
        for (let i = 0; i < 20; i++) {
          clock.advance(50);
          runner.tick();
        }
      };
      for (let i = 0; i < 5; i++) {
        send(topicOfM1, telemetryOfM1(clock.wallMs()));
        second();
      }
      if (how === 'ended') runner.endJudging();
      send('small/east/status', 'offline');
      for (let i = 0; i < 5; i++) second();
      return transitions.map(({ alarm }) => alarm).filter((alarm) => alarm.endsWith('COM-1'));
    };
    expect(ended('ended')).toEqual([]);
    expect(ended('judging')).toEqual(['east:COM-1']);
  });

  it('is moved by no message on the source clock', () => {
    const { runner, tickClock, send } = bench('source');
    send(topicOfM1, telemetryOfM1(startMs));
    runner.endJudging();
    send(topicOfM1, telemetryOfM1(startMs + 1000));
    expect(tickClock.nowMs()).toBe(startMs);
  });
});

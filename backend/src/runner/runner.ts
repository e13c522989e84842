import type { SettingRecord, SettingStep } from '../evaluation/alarm-rules/settings/setting-record';
import { alarmTexts, type AlarmTexts } from '../evaluation/pipeline/alarm-texts';
import { oldestSampleMs } from '../evaluation/pipeline/hand/check-typed';
import type { AlarmRecord } from '../evaluation/pipeline/outputs';
import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { BrokerState } from '../ports/broker-link';
import type { Clock } from '../ports/clock';
import type { DeliveryGate } from '../ports/delivery-gate';
import type { RunnerHealth } from '../ports/health-report';
import type { GuidedDesk } from '../ports/guided-desk';
import type { HistoryLayout, HistoryStore } from '../ports/history-store';
import type { LiveView, Operations } from '../ports/live-view';
import type { MemoryStore } from '../ports/memory-store';
import type { AlarmNews, AlarmNotice } from '../ports/notice';
import type { MessageSink } from '../ports/message-sink';
import type { Ticker } from '../ports/ticker';
import type { WaterDesk } from '../ports/water-desk';
import type { TightnessDesk } from '../ports/tightness-desk';
import { RunnerGuidedDesk } from './guided-desk';
import { historyAge } from './history-age';
import { HistoryDrain } from './history-drain';
import { RunnerLiveView } from './live-view';
import { OperatorActions } from './operator-actions';
import { FloodWatch } from './performance/flood-watch';
import { watchedForFloods } from './performance/watched-for-floods';
import { PipelineRunner } from './pipeline-runner';
import { RecordedAlarms } from './recorded-alarms';
import { RecordedChanges } from './recorded-changes';
import { HistoryUpkeep } from './history-upkeep';
import { Remembered } from './remembered';
import type { TickClock } from './tick-clock';
import { RunnerTightnessDesk } from './tightness-desk';
import { RunnerWaterDesk } from './water-desk';
import { journalReached } from './journal-reached';
import { journalWithFacts } from './journal-with-facts';
import { toldJournal } from './told-journal';
import type { Scene, ShownAlarm } from './views/scene';
import { timeText } from './views/time-text';
import { toNews } from './views/to-news';
import { probeJournal } from './watch/probe-journal';
import { runnerReasons } from './watch/runner-reasons';
import { SystemWatch, type RunnerWatch } from './watch/system-watch';

export interface RunnerParts {
  readonly pipeline: Pipeline;
  readonly journal: AlarmJournal;
  /** Takes what becomes of alarms out of the program. */
  readonly notice: AlarmNotice;
  readonly store: HistoryStore;
  readonly memory: MemoryStore;
  readonly gate: DeliveryGate;
  readonly clock: Clock;
  readonly ticker: Ticker;
  readonly tickClock: TickClock;
  readonly broker: () => BrokerState;
  readonly watch: RunnerWatch;
}

export interface Runner {
  readonly sink: MessageSink;
  readonly live: LiveView;
  readonly operations: Operations;
  readonly tightness: TightnessDesk;
  readonly guided: GuidedDesk;
  readonly water: WaterDesk;
  /** Commits a change of a setting, or says no: then it is not made. */
  recordSetting(change: SettingRecord, step: SettingStep): boolean;
  readonly health: RunnerHealth;
  /** Every alarm that stands or is set aside, as others are told of it. */
  news(): readonly AlarmNews[];
  /** Begins to tick. */
  start(): void;
  /**
   * Resolves when `change`, which puts another site in force, was called with all history in the old layout drained.
   * @throws CodedError HISTORY_NOT_WRITTEN where that can't be done now: `change` was not called then
   */
  changeSite(layout: HistoryLayout, change: () => void): Promise<void>;
  /**
   * Judges up to now and no more: what falls silent as everything around is ended is no fault of the plant. Messages are
   * still taken and kept.
   */
  endJudging(): void;
  /** Ends judging and the ticks, and commits all there is, as far as history takes it. */
  stop(): Promise<void>;
  /** Once history is closed: rows that it did not take before the end. */
  rowsUnwritten(): number;
}

/** How often slices are looked for, ms: as long as a slice. */
const TICK_MS = 50;
const COMMIT_MS = 500;
/** How often is looked for acknowledgements that wait for a commit, ms. */
const EARLY_COMMIT_MS = 20;
const JOURNAL_RETRY_MS = 1000;
const FOLLOW_MS = 1000;
const MAINTAIN_MS = 60_000;
/** What was learnt since the last image is lost with a kill; the slowest of it takes weeks. */
const REMEMBER_MS = 300_000;

/** Takes back what the journal holds, and joins the pipeline to everything around it. */
export function createRunner(parts: RunnerParts): Runner {
  const { pipeline, notice, store, memory, gate, clock, ticker, tickClock } = parts;
  const nowMs = (): number => tickClock.nowMs();
  const textsOf = (record: AlarmRecord): AlarmTexts => alarmTexts(pipeline.site, record);
  const inWords = (shown: ShownAlarm, change: AlarmNews['change']): AlarmNews =>
    toNews(shown, textsOf(shown.record), change);
  const floods = new FloodWatch(parts.journal, () => clock.wallMs());
  const journal = watchedForFloods(toldJournal(journalWithFacts(parts.journal, pipeline), notice, inWords), floods);
  const reachedMs = journalReached(journal);
  floods.restore(Number.isNaN(nowMs()) ? reachedMs : nowMs());
  pipeline.restore(journal.standing(), reachedMs);
  pipeline.restoreAlerts(journal.alerts());
  pipeline.restorePermits(journal.permits());
  pipeline.restoreTightness(journal.tightness());
  pipeline.restoreGuided(journal.guided());
  pipeline.restoreHand(journal.hand(clock.wallMs() - oldestSampleMs), nowMs());
  const remembered = new Remembered(pipeline, memory, nowMs);
  remembered.recall();
  const alarms = new RecordedAlarms(journal, () => [...pipeline.standing(), ...pipeline.setAside()]);
  const changes = new RecordedChanges(journal);
  const drain = new HistoryDrain(pipeline, store, gate, nowMs, ticker);
  const unrecorded = (): number => alarms.waiting() + changes.waiting();
  const facts = { watch: parts.watch, store, unrecorded, notWritten: () => drain.trouble() };
  const system = new SystemWatch(facts, clock, tickClock.kind);
  const runner = new PipelineRunner(pipeline, alarms, changes, tickClock, clock, system);
  const scene: Scene = {
    pipeline,
    nowMs,
    clock: () => ({ kind: tickClock.kind, now: timeText(nowMs()) }),
    broker: parts.broker,
    alarms: () => alarms.list(),
    setAside: () => alarms.setAside(),
    flood: () => floods.flood(),
    textsOf,
  };
  const upkeep = new HistoryUpkeep(store, nowMs, historyAge(tickClock, clock));
  const work: readonly (readonly [periodMs: number, work: () => void])[] = [
    [COMMIT_MS, () => drain.commit()],
    [EARLY_COMMIT_MS, () => drain.commitForWaiting()],
    [JOURNAL_RETRY_MS, () => runner.retryJournal()],
    [JOURNAL_RETRY_MS, () => probeJournal(journal, parts.watch.journalWrites, unrecorded(), clock)],
    [FOLLOW_MS, () => floods.settle(nowMs())],
    [MAINTAIN_MS, () => upkeep.begin()],
    [FOLLOW_MS, () => upkeep.follow()],
    [FOLLOW_MS, () => remembered.saveFirst()],
    [REMEMBER_MS, () => remembered.save()],
  ];
  let running: readonly { stop(): void }[] = [];
  let judging: { stop(): void } | null = null;
  const endJudging = (): void => {
    judging?.stop();
    judging = null;
    runner.endJudging();
  };
  return {
    sink: runner,
    live: new RunnerLiveView(scene, () => alarms.version() + changes.version() + floods.version()),
    operations: new OperatorActions(scene, alarms, changes, clock),
    tightness: new RunnerTightnessDesk(scene, changes, clock),
    guided: new RunnerGuidedDesk(scene, changes, clock),
    water: new RunnerWaterDesk(scene, changes, clock),
    recordSetting: (change, step) => changes.recordSetting(change, step, clock.wallMs()),
    news: () => [...alarms.list(), ...alarms.setAside()].map((shown) => inWords(shown, null)),
    health: {
      lastSampleAge: () => runner.lastSampleAge(),
      isJudging: () => runner.isJudging(),
      reasons: () =>
        runnerReasons(pipeline, {
          unrecorded: unrecorded(),
          journalTrouble: parts.watch.journalWrites.trouble,
          notWritten: drain.trouble(),
          notKept: upkeep.trouble(),
          notRemembered: remembered.trouble(),
          steppedMs: tickClock.kind === 'wall' ? clock.wallMs() - nowMs() : 0,
        }),
    },
    start() {
      judging = ticker.every(TICK_MS, () => runner.tick());
      running = work.map(([periodMs, one]) => ticker.every(periodMs, one));
    },
    changeSite: (layout, change) => drain.changeLayout(layout, change),
    endJudging,
    async stop() {
      endJudging();
      for (const one of running) one.stop();
      runner.retryJournal();
      // First what would be lost: upkeep may go on for minutes, and who ends the program may not wait so long.
      await drain.flush();
      await remembered.end();
      await upkeep.end();
      // It may have made room on a disk that was full.
      if (drain.rowsUnwritten() > 0) await drain.flush();
    },
    rowsUnwritten: () => drain.rowsUnwritten(),
  };
}

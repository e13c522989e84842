import { CodedError } from '@ebbline/shared/errors/coded-error';
import { ok } from '@ebbline/shared/errors/result';
import type { UnitSlots } from '../alarm-rules/unit-slots';
import { explainPoint } from '../derive/explain-point';
import { path } from '../derive/path';
import { pressureWindow } from '../derive/pressure-window';
import type { CompiledSite } from '../site/compiled-site';
import { act } from './act';
import { shownAlerts } from './shown-alerts';
import { detailOf } from './detail-of';
import { clockReached } from './follow-clock';
import { actOnHand } from './hand/act-on-hand';
import { writeAllHand } from './hand/write-hand';
import { modeOfUnit, type ModeFound } from './mode-of-unit';
import { actOnPermit } from './permits/act-on-permit';
import { fromLearnt, type MemoryImage } from './remembered/memory-image';
import { learntSoFar, recallMemory } from './remembered/remember';
import { restorePermits } from './permits/restore-permits';
import { actOnGuided } from './guided/act-on-guided';
import { guidedAsks, guidedNow, guidedRefusals, guidedSteps } from './guided/guided-live';
import { guidedTable } from './guided/guided-table';
import { restoreGuided } from './guided/restore-guided';
import { actOnTightness } from './tightness/act-on-tightness';
import { tightnessRefusals, usualPlan } from './tightness/refusals';
import { restoreTightness } from './tightness/restore-tightness';
import { soFar } from './tightness/so-far';
import type { Pipeline } from './pipeline';
import { PipelineIntake } from './pipeline-intake';
import { createPipelineState, type PipelineState } from './pipeline-state';
import { restoreAlarms } from './restore';
import { restoreAlerts } from './restore-alerts';
import { stampRestored } from './stamp-restored';
import { findAlarms } from './set-aside/find-alarms';
import { offByMode } from './set-aside/off-by-mode';
import { SliceRunner } from './run-slices';
import { isStanding } from './standing-water';
import { swapLimits } from './swap-limits';
import { takeOver } from './take-over';

export interface PipelineOptions {
  /** `source`: the caller gives the newest accepted source time as now; nothing runs before the first. */
  readonly clock: 'wall' | 'source';
  /** Tick time of the start on the wall clock, ms; not looked at on the source clock. */
  readonly startMs: number;
}

/** A pipeline that also tells how much tick time bounded catch-up has left out since the start, ms. */
export interface CountingPipeline extends Pipeline {
  skippedMs(): number;
  /**
   * A pipeline for another site that goes on where this one is; see `takeOver`. History is to be drained first, and
   * this one is not to be used any more.
   */
  goOn(site: CompiledSite, nowMs: number): CountingPipeline;
  /** The same site with other limits; see `swapLimits`. This one is not to be used any more. */
  relimit(site: CompiledSite): CountingPipeline;
}

/** The whole judge for one compiled site; see `Pipeline`. */
export function createPipeline(site: CompiledSite, options: PipelineOptions): CountingPipeline {
  const pipeline = createPipelineState(site, options.clock);
  const startMs = options.clock === 'wall' ? options.startMs : Number.NaN;
  return pipelineOf(pipeline, new SliceRunner(pipeline, startMs), options.clock);
}

function pipelineOf(
  pipeline: PipelineState,
  slices: SliceRunner,
  clock: PipelineOptions['clock'],
  recalled: MemoryImage | null = null,
): CountingPipeline {
  const { site } = pipeline;
  const intake = new PipelineIntake(pipeline);
  let learntBefore = recalled;
  const modeNow = (unit: number): ModeFound => modeOfUnit(pipeline.state, slotsOf(pipeline, unit));
  return {
    site,
    state: pipeline.state,
    accept: (message, arrivalMs, wallMs) => intake.accept(message, arrivalMs, wallMs),
    advance(nowMs, system) {
      if (system !== undefined) pipeline.system = system;
      pipeline.transitions.length = 0;
      stampRestored(pipeline, nowMs);
      if (learntBefore !== null) recallMemory(pipeline, learntBefore, nowMs);
      learntBefore = null;
      pipeline.transitions.push(...pipeline.left.splice(0));
      slices.run(nowMs);
      return pipeline.transitions;
    },
    act: (action, nowMs, commit) => act(pipeline, action, nowMs, commit),
    standing: () => pipeline.book.standing(),
    setAside: () => pipeline.book.setAside(),
    offByMode: () => offByMode(pipeline),
    findAlarms: (words, most, nowMs) => findAlarms(pipeline, words, most, nowMs),
    permits: () => [...pipeline.permits.values()],
    actOnPermit: (action, nowMs, commit) => actOnPermit(pipeline, action, nowMs, commit),
    restorePermits: (records) => restorePermits(pipeline, records),
    takePermitChanges: () => pipeline.permitChanges.splice(0),
    tightnessTests: () =>
      [...pipeline.tightness.records.values()].map((record) => {
        const run = pipeline.tightness.running.get(record.unit);
        return run?.record.id === record.id ? soFar(pipeline, run) : record;
      }),
    tightnessRefusals: (unit, plan = usualPlan) => tightnessRefusals(pipeline, unit, plan),
    actOnTightness: (action, nowMs, commit) => actOnTightness(pipeline, action, nowMs, commit),
    restoreTightness: (records) => restoreTightness(pipeline, records),
    takeTightnessChanges: () => pipeline.tightness.changes.splice(0),
    guidedTests: () => [...pipeline.guided.records.values()],
    guidedNow: (record, nowMs) => guidedNow(pipeline, record, nowMs),
    guidedRefusals: (unit, kind) => guidedRefusals(pipeline, unit, guidedTable[kind]),
    guidedAsks: (unit, kind) => guidedAsks(pipeline, unit, guidedTable[kind]),
    guidedSteps: (unit, kind) => guidedSteps(pipeline, unit, guidedTable[kind]),
    actOnGuided: (action, nowMs, commit) => actOnGuided(pipeline, action, nowMs, commit),
    restoreGuided: (records) => restoreGuided(pipeline, records),
    takeGuidedChanges: () => pipeline.guided.changes.splice(0),
    startedMs: () => pipeline.startedMs,
    handEntries: (unit) => pipeline.hand.ofUnit(unit),
    handCorrector: (entry) => pipeline.hand.correctorOf(entry),
    actOnHand: (action, nowMs, commit) => actOnHand(pipeline, action, nowMs, commit),
    restoreHand(records, nowMs) {
      for (const record of records) pipeline.hand.add(record);
      writeAllHand(pipeline, nowMs);
    },
    alerts: () => shownAlerts(pipeline),
    takeAlertChanges: () => pipeline.alertChanges.splice(0),
    detailOf: (alarm) => detailOf(pipeline, alarm),
    restore(records, reachedMs = Number.NaN) {
      restoreAlarms(pipeline, records);
      clockReached(pipeline, reachedMs);
    },
    restoreAlerts: (records) => restoreAlerts(pipeline, records),
    learnt: (nowMs) => learntSoFar(pipeline, nowMs),
    recall(learnt) {
      const read = fromLearnt(learnt);
      if (read.ok) learntBefore = read.value;
      return read.ok ? ok(null) : read;
    },
    drainHistory: (nowMs, everything) => pipeline.history.drain(nowMs, everything),
    modeOf: modeNow,
    pressureWindow: (unit, nowMs) =>
      pressureWindow(site, pipeline.state, unit, nowMs, pipeline.hour.of(unit, nowMs), isStanding(modeNow(unit))),
    hourTrail: (unit, nowMs) => pipeline.hour.trail(unit, nowMs),
    path: (unit) => path(site, pipeline.state, unit, isStanding(modeNow(unit))),
    explain: (unit, slot) => explainPoint(site, pipeline.state, unit, slot, isStanding(modeNow(unit))),
    skippedMs: () => slices.skippedMs(),
    goOn(next, nowMs) {
      const { state, maps } = takeOver(pipeline, next, clock, nowMs);
      // Nothing has looked at what was learnt before the first step: it is taken back on the other site, by names.
      return pipelineOf(state, slices.goOn(state, maps.units.before), clock, learntBefore);
    },
    relimit(next) {
      const state = swapLimits(pipeline, next);
      return pipelineOf(state, slices.goOn(state, Int32Array.from(next.units.keys())), clock, learntBefore);
    },
  };
}

function slotsOf(pipeline: PipelineState, unit: number): UnitSlots {
  const slots = pipeline.unitSlots[unit];
  if (slots !== undefined) return slots;
  throw new CodedError(
    'PIPELINE_UNKNOWN_UNIT',
    `the site has ${pipeline.unitSlots.length} units, none with index ${unit}`,
  );
}

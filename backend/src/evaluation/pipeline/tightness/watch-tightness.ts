import type { TightnessEnd } from '@ebbline/shared/contract/tightness-test';
import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { unitPlan } from '../../derive/unit-plan';
import type { PipelineState } from '../pipeline-state';
import { flows, sourceRuns } from './plant-at-rest';
import { ended } from './so-far';
import type { TightnessRun } from './tightness-tests';
import { gasNow, kelvin, vapourPa, volumeNow, type GasNow } from './unit-gas';

/** So long an input may be bad, or nothing new come, before the test is broken off, ms. Own rule. */
const badForMs = 30_000;
/** A step of the level between two means that takes or gives this share of the gas room is no drift. Own rule. */
const jumpShare = 0.02;

/** The test of one unit, once a second: takes a sample, or ends it. */
export function watchTightness(pipeline: PipelineState, unitIndex: number, nowMs: number): void {
  const { tightness, site } = pipeline;
  if (tightness.running.size === 0) return;
  const run = tightness.running.get(site.units[unitIndex]?.id ?? '');
  if (run === undefined) return;
  const found = endsFor(pipeline, run, unitIndex, nowMs);
  if (found !== null) endByItself(pipeline, run, found, nowMs);
}

export function endByItself(pipeline: PipelineState, run: TightnessRun, endedFor: TightnessEnd, nowMs: number): void {
  const test = ended(pipeline, run, endedFor, null, nowMs);
  pipeline.tightness.end(test);
  pipeline.tightness.changes.push({
    what: 'ended',
    test,
    atMs: nowMs,
    actor: null,
    station: null,
    comment: null,
  });
}

function endsFor(pipeline: PipelineState, run: TightnessRun, unitIndex: number, nowMs: number): TightnessEnd | null {
  const plan = unitPlan(pipeline.site, unitIndex);
  const { record, series } = run;
  if (!record.sourceIsolated && sourceRuns(pipeline, plan) === true) return 'sourceStarted';
  if (!record.dry && flows(pipeline, plan) === true) return 'flowStarted';
  const now = gasNow(pipeline, unitIndex);
  const sample = sampleOf(run, plan.fluid, now);
  if (sample === null) return nowMs - run.knownMs > badForMs ? 'inputBad' : null;
  if (now.sourceMs > run.takenMs || Number.isNaN(run.takenMs)) {
    run.takenMs = now.sourceMs;
    run.knownMs = nowMs;
    if (series.push(sample) && jumped(run)) return 'levelJumped';
  } else if (nowMs - run.knownMs > badForMs) return 'inputBad';
  return nowMs - record.startedMs >= record.plannedMs ? 'completed' : null;
}

/** Null where something is not known. Before the start nothing counts. */
function sampleOf({ record }: TightnessRun, fluid: Fluid, { pressurePa, temperatureC, levelM, sourceMs }: GasNow) {
  const volumeM3 = volumeNow(record.begin, levelM);
  const gas = ((pressurePa - vapourPa(fluid, record.dry, temperatureC)) * volumeM3) / kelvin(temperatureC);
  const atS = (sourceMs - record.startedMs) / 1000;
  if (Number.isNaN(gas + atS)) return null;
  return { atS: Math.max(0, atS), gas, volumeM3, temperatureK: kelvin(temperatureC), levelM };
}

function jumped({ record, series }: TightnessRun): boolean {
  const [before, now] = series.volumeM3.slice(-2);
  if (before === undefined || now === undefined) return false;
  return Math.abs(now - before) > jumpShare * record.begin.gasVolumeM3;
}

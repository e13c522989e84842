import { extremeNode } from '../derive/node-pressure';
import { deriveUnit } from '../derive/derive-unit';
import type { UnitContext } from '../alarm-rules/judge-context';
import type { CompiledUnit } from '../site/compiled-site';
import { judgeStale } from '../quality/judge-stale';
import { fillContext } from './fill-context';
import { watchHand } from './hand/write-hand';
import { judgeInstruments } from './judge-instruments';
import { judgeUnit } from './judge-unit';
import { modeOfUnit, type ModeFound } from './mode-of-unit';
import { watchPermits } from './permits/watch-permits';
import { watchGuided } from './guided/watch-guided';
import { watchTightness } from './tightness/watch-tightness';
import type { PipelineState } from './pipeline-state';
import { isStanding } from './standing-water';
import { writeDerivedRow } from './write-derived-row';

/** One unit, once a second: what is stale → what is derived → what is wrong → history. */
export function unitStep(pipeline: PipelineState, context: UnitContext, unitIndex: number, nowMs: number): void {
  const { site, state } = pipeline;
  const unit = site.units[unitIndex] as CompiledUnit;
  const slots = pipeline.unitSlots[unitIndex] as UnitContext['slots'];
  judgeStale(site, state, unit.holder, nowMs);
  watchHand(pipeline, unit, nowMs);
  const mode = modeOfUnit(state, slots);
  noteMode(pipeline, unitIndex, mode, nowMs);
  const stopped = isStanding(mode);
  const frame = deriveUnit(site, state, unitIndex, nowMs, stopped);
  const lowest = frame.nodes.now[extremeNode(frame, -1)] ?? Number.NaN;
  const highest = frame.nodes.now[extremeNode(frame, 1)] ?? Number.NaN;
  pipeline.hour.observe(unitIndex, nowMs, lowest, highest);
  writeDerivedRow(pipeline, unit.holder, nowMs);

  fillContext(pipeline, context, unitIndex, mode, nowMs);
  judgeUnit(pipeline, context);
  watchPermits(pipeline, unitIndex, nowMs);
  watchTightness(pipeline, unitIndex, nowMs);
  watchGuided(pipeline, unitIndex, nowMs);
  judgeInstruments(pipeline, unit.holder, nowMs);
}

function noteMode({ modes, modeSinceMs }: PipelineState, unitIndex: number, mode: ModeFound, nowMs: number): void {
  if (modes[unitIndex]?.mode !== mode.mode || Number.isNaN(modeSinceMs[unitIndex])) modeSinceMs[unitIndex] = nowMs;
  modes[unitIndex] = mode;
}

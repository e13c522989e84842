import { nodeExtreme } from '../derive/node-pressure';
import { deriveUnit } from '../derive/derive-unit';
import { readUnitFrame } from '../derive/unit-frame';
import type { UnitContext } from '../alarm-rules/judge-context';
import type { CompiledUnit, Holder } from '../site/compiled-site';
import { judgeStale } from '../quality/judge-stale';
import { judgeInstruments } from './judge-instruments';
import { judgeUnit } from './judge-unit';
import { modeOfUnit } from './mode-of-unit';
import type { PipelineState } from './pipeline-state';
import { isStanding } from './standing-water';
import { writeDerivedRow } from './write-derived-row';

/** One unit, once a second: what is stale → what is derived → what is wrong → history. */
export function unitStep(pipeline: PipelineState, context: UnitContext, unitIndex: number, nowMs: number): void {
  const { site, state } = pipeline;
  const unit = site.units[unitIndex] as CompiledUnit;
  const slots = pipeline.unitSlots[unitIndex] as UnitContext['slots'];
  judgeStale(site, state, unit.holder, nowMs);
  const mode = modeOfUnit(state, slots);
  pipeline.modes[unitIndex] = mode;
  const stopped = isStanding(mode);
  deriveUnit(site, state, unitIndex, nowMs, stopped);
  observeHour(pipeline, unitIndex, nowMs, stopped);
  writeDerivedRow(pipeline, unit.holder, nowMs);

  context.unit = unit;
  context.unitIndex = unitIndex;
  context.holder = site.holders[unit.holder] as Holder;
  context.slots = slots;
  context.nowMs = nowMs;
  context.mode = mode.mode;
  context.modeTold = mode.told;
  context.modeKnown = mode.known;
  context.activeFrom = pipeline.index.ofUnit(unitIndex);
  judgeUnit(pipeline, context);
  judgeInstruments(pipeline, unit.holder, nowMs);
}

function observeHour(pipeline: PipelineState, unitIndex: number, nowMs: number, stopped: boolean): void {
  const frame = readUnitFrame(pipeline.site, pipeline.state, unitIndex, nowMs, stopped);
  const lowest = nodeExtreme(frame, -1, !stopped);
  const highest = nodeExtreme(frame, 1, !stopped);
  if (lowest !== null && highest !== null) {
    pipeline.hour.observe(unitIndex, nowMs, lowest.pressure, highest.pressure);
  }
}

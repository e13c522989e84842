import type { UnitContext } from '../alarm-rules/judge-context';
import type { CompiledUnit, Holder } from '../site/compiled-site';
import type { ModeFound } from './mode-of-unit';
import type { PipelineState } from './pipeline-state';

const nothingHeld = { id: '', kind: 'unit', firstSlot: 0, slotCount: 0, slotOf: new Map(), places: [] } as const;

/** One context for all units: `fillContext` makes it that of one. */
export function createContext(pipeline: PipelineState): UnitContext {
  const { site } = pipeline;
  return {
    site,
    state: pipeline.state,
    unit: site.units[0] as CompiledUnit,
    unitIndex: 0,
    holder: nothingHeld,
    slots: pipeline.unitSlots[0] as UnitContext['slots'],
    allSlots: pipeline.unitSlots,
    part: -1,
    nowMs: Number.NaN,
    mode: 'running',
    modeTold: false,
    modeKnown: false,
    air: pipeline.air,
    supplyRise: pipeline.supplyRise,
    facilityRise: pipeline.facilityRise,
    plant: pipeline.plant,
    permits: pipeline.openPermits,
    follow: pipeline.follow,
    memory: pipeline.memory,
    alarm: -1,
    active: pipeline.delays.active,
    activeFrom: 0,
  };
}

export function fillContext(
  pipeline: PipelineState,
  context: UnitContext,
  unitIndex: number,
  mode: ModeFound,
  nowMs: number,
): void {
  const unit = pipeline.site.units[unitIndex] as CompiledUnit;
  context.unit = unit;
  context.unitIndex = unitIndex;
  context.holder = pipeline.site.holders[unit.holder] as Holder;
  context.slots = pipeline.unitSlots[unitIndex] as UnitContext['slots'];
  context.nowMs = nowMs;
  context.mode = mode.mode;
  context.modeTold = mode.told;
  context.modeKnown = mode.known;
  context.activeFrom = pipeline.index.ofUnit(unitIndex);
}

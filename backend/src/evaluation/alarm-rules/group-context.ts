import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import type { PlantMemory } from './plant-signs/plant-memory';
import type { RuleMemory } from './rule-memory';
import type { HallMeans, UnitMeans } from './slow-means';
import type { UnitSlots } from './unit-slots';

/** What a rule of a loop or a hall may look at. One object serves all in turn: nothing is kept in it. */
export interface GroupContext {
  site: CompiledSite;
  state: SlotState;
  /** Index into `site.loops` or `site.halls`. */
  group: number;
  /** Indices into `site.units`. */
  units: readonly number[];
  /** By index into `site.units`. */
  unitSlots: readonly UnitSlots[];
  hallMeans: HallMeans;
  unitMeans: UnitMeans;
  nowMs: number;
  memory: RuleMemory;
  plant: PlantMemory;
  /** The alarm that is judged: whose cells of `memory` are this rule's. */
  alarm: number;
}

import type {
  Celsius,
  CubicMetrePerSecond,
  KilogramPerCubicMetre,
  PascalAbsolute,
} from '@ebbline/shared/units/quantity';
import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import type { Ambient } from './ambient';
import type { DeriveMemory } from './memory/derive-memory';
import type { UnitPlan } from './unit-plan';

/** What a unit's frame has read of a second before anything is worked out: what pressures and transit rest on. */
export interface FrameReadings {
  readonly site: CompiledSite;
  readonly plan: UnitPlan;
  readonly state: SlotState;
  readonly stopped: boolean;
  readonly ambient: Ambient;
  readonly memory: DeriveMemory | null;
  readonly flow: CubicMetrePerSecond;
  readonly supplyTemperature: Celsius;
  readonly returnTemperature: Celsius;
  readonly supplyDensity: KilogramPerCubicMetre;
  readonly returnDensity: KilogramPerCubicMetre;
  readonly supplyColumnDensity: KilogramPerCubicMetre;
  readonly returnColumnDensity: KilogramPerCubicMetre;
  readonly supplyAnchorPressure: PascalAbsolute;
  readonly returnAnchorPressure: PascalAbsolute;
  readonly supplyColumn: { readonly vapourPressure: PascalAbsolute };
  readonly returnColumn: { readonly vapourPressure: PascalAbsolute };
}

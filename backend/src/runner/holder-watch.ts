import type { CompiledSite } from '../evaluation/site/compiled-site';
import type { SlotState } from '../evaluation/slots/slot-state';

/**
 * Tells whether the points of some holders differ from the last look: by value, by acceptance, by
 * reasons. Compares columns; costs nothing where nobody looks.
 */
export class HolderWatch {
  private readonly slots: Int32Array;
  private readonly value: Float64Array;
  private readonly accepted: Float64Array;
  private readonly reasons: Uint32Array;
  private looked = false;

  constructor(
    site: CompiledSite,
    private readonly state: SlotState,
    holders: readonly number[],
  ) {
    this.slots = Int32Array.from(holders.flatMap((index) => slotsOf(site, index)));
    this.value = new Float64Array(this.slots.length);
    this.accepted = new Float64Array(this.slots.length);
    this.reasons = new Uint32Array(this.slots.length);
  }

  /** True on the first look. */
  changed(): boolean {
    let differs = !this.looked;
    this.looked = true;
    for (let i = 0; i < this.slots.length; i++) {
      const slot = this.slots[i] ?? 0;
      const value = this.state.value[slot] ?? Number.NaN;
      const accepted = this.state.acceptedMs[slot] ?? Number.NaN;
      const reasons = this.state.reasons[slot] ?? 0;
      if (Object.is(value, this.value[i]) && Object.is(accepted, this.accepted[i]) && reasons === this.reasons[i])
        continue;
      differs = true;
      this.value[i] = value;
      this.accepted[i] = accepted;
      this.reasons[i] = reasons;
    }
    return differs;
  }
}

function slotsOf(site: CompiledSite, index: number): number[] {
  const { firstSlot, slotCount } = site.holders[index] ?? { firstSlot: 0, slotCount: 0 };
  return Array.from({ length: slotCount }, (_, i) => firstSlot + i);
}

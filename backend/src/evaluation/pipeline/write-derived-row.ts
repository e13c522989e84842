import { Origin, type Holder } from '../site/compiled-site';
import type { PipelineState } from './pipeline-state';

/** Derived values stand in the second of the tick. */
export function writeDerivedRow(pipeline: PipelineState, holderIndex: number, nowMs: number): void {
  const { history, site, state } = pipeline;
  const { firstSlot, slotCount } = site.holders[holderIndex] as Holder;
  const { measured } = site.slots;
  const { reasons, value } = state;
  history.openRow(holderIndex, nowMs);
  for (let column = 0; column < slotCount; column += 1) {
    const slot = firstSlot + column;
    if (measured[slot] !== Origin.derived) continue;
    history.putInRow(column, nowMs, value[slot] as number, reasons[slot] as number);
  }
}

import { badBits } from '../slots/quality-reasons';
import type { UnitFrame } from './unit-frame';

/**
 * Whether the vacuum source is known to have water in its trap. It then moves less than its curve says, by an amount that nobody
 * has measured: it is counted as one that carries no hose (own rule, the one of AIR-3). A switch that is lost says nothing.
 */
export function trapIsFull({ plan, state }: UnitFrame): boolean {
  const slot = plan.slot['vacuum.trap.full'];
  if (slot < 0 || ((state.reasons[slot] ?? 0) & badBits) !== 0) return false;
  return (state.value[slot] ?? 0) >= 0.5;
}

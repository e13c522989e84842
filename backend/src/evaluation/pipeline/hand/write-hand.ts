import type { CompiledUnit } from '../../site/compiled-site';
import type { CompiledWaterParameter } from '../../site/compiled-water';
import { reasonBit } from '../../slots/quality-reasons';
import type { PipelineState } from '../pipeline-state';

/** Puts what is in force of one parameter into its slot: with the time of the sample, good, until the next is due. */
export function writeHand(
  { hand, state }: Pick<PipelineState, 'hand' | 'state'>,
  unit: CompiledUnit,
  { id, handSlot }: CompiledWaterParameter,
  nowMs: number,
): void {
  if (handSlot < 0) return;
  const record = hand.inForce(unit.id, id);
  state.value[handSlot] = record?.value ?? Number.NaN;
  state.sourceMs[handSlot] = record?.takenMs ?? Number.NaN;
  state.acceptedMs[handSlot] = record === null ? Number.NaN : nowMs;
  state.unchangedSinceMs[handSlot] = record?.takenMs ?? Number.NaN;
  state.reasons[handSlot] = record === null ? reasonBit.notReceived : 0;
  state.expandedUncertainty[handSlot] = Number.NaN;
}

/** The same for every parameter of the site, where all entries have come at once. */
export function writeAllHand(pipeline: PipelineState, nowMs: number): void {
  for (const unit of pipeline.site.units)
    for (const parameter of unit.water.parameters) writeHand(pipeline, unit, parameter, nowMs);
}

/** Marks what is due again by now: it is used with care from then on. What a person typed is never stale. */
export function watchHand({ state }: Pick<PipelineState, 'state'>, { water }: CompiledUnit, nowMs: number): void {
  for (const { handSlot, dueMs } of water.parameters) {
    if (handSlot < 0 || !(nowMs - (state.sourceMs[handSlot] as number) > dueMs)) continue;
    state.reasons[handSlot] = (state.reasons[handSlot] as number) | reasonBit.overdue;
  }
}

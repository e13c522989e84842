import { arrangeSample } from '../sample/arrange-sample';
import type { IntakeContext } from '../sample/intake-context';
import { ambientReasons, isAgainstAmbient, toAbsolute } from '../sample/to-absolute';
import type { CompiledSite } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import { courseReasons, ownReasons } from './sample-checks';
import { isStale } from './stale';

/** Hears of a sample that history keeps: slot, source time, value in SI, reasons as bits. */
export type SampleListener = (slot: number, sourceMs: number, value: number, reasons: number) => void;

/**
 * Judges one sample and keeps it where it belongs. Rules of time:
 * newer → slot and history; same time, other value → the same, without making the slot fresher; same time, same
 * value → counted as repeated; older → history only, counted as late. A retained sample is as old as its source
 * time says; without one its age is unknown, and it is shown but not judged until a live one comes.
 */
export function keepSample(
  site: CompiledSite,
  state: SlotState,
  context: IntakeContext,
  slot: number,
  own: number,
  sourceMs: number | null,
  arrivalMs: number,
  retained: boolean,
  flagged: boolean,
  onSample: SampleListener,
): void {
  const { acceptance, ownValue, sample } = context;
  sample.slot = slot;
  sample.own = own;
  sample.ownBefore = ownValue[slot] ?? Number.NaN;
  const againstAmbient = isAgainstAmbient(site, slot);
  sample.value = againstAmbient ? toAbsolute(site, state, context, slot, own) : own;
  sample.flagged = flagged;
  let reasons = ownReasons(sample);
  if (againstAmbient) reasons |= ambientReasons(site, state, context, slot);

  if (sourceMs === null) {
    if (!Number.isNaN(state.acceptedMs[slot] ?? Number.NaN)) {
      acceptance.repeated += 1;
      return;
    }
    state.value[slot] = sample.value;
    state.reasons[slot] = reasons | reasonBit.ageUnknown;
    acceptance.accept(Number.NaN);
    return;
  }

  const arrangement = arrangeSample(site, state, context, slot, sourceMs, own, arrivalMs);
  if (arrangement === 'repeated') {
    acceptance.repeated += 1;
    return;
  }
  if (arrangement === 'late') {
    acceptance.late += 1;
    onSample(slot, sourceMs, sample.value, reasons);
    return;
  }

  const tickMs = context.clock === 'source' && !(arrivalMs > sourceMs) ? sourceMs : arrivalMs;
  sample.sourceMs = sourceMs;
  sample.tickMs = tickMs;
  reasons |= courseReasons(sample);
  if (arrangement === 'newer') state.acceptedMs[slot] = retained ? Math.min(tickMs, sourceMs) : tickMs;
  // A live, newer sample has just been accepted; the others may be as old as they say.
  if ((retained || arrangement !== 'newer') && isStale(site.slots, slot, state.acceptedMs[slot] ?? Number.NaN, tickMs))
    reasons |= reasonBit.stale;
  if (own !== sample.ownBefore) state.unchangedSinceMs[slot] = tickMs;
  ownValue[slot] = own;
  state.value[slot] = sample.value;
  state.sourceMs[slot] = sourceMs;
  state.reasons[slot] = reasons;
  acceptance.accept(sourceMs);
  // History tells what was measured at that second; that it came from a retained message does not spoil it.
  onSample(slot, sourceMs, sample.value, reasons & ~reasonBit.stale);
}

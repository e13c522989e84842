import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import type { IntakeContext } from './intake-context';
import { latestBelievedMs } from './judge-time';

/**
 * How a sample stands to what its slot holds:
 * - `newer`: it becomes the slot's value.
 * - `corrected`: same source time, another value; it replaces the value, but does not make it fresher.
 * - `repeated`: same source time, same value; counted only.
 * - `late`: older than the slot, as after a sender's clock alone stepped back; to history only.
 */
export type Arrangement = 'newer' | 'corrected' | 'repeated' | 'late';

/**
 * A held time that would be refused now was believed while the machine's clock was wrong. It is void: held on, it would have what is
 * right be late until it is reached. Looked for only where a sample would be late.
 */
export function arrangeSample(
  site: CompiledSite,
  state: SlotState,
  { clock, ownValue, wallMs }: IntakeContext,
  slot: number,
  sourceMs: number,
  own: number,
  arrivalMs: number,
): Arrangement {
  const held = state.sourceMs[slot] ?? Number.NaN;
  if (sourceMs < held) return held > latestBelievedMs(site, clock, arrivalMs, wallMs) ? 'newer' : 'late';
  if (sourceMs === held) return own === ownValue[slot] ? 'repeated' : 'corrected';
  return 'newer';
}

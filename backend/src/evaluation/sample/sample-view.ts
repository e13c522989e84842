import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';

/** What the checks may look at. One object, written again for each sample; `state` still holds the sample before. */
export interface SampleView {
  readonly site: CompiledSite;
  readonly state: SlotState;
  slot: number;
  /** SI, in the point's own reference. */
  own: number;
  /** The sample before, likewise; NaN where there was none. */
  ownBefore: number;
  /** SI, absolute where it is a pressure. */
  value: number;
  sourceMs: number;
  tickMs: number;
  /** Whether the sender marked it as not good. */
  flagged: boolean;
}

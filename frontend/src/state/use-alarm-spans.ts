import type { AlarmSpans } from '@ebbline/shared/contract/trends';
import type { ShallowRef } from 'vue';
import { readAlarmSpans } from '../api/trends';
import type { OverSpan } from './use-over-span';
import { useOverSpan } from './use-over-span';

export interface AlarmSpansOptions {
  readonly units: () => readonly string[];
  /** False where they are not to be drawn: nothing is asked for then. */
  readonly wanted: () => boolean;
  /** How many alarms stand now: where that changes, they are read anew. */
  readonly standing: () => string;
  readonly span: () => { readonly fromMs: number; readonly toMs: number } | null;
  readonly following: () => boolean;
  /** As of any span. */
  readonly nowMs?: () => number | null;
  /** Default: the server. */
  readonly read?: typeof readAlarmSpans;
}

/** When which alarm of some units stood within a span. */
export function useAlarmSpans({
  following,
  nowMs,
  read = readAlarmSpans,
  span,
  standing,
  units,
  wanted,
}: AlarmSpansOptions): Readonly<ShallowRef<OverSpan<AlarmSpans>>> {
  return useOverSpan({
    wish: () => (wanted() && units().length > 0 ? `${units().join(',')} ${following() ? standing() : ''}` : null),
    subject: () => (wanted() ? units().join(',') : null),
    span,
    following,
    nowMs,
    read: (time) => read(units(), time),
  });
}

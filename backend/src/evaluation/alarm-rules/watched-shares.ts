import type { SlotState } from '../slots/slot-state';
import { judgeAbove } from './above';
import type { Limits } from './entry';
import type { Finding } from './finding';
import { usable } from './judge-context';
import { saysNothing } from './says-nothing';
import { Verdict } from './verdict';

/** A figure that tells by how much of its limit something has changed; 1 is the limit, the sign its way. */
export interface WatchedShare {
  readonly id: string;
  readonly slot: number;
}

/** The one that is furthest beyond decides and is named. Where none is beyond and one is not known, nothing is said. */
export function judgeShares(
  state: SlotState,
  watched: readonly WatchedShare[],
  limits: Limits,
  active: boolean,
  finding: Finding,
): void {
  let most = Number.NaN;
  let unknown = false;
  for (const { id, slot } of watched) {
    if (slot < 0) continue;
    const value = usable(state, slot);
    if (Number.isNaN(value)) unknown ||= !saysNothing(state, slot);
    else if (!(Math.abs(value) <= Math.abs(most))) {
      most = value;
      finding.where = id;
    }
  }
  finding.value = most;
  finding.limit = limits.limit;
  const verdict = Number.isNaN(most) ? Verdict.no : judgeAbove(Math.abs(most), limits.limit, limits.deadband, active);
  finding.verdict = verdict === Verdict.no && unknown ? Verdict.hold : verdict;
}

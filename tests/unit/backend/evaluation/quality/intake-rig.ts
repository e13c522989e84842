import { acceptMessage } from '../../../../../backend/src/evaluation/quality/accept-message';
import type { Acceptance } from '../../../../../backend/src/evaluation/sample/acceptance';
import { createIntakeContext, type ClockKind } from '../../../../../backend/src/evaluation/sample/intake-context';
import type { CompiledSite } from '../../../../../backend/src/evaluation/site/compiled-site';
import { reasonList } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { createSlotState } from '../../../../../backend/src/evaluation/slots/slot-state';
import { slotOf, smallSite } from '../../../../helpers/small-site';

export interface HeardSample {
  readonly slot: number;
  readonly sourceMs: number;
  readonly value: number;
  readonly reasons: readonly string[];
}

/** The small site with intake around it, driven message by message. */
export function intakeRig(clock: ClockKind = 'wall', site: CompiledSite = smallSite()) {
  const state = createSlotState(site.slots.count);
  const context = createIntakeContext(site, state, clock);
  const heard: HeardSample[] = [];
  return {
    site,
    state,
    context,
    heard,
    /** `wallMs`: what the machine's clock says, which tells the time in force unless it is stepped. */
    send: (topic: string, payload: unknown, arrivalMs: number, retained = false, wallMs = arrivalMs): Acceptance => {
      context.wallMs = wallMs;
      const text = typeof payload === 'string' ? payload : JSON.stringify(payload);
      const message = { topic, payload: Buffer.from(text), retained };
      const acceptance = acceptMessage(site, state, context, message, arrivalMs, (slot, sourceMs, value, reasons) =>
        heard.push({ slot, sourceMs, value, reasons: reasonList(reasons) }),
      );
      return { ...acceptance };
    },
    value: (holder: string, point: string) => state.value[slotOf(site, holder, point)],
    reasons: (holder: string, point: string) => reasonList(state.reasons[slotOf(site, holder, point)] ?? 0),
    slot: (holder: string, point: string) => slotOf(site, holder, point),
  };
}

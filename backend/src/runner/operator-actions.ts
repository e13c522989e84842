import type { AcknowledgeRequest, Alarm } from '@ebbline/shared/contract/alarm';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { ActionOutcome } from '../evaluation/pipeline/outputs';
import type { Clock } from '../ports/clock';
import type { Actor } from '../ports/identity';
import type { ActionFault, Operations } from '../ports/live-view';
import type { RecordedAlarms } from './recorded-alarms';
import type { Scene } from './views/scene';
import { timeText } from './views/time-text';
import { toAlarm } from './views/to-alarm';

const journalUnavailable: ActionFault = {
  code: 'JOURNAL_UNAVAILABLE',
  message:
    'The journal can not be written, so nothing is confirmed. See the health page; free disk space, then try again.',
};

/** What a person did: carried out, committed to the journal, and only then confirmed. */
export class OperatorActions implements Operations {
  constructor(
    private readonly scene: Scene,
    private readonly alarms: RecordedAlarms,
    private readonly clock: Clock,
  ) {}

  acknowledge(alarm: string, { comment }: AcknowledgeRequest, actor: Actor): Result<Alarm, ActionFault> {
    // A journal that refuses old changes would refuse this one: better not to act than to act unconfirmed.
    if (!this.alarms.record([], this.clock.wallMs())) return fail(journalUnavailable);
    const action = { kind: 'acknowledge', alarm, operator: actor.name, station: actor.station, comment } as const;
    const outcome = this.scene.pipeline.act(action, this.actionTimeMs());
    if (!outcome.ok) return fail(toFault(outcome));
    if (!this.alarms.record([outcome.transition], this.clock.wallMs())) return fail(journalUnavailable);
    return ok(toAlarm({ record: outcome.record, recorded: true }, this.scene.textsOf(outcome.record)));
  }

  /** Alarms of the journal can be acknowledged on the source clock before its first sample. */
  private actionTimeMs(): number {
    const nowMs = this.scene.nowMs();
    return Number.isNaN(nowMs) ? this.clock.wallMs() : nowMs;
  }
}

function toFault(outcome: ActionOutcome & { ok: false }): ActionFault {
  const { code, message, acknowledgedBy, acknowledgedAtMs } = outcome;
  return code === 'ALARM_ALREADY_ACKNOWLEDGED'
    ? { code, message, acknowledgedBy, acknowledgedAt: acknowledgedAtMs === null ? null : timeText(acknowledgedAtMs) }
    : { code, message };
}

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
  message: 'The journal can not be written, so nothing was done. See the health page; free disk space, then try again.',
};

/** What a person does: committed to the journal, carried out, and only then confirmed; or without any effect. */
export class OperatorActions implements Operations {
  constructor(
    private readonly scene: Scene,
    private readonly alarms: RecordedAlarms,
    private readonly clock: Clock,
  ) {}

  acknowledge(alarm: string, { comment }: AcknowledgeRequest, actor: Actor): Result<Alarm, ActionFault> {
    const action = { kind: 'acknowledge', alarm, operator: actor.name, station: actor.station, comment } as const;
    const outcome = this.scene.pipeline.act(action, this.actionTimeMs(), (transition, record) =>
      this.alarms.recordAction(transition, record, this.clock.wallMs()),
    );
    if (!outcome.ok) return fail(toFault(outcome));
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
  if (code === 'ACTION_NOT_RECORDED') return journalUnavailable;
  return code === 'ALARM_ALREADY_ACKNOWLEDGED'
    ? { code, message, acknowledgedBy, acknowledgedAt: acknowledgedAtMs === null ? null : timeText(acknowledgedAtMs) }
    : { code, message };
}

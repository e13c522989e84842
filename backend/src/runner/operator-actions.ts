import type { AcknowledgeRequest, Alarm } from '@ebbline/shared/contract/alarm';
import type {
  AcknowledgeManyReply,
  AcknowledgeManyRequest,
  BringBackRequest,
  SetAsideAlarm,
  ShelveRequest,
  TakeOutOfServiceRequest,
} from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import type { ClosePermitRequest, OpenPermitRequest, Permit } from '@ebbline/shared/contract/permit';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { OperatorAction } from '../evaluation/pipeline/inputs';
import type { ActionOutcome, AlarmRecord } from '../evaluation/pipeline/outputs';
import type { PermitAction } from '../evaluation/pipeline/permit-record';
import type { Clock } from '../ports/clock';
import type { Actor } from '../ports/identity';
import type { ActionFault, Operations, PermitActionFault } from '../ports/live-view';
import { journalUnavailable } from './journal-unavailable';
import { bringBack, shelve, takeOutOfService } from './mode-actions';
import type { RecordedChanges } from './recorded-changes';
import type { RecordedAlarms } from './recorded-alarms';
import type { Scene } from './views/scene';
import { timeText } from './views/time-text';
import { toPermit } from './views/to-permit';
import { toAlarm } from './views/to-alarm';

/** What a person does: committed to the journal, carried out, and only then confirmed; or without any effect. */
export class OperatorActions implements Operations {
  constructor(
    private readonly scene: Scene,
    private readonly alarms: RecordedAlarms,
    private readonly changes: RecordedChanges,
    private readonly clock: Clock,
  ) {}

  acknowledge(alarm: string, { comment }: AcknowledgeRequest, actor: Actor): Result<Alarm, ActionFault> {
    const done = this.act({ kind: 'acknowledge', alarm, operator: actor.name, station: actor.station, comment });
    if (!done.ok) return done;
    return ok(toAlarm({ record: done.value, recorded: true }, this.scene.textsOf(done.value)));
  }

  acknowledgeMany({ alarms, comment }: AcknowledgeManyRequest, actor: Actor): AcknowledgeManyReply {
    const answers = [...new Set(alarms)].map((id) => {
      const done = this.acknowledge(id, { comment }, actor);
      return done.ok
        ? { id, done: true, code: null, message: null }
        : { id, done: false, code: done.fault.code, message: done.fault.message };
    });
    return { answers };
  }

  shelve(alarm: string, request: ShelveRequest, actor: Actor): Result<SetAsideAlarm, ActionFault> {
    return shelve(this.scene, (action) => this.act(action), alarm, request, actor);
  }

  unshelve(alarm: string, request: BringBackRequest, actor: Actor): Result<BroughtBack, ActionFault> {
    return bringBack((action) => this.act(action), 'unshelve', alarm, request, actor);
  }

  takeOutOfService(alarm: string, request: TakeOutOfServiceRequest, actor: Actor): Result<SetAsideAlarm, ActionFault> {
    return takeOutOfService(this.scene, (action) => this.act(action), alarm, request, actor);
  }

  returnToService(alarm: string, request: BringBackRequest, actor: Actor): Result<BroughtBack, ActionFault> {
    return bringBack((action) => this.act(action), 'returnToService', alarm, request, actor);
  }

  private act(action: OperatorAction): Result<AlarmRecord, ActionFault> {
    const outcome = this.scene.pipeline.act(action, this.actionTimeMs(), (transition, record) =>
      this.alarms.recordAction(transition, record, this.clock.wallMs()),
    );
    if (outcome.ok) this.alarms.follow(this.clock.wallMs());
    return outcome.ok ? ok(outcome.record) : fail(toFault(outcome));
  }

  openPermit(request: OpenPermitRequest, actor: Actor): Result<Permit, PermitActionFault> {
    const { unit, branch, until, expectedInLeak, comment } = request;
    return this.actOnPermit({
      kind: 'openPermit',
      unit,
      branch,
      untilMs: Date.parse(until),
      expectedInLeakM3PerS: expectedInLeak,
      operator: actor.name,
      station: actor.station,
      comment,
    });
  }

  closePermit(permit: string, { comment }: ClosePermitRequest, actor: Actor): Result<Permit, PermitActionFault> {
    const { name: operator, station } = actor;
    return this.actOnPermit({ kind: 'closePermit', permit, operator, station, comment });
  }

  private actOnPermit(action: PermitAction): Result<Permit, PermitActionFault> {
    const nowMs = this.actionTimeMs();
    const outcome = this.scene.pipeline.actOnPermit(action, nowMs, (change) =>
      this.changes.recordAction(change, this.clock.wallMs()),
    );
    if (outcome.ok) return ok(toPermit(outcome.change.permit, nowMs));
    const { code, message } = outcome;
    return fail(code === 'ACTION_NOT_RECORDED' ? journalUnavailable : { code, message });
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

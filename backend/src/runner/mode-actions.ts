import type {
  BringBackRequest,
  SetAsideAlarm,
  ShelveRequest,
  TakeOutOfServiceRequest,
} from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { modeOf } from '../evaluation/alarm-lifecycle/mode-facts';
import type { ModeAction } from '../evaluation/pipeline/inputs';
import type { AlarmRecord } from '../evaluation/pipeline/outputs';
import type { Actor } from '../ports/identity';
import type { ActionFault } from '../ports/live-view';
import type { Scene } from './views/scene';
import { toSetAside } from './views/to-set-aside';

/** Carries out and records one action; what it made of the alarm. */
export type ActOnAlarm = (action: ModeAction) => Result<AlarmRecord, ActionFault>;

const byWhom = (alarm: string, actor: Actor, comment: string) => ({
  alarm,
  operator: actor.name,
  station: actor.station,
  comment,
});

export function shelve(
  scene: Scene,
  act: ActOnAlarm,
  alarm: string,
  { minutes, reason }: ShelveRequest,
  actor: Actor,
): Result<SetAsideAlarm, ActionFault> {
  return asSetAside(scene, act({ kind: 'shelve', ...byWhom(alarm, actor, reason), forMs: minutes * 60_000 }));
}

export function takeOutOfService(
  scene: Scene,
  act: ActOnAlarm,
  alarm: string,
  { interimMeasures, plannedEnd, reason }: TakeOutOfServiceRequest,
  actor: Actor,
): Result<SetAsideAlarm, ActionFault> {
  const plannedEndMs = plannedEnd === null ? null : Date.parse(plannedEnd);
  return asSetAside(scene, act({ kind: 'takeOut', ...byWhom(alarm, actor, reason), interimMeasures, plannedEndMs }));
}

export function bringBack(
  act: ActOnAlarm,
  kind: 'unshelve' | 'returnToService',
  alarm: string,
  { comment }: BringBackRequest,
  actor: Actor,
): Result<BroughtBack, ActionFault> {
  const done = act({ kind, ...byWhom(alarm, actor, comment) });
  if (!done.ok) return done;
  const { state, active } = done.value;
  return ok({ id: alarm, mode: modeOf(done.value), state, active });
}

function asSetAside(scene: Scene, done: Result<AlarmRecord, ActionFault>): Result<SetAsideAlarm, ActionFault> {
  if (!done.ok) return done;
  const aside = toSetAside(done.value, scene.textsOf(done.value).title);
  return aside === null
    ? fail({ code: 'ALARM_UNKNOWN', message: `alarm ${done.value.alarm} is not set aside; look at the list again` })
    : ok(aside);
}

import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { Result } from '@ebbline/shared/errors/result';
import { shelve, takeOutOfService } from '../../state/alarm-acts';
import { actor } from '../../state/use-session';
import type { SetAsideWish } from './set-aside-wish';

/** Asks the server to set one alarm aside, under the name that is signed in. */
export function sendSetAside(id: string, wish: SetAsideWish): Promise<Result<SetAsideAlarm>> {
  const operator = actor();
  if (wish.way === 'shelve') return shelve(id, { operator, reason: wish.reason, minutes: wish.minutes });
  const { reason, interimMeasures, plannedEnd } = wish;
  return takeOutOfService(id, { operator, reason, interimMeasures, plannedEnd });
}

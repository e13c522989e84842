import type {
  BringBackRequest,
  SetAsideAlarm,
  SetAsideList,
  ShelveRequest,
  TakeOutOfServiceRequest,
} from '@ebbline/shared/contract/alarm-modes';
import { setAsideAlarmSchema, setAsideListSchema } from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import { broughtBackSchema } from '@ebbline/shared/contract/brought-back';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

const pathOf = (alarm: string, act: string): string => `/api/alarms/${encodeURIComponent(alarm)}/${act}`;

/** What is not told now: shelved, out of service, suppressed by design. */
export const readSetAside = (): Promise<Result<SetAsideList>> => request('/api/alarms/set-aside', setAsideListSchema);

export const shelve = (alarm: string, wish: ShelveRequest): Promise<Result<SetAsideAlarm>> =>
  request(pathOf(alarm, 'shelve'), setAsideAlarmSchema, { body: wish });

export const takeOutOfService = (alarm: string, wish: TakeOutOfServiceRequest): Promise<Result<SetAsideAlarm>> =>
  request(pathOf(alarm, 'take-out-of-service'), setAsideAlarmSchema, { body: wish });

export const unshelve = (alarm: string, wish: BringBackRequest): Promise<Result<BroughtBack>> =>
  request(pathOf(alarm, 'unshelve'), broughtBackSchema, { body: wish });

export const returnToService = (alarm: string, wish: BringBackRequest): Promise<Result<BroughtBack>> =>
  request(pathOf(alarm, 'return-to-service'), broughtBackSchema, { body: wish });

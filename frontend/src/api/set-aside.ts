import type {
  BringBackRequest,
  FoundAlarms,
  SetAsideAlarm,
  SetAsideList,
  ShelveRequest,
  TakeOutOfServiceRequest,
} from '@ebbline/shared/contract/alarm-modes';
import { foundAlarmsSchema, setAsideAlarmSchema, setAsideListSchema } from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import { broughtBackSchema } from '@ebbline/shared/contract/brought-back';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

const pathOf = (alarm: string, act: string): string => `/api/alarms/${encodeURIComponent(alarm)}/${act}`;

/** What is not told now: shelved, out of service, suppressed by design. */
export const readSetAside = (): Promise<Result<SetAsideList>> => request('/api/alarms/set-aside', setAsideListSchema);

/** Alarms that this site can have, standing or not, by words. */
export const findAlarms = (search: string): Promise<Result<FoundAlarms>> =>
  request(`/api/alarms/findable?${new URLSearchParams({ search }).toString()}`, foundAlarmsSchema);

export const shelve = (alarm: string, wish: ShelveRequest): Promise<Result<SetAsideAlarm>> =>
  request(pathOf(alarm, 'shelve'), setAsideAlarmSchema, { body: wish });

export const takeOutOfService = (alarm: string, wish: TakeOutOfServiceRequest): Promise<Result<SetAsideAlarm>> =>
  request(pathOf(alarm, 'take-out-of-service'), setAsideAlarmSchema, { body: wish });

export const unshelve = (alarm: string, wish: BringBackRequest): Promise<Result<BroughtBack>> =>
  request(pathOf(alarm, 'unshelve'), broughtBackSchema, { body: wish });

export const returnToService = (alarm: string, wish: BringBackRequest): Promise<Result<BroughtBack>> =>
  request(pathOf(alarm, 'return-to-service'), broughtBackSchema, { body: wish });

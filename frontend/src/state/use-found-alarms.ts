import type { FoundAlarms } from '@ebbline/shared/contract/alarm-modes';
import { findAlarms } from '../api/set-aside';
import { oneAtATime } from './one-at-a-time';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/**
 * Alarms of the site by words, as long as some are typed, asked for no faster than answers come; looked up again now and then, as
 * another may set one aside.
 */
export const useFoundAlarms = (search: () => string): Polled<FoundAlarms> =>
  usePolled(oneAtATime(findAlarms), { of: () => (search().trim() === '' ? null : search().trim()), everyMs: 15_000 });

import type { SetAsideList } from '@ebbline/shared/contract/alarm-modes';
import { watch } from 'vue';
import { readSetAside } from '../api/set-aside';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** What is not told now. @param count how many, as the newest frame says: another count is a reason to look */
export function useSetAside(count: () => number | undefined): Polled<SetAsideList> {
  const polled = usePolled(readSetAside, { everyMs: 10_000 });
  watch(count, () => void polled.renew());
  return polled;
}

import type { FaultList } from './site-fault';
import { filterCovers, filterFault } from './topic-check';

/** The filters that the site file gives, then every topic that none of them covers. */
export function compileSubscriptions(
  filters: readonly string[],
  topics: Iterable<string>,
  faults: FaultList,
): readonly string[] {
  filters.forEach((filter, i) => {
    const wrong = filterFault(filter);
    if (wrong !== null) faults.add(['intake', 'subscriptions', i], wrong);
  });
  const single = [...topics].filter((topic) => !filters.some((filter) => filterCovers(filter, topic)));
  return [...new Set([...filters, ...single])];
}

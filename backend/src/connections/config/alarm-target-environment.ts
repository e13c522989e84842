import { readDayTarget, type RateTarget } from '../../evaluation/alarm-performance/targets';
import type { Fault } from './read-variable';

/** How much an operator is to be told a day, such as `150/300`; nothing where nothing is said. */
export function readAlarmsPerDay(
  variable: string,
  text: string | undefined,
  faults: Fault[],
): { readonly alarmsPerDay?: RateTarget } {
  if (text === undefined) return {};
  const read = readDayTarget(text);
  if (read.ok) return { alarmsPerDay: read.value };
  faults.push({ variable, message: read.fault.message });
  return {};
}

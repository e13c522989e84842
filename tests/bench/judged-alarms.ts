import { unitEntries } from '@ebbline/backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { partsOf } from '@ebbline/backend/src/evaluation/pipeline/part-index';
import type { PipelineState } from '@ebbline/backend/src/evaluation/pipeline/pipeline-state';

/** Alarms of the first unit that are judged each second: one an entry, or one for each of its branches or plates. */
export function judgedAlarms({ applies, index, site, unitPlaces }: PipelineState): number {
  const unit = site.units[0];
  if (unit === undefined) return 0;
  let sum = 0;
  for (const place of unitPlaces[0] ?? []) {
    const per = unitEntries[place]?.per;
    if (per === undefined) sum += 1;
    else {
      const first = index.parts.of(0, place);
      for (const one of applies.subarray(first, first + partsOf(unit, per).length)) sum += one;
    }
  }
  return sum;
}

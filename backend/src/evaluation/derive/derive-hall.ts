import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { derivedPointsOfHall } from './derived-points';

/** Works out every derived point of a hall and writes it to its slot; before the units of the hall, which use them. */
export function deriveHall(site: CompiledSite, state: SlotState, hallIndex: number, nowMs: number): void {
  const hall = site.halls[hallIndex];
  if (hall === undefined)
    throw new CodedError(
      'DERIVE_UNKNOWN_HALL',
      `the site has ${site.halls.length} halls, none with index ${hallIndex}`,
    );
  for (const point of derivedPointsOfHall) point.derive(site, state, hall, nowMs);
}

import { isAbsent } from '@ebbline/shared/contract/is-absent';
import type { UnitList } from '@ebbline/shared/contract/http-api';
import { readPoints } from '../api/points';
import { readUnits } from '../api/units';
import type { TrendName } from '../text/trend-link';

/** How near the water is to either wall, and whether the chips' heat leaves in it. */
const firstPoints = ['vacuumMargin', 'lowerWallMargin', 'heatRemoved', 'chipPower'] as const;

/** The unit that needs a person most: by the worst alarm that stands on it, then by how many; else the first. */
export function neediest(units: UnitList['units']): string | null {
  const rank = (one: UnitList['units'][number]): number => one.worstPriority ?? Infinity;
  const first = units.reduce<UnitList['units'][number] | null>((worst, one) => {
    if (worst === null || rank(one) < rank(worst)) return one;
    return rank(one) === rank(worst) && one.standingAlarms > worst.standingAlarms ? one : worst;
  }, null);
  return first?.id ?? null;
}

/**
 * What a trend shows before anybody has chosen: of the unit that is named, or of the one that needs a person most.
 * Nothing where the server does not say: the person then chooses.
 */
export async function readFirstPoints(named: string | null): Promise<readonly TrendName[]> {
  const unit = named ?? (await neediestOfSite());
  if (unit === null) return [];
  const reply = await readPoints(unit);
  if (!reply.ok) return [];
  const has = new Set(reply.value.points.filter((point) => !isAbsent(point)).map(({ id }) => id));
  return firstPoints.filter((point) => has.has(point)).map((point) => ({ unit, point }));
}

async function neediestOfSite(): Promise<string | null> {
  const reply = await readUnits();
  return reply.ok ? neediest(reply.value.units) : null;
}

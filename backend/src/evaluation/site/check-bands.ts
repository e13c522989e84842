import type { CompiledUnit, Holder } from './compiled-site';
import type { FaultList } from './site-fault';

/** Entries whose band depends on the treatment of the water, so that the catalogue has none: what they need, and what they judge. */
const withoutDefault = [
  { entry: 'CHEM-1', point: 'water.conductivity', keys: ['low', 'limit'], say: 'low and limit' },
  { entry: 'CHEM-4', point: 'water.inhibitor', keys: ['low'], say: 'low' },
] as const;

/** Tells, once an entry, of units that measure something for which no band is stated: it is shown, and never raises anything. */
export function checkBands(units: readonly CompiledUnit[], holders: readonly Holder[], warnings: FaultList): void {
  for (const { entry, point, keys, say } of withoutDefault) {
    const open = units.filter((unit) => {
      const limits = unit.limits.get(entry);
      const isStated = keys.some((key) => limits?.[key] !== undefined) || limits?.enabled === false;
      return !isStated && holders[unit.holder]?.slotOf.has(point) === true;
    });
    if (open.length === 0) continue;
    warnings.add(
      ['limits', entry],
      `is not stated, and has no default, as it depends on the treatment of the water: ${point} of ${namesOf(open)} raises nothing; state ${say}, or "enabled: false"`,
    );
  }
}

const shown = 3;

const namesOf = (units: readonly CompiledUnit[]): string =>
  units.length <= shown
    ? units.map(({ id }) => id).join(', ')
    : `${units
        .slice(0, shown)
        .map(({ id }) => id)
        .join(', ')} and ${units.length - shown} more`;

import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Site } from '@ebbline/shared/contract/http-api';
import type { ComputedRef } from 'vue';
import { computed } from 'vue';
import { useSite, zoneOf } from '../../state/use-site';
import { placeTitle } from '../../text/place-title';
import { shapeWords } from '../../text/shape-words';

interface Placed {
  readonly unit: string | null;
  readonly hall: string | null;
}

export interface Places {
  readonly zone: ComputedRef<string>;
  readonly nameOf: (unit: string | null) => string | null;
  readonly hallOrUnit: (of: Placed) => string | null;
  readonly whereOf: (unit: string | null, where: string | null) => string;
  /** Unit or hall, and the place on it. */
  readonly placeOf: (of: Placed & { readonly where?: string | null }) => string;
  /** In the words of the unit's own plant. */
  readonly titleOf: (of: Pick<Alarm, 'title' | 'unit'>) => string;
  /** An entry of the catalogue and its title in the words of the unit's plant; empty where none is named. */
  readonly entryOf: (entry: string | null, unit: string | null) => string;
  /** What an alarm is called of which only the id is known; its place is named where that is not `here`. */
  readonly alarmOf: (id: string, here: string | null) => string;
}

/** What units, halls and places are called on this site. */
export function usePlaces(): Places {
  const { site } = useSite();
  const siteUnit = (unit: string | null): Site['units'][number] | undefined =>
    site.value?.units.find(({ id }) => id === unit);
  const nameOf = (unit: string | null): string | null => (unit === null ? null : (siteUnit(unit)?.name ?? unit));
  const hallOrUnit = ({ unit, hall }: Placed): string | null =>
    nameOf(unit) ?? site.value?.halls.find(({ id }) => id === hall)?.name ?? hall;
  const whereOf = (unit: string | null, where: string | null): string =>
    where === null ? '' : placeTitle(where, siteUnit(unit));
  const entryOf = (entry: string | null, unit: string | null): string =>
    `${entry ?? ''} ${shapeWords(site.value?.entryTitles[entry ?? ''] ?? '', siteUnit(unit)?.shape)}`.trim();
  return {
    entryOf,
    alarmOf: (id, here) => {
      const [, holder = null, entry = null] = /^([^:]+):([^:]+)/u.exec(id) ?? [];
      const place = holder === here ? null : hallOrUnit({ unit: holder, hall: holder });
      return entry === null ? id : [entryOf(entry, holder), place].filter((part) => part !== null).join(', ');
    },
    zone: computed(() => zoneOf(site.value)),
    nameOf,
    hallOrUnit,
    whereOf,
    placeOf: (of) =>
      [hallOrUnit(of) ?? '', whereOf(of.unit, of.where ?? null)].filter((part) => part !== '').join(', '),
    titleOf: ({ title, unit }) => shapeWords(title, siteUnit(unit)?.shape),
  };
}

import { splitPoint, type PartGroup } from '@ebbline/shared/contract/point-table';
import type { CompiledSite } from '../site/compiled-site';

/** A hall or a unit as names may call it, with the points that it has already. */
export interface NamedHolder {
  readonly kind: 'hall' | 'unit';
  readonly id: string;
  readonly name: string;
  /** Point id → the topic on which it is expected. */
  readonly topicOf: ReadonlyMap<string, string>;
  readonly parts: Readonly<Partial<Record<PartGroup, readonly NamedPart[]>>>;
}

export interface NamedPart {
  readonly id: string;
  readonly name: string;
}

/** What a site file has named so far. */
export interface MappedSite {
  readonly holders: readonly NamedHolder[];
  /** Ambient pressure for a first look at gauge readings: by the altitude alone. Pa */
  readonly ambientPa: number;
  /** Topic and path, joined by `placeKey`, that a point has or that a status has. */
  readonly taken: ReadonlySet<string>;
}

export const placeKey = (topic: string, path: readonly string[]): string => [topic, ...path].join('\u0000');

/** Barometric formula of the standard atmosphere (ISO 2533:1975, below 11 km; from memory). */
const ambientAt = (altitudeM: number): number => 101_325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588;

export function mappedSite(site: CompiledSite): MappedSite {
  const taken = new Set<string>();
  const topicBySlot = new Map<number, string>();
  for (const [topic, { bindings, status, timePath }] of site.topics) {
    if (status !== null) taken.add(placeKey(topic, status.path ?? []));
    if (timePath !== null) taken.add(placeKey(topic, timePath));
    for (const { slot, path, qualityPath } of bindings) {
      topicBySlot.set(slot, topic);
      taken.add(placeKey(topic, path));
      if (qualityPath !== null) taken.add(placeKey(topic, qualityPath));
    }
  }
  const topicsOf = (holder: number): ReadonlyMap<string, string> =>
    new Map(
      [...(site.holders[holder]?.slotOf ?? [])].flatMap(([point, slot]) => {
        const topic = topicBySlot.get(slot);
        return topic === undefined ? [] : [[point, topic] as const];
      }),
    );
  return {
    holders: [
      ...site.halls.map(({ id, name, holder }) => ({
        kind: 'hall' as const,
        id,
        name,
        topicOf: topicsOf(holder),
        parts: {},
      })),
      ...site.units.map(({ id, name, holder, branches, servers, plates, tanks }) => ({
        ...{ kind: 'unit' as const, id, name, topicOf: topicsOf(holder) },
        parts: { branch: named(branches), server: named(servers), plate: named(plates), tank: named(tanks) },
      })),
    ],
    ambientPa: ambientAt(site.altitudeM),
    taken,
  };
}

const named = (parts: readonly NamedPart[]): readonly NamedPart[] => parts.map(({ id, name }) => ({ id, name }));

/** `branch.<id>.flow` → branch; null for a point without a part of its own. */
export const groupOf = (pattern: string): PartGroup | null => splitPoint(pattern)?.group ?? null;

import type { SiteFile } from '@ebbline/shared/contract/site-file';
import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import { compileHolder, type HolderCaches } from './compile-holder';
import { handPointsOf } from './compile-water';
import { expandDerived, type HolderPlan } from './compile-slots';
import type { MergedUnit } from './merge-templates';
import type { FaultList } from './site-fault';
import { noParts, partIds, placesOf } from './unit-parts';

const present = <Value>(map: Readonly<Record<string, Value | null>> | undefined): Readonly<Record<string, Value>> =>
  Object.fromEntries(Object.entries(map ?? {}).filter((entry): entry is [string, Value] => entry[1] !== null));

/** Halls as holders of points. */
export function planHalls(
  file: SiteFile,
  derived: readonly string[],
  caches: HolderCaches,
  faults: FaultList,
): readonly HolderPlan[] {
  return Object.entries(file.halls).map(([id, hall]) => ({
    id,
    kind: 'hall',
    measured: compileHolder(
      {
        kind: 'hall',
        points: present(hall.points),
        common: { topic: hall.topic, time: hall.time, quality: hall.quality },
        parts: noParts,
        fillIns: { site: file.site.id, hall: id },
        at: (...keys) => ['halls', id, ...keys],
      },
      caches,
      faults,
    ),
    derived,
    places: [],
  }));
}

/** A unit as a holder of points; merging has taken every `~` out of its points. */
export function planUnit(
  file: SiteFile,
  merged: MergedUnit,
  derived: readonly string[],
  caches: HolderCaches,
  faults: FaultList,
): HolderPlan {
  const { id, unit, at } = merged;
  const parts = partIds(unit);
  return {
    id,
    kind: 'unit',
    measured: compileHolder(
      {
        kind: 'unit',
        points: (unit.points ?? {}) as Readonly<Record<string, PointInFile>>,
        common: { topic: unit.topic, time: unit.time, quality: unit.quality },
        parts,
        fillIns: { site: file.site.id, hall: unit.hall, unit: id },
        at,
      },
      caches,
      faults,
    ),
    byHand: handPointsOf(unit.water),
    derived: expandDerived(derived, parts),
    places: placesOf(unit).names,
  };
}

import { airSignalCount } from '../alarm-rules/air-step/air-memory';
import type { CompiledSite } from '../site/compiled-site';
import type { AlarmIndex } from './alarm-index';
import { mapById, type PlaceMap } from './copy-columns';

/** What of a new site is the same as in the one before: from new places to old ones. */
export interface SiteMaps {
  readonly slots: PlaceMap;
  readonly units: PlaceMap;
  readonly halls: PlaceMap;
  readonly gateways: PlaceMap;
  readonly alarms: PlaceMap;
  /** Signals of the air memory: each unit's own, then flow and pressure of its branches. */
  readonly airSignals: PlaceMap;
}

/** `applies` of the new site: an alarm that its unit can't have any more is gone. */
export function mapSites(
  before: { readonly site: CompiledSite; readonly index: AlarmIndex },
  now: { readonly site: CompiledSite; readonly index: AlarmIndex; readonly applies: Uint8Array },
): SiteMaps {
  const units = mapById(idsOf(before.site.units), idsOf(now.site.units));
  return {
    slots: mapSlots(before.site, now.site),
    units,
    halls: mapById(idsOf(before.site.halls), idsOf(now.site.halls)),
    gateways: mapById(idsOf(before.site.gateways), idsOf(now.site.gateways)),
    alarms: mapAlarms(before.index, now.index, now.applies),
    airSignals: mapAirSignals(before.site, now.site, units),
  };
}

const idsOf = (all: readonly { readonly id: string }[]): readonly string[] => all.map(({ id }) => id);

/** A slot is the same where its holder, its point and everything that makes its number a value are. */
function mapSlots(before: CompiledSite, now: CompiledSite): PlaceMap {
  const holders = new Map(before.holders.map((holder) => [`${holder.kind} ${holder.id}`, holder]));
  const places = new Int32Array(now.slots.count).fill(-1);
  for (const holder of now.holders) {
    const old = holders.get(`${holder.kind} ${holder.id}`);
    if (old === undefined) continue;
    for (const [point, slot] of holder.slotOf) {
      const was = old.slotOf.get(point);
      if (was !== undefined && sameMeasure(before, was, now, slot)) places[slot] = was;
    }
  }
  return { before: places, countBefore: before.slots.count };
}

function sameMeasure(before: CompiledSite, was: number, now: CompiledSite, slot: number): boolean {
  const { slots: a } = before;
  const { slots: b } = now;
  return (
    a.unitOfMeasure[was] === b.unitOfMeasure[slot] &&
    a.measured[was] === b.measured[slot] &&
    a.factor[was] === b.factor[slot] &&
    a.offset[was] === b.offset[slot] &&
    a.reference[was] === b.reference[slot]
  );
}

function mapAlarms(before: AlarmIndex, now: AlarmIndex, applies: Uint8Array): PlaceMap {
  const names = before.byName();
  const places = new Int32Array(now.count).fill(-1);
  for (let alarm = 0; alarm < now.count; alarm += 1)
    if (applies[alarm] === 1) places[alarm] = names.get(now.identity(alarm).alarm) ?? -1;
  return { before: places, countBefore: before.count };
}

function mapAirSignals(before: CompiledSite, now: CompiledSite, units: PlaceMap): PlaceMap {
  const firsts: number[] = [];
  let countBefore = 0;
  for (const unit of before.units) {
    firsts.push(countBefore);
    countBefore += airSignalCount + 2 * unit.branches.length;
  }
  const places = now.units.flatMap((unit, i) => {
    const was = units.before[i] ?? -1;
    const old = before.units[was];
    const first = firsts[was] ?? -1;
    const own = Array.from({ length: airSignalCount }, (_, signal) => (old === undefined ? -1 : first + signal));
    const branches = mapById(idsOf(old?.branches ?? []), idsOf(unit.branches)).before;
    const ofBranches = [...branches].flatMap((branch) =>
      branch < 0 ? [-1, -1] : [0, 1].map((signal) => first + airSignalCount + 2 * branch + signal),
    );
    return [...own, ...ofBranches];
  });
  return { before: Int32Array.from(places), countBefore };
}

import type { AlarmIdentity } from '../alarm-lifecycle/alarm-book';
import { catalogue, groupEntries } from '../alarm-rules/catalogue/catalogue';
import type { GroupEntry } from '../alarm-rules/entry';
import { systemEntryIds, unitEntryIds, type EntryId, type GroupEntryId } from '../alarm-rules/entry-ids';
import { feedingPoints, type FeedingPoint } from '../alarm-rules/feeding-points';
import type { CompiledSite } from '../site/compiled-site';
import { PartIndex } from './part-index';

/**
 * Every alarm that the site can have, as places in columns: units × entries first, then the entries that are judged for each
 * branch or plate, then those of loops and halls, then INS-1 a feeding point, then COM-1 a gateway, then what
 * is about the program itself. Names are made only when one is needed. The place of an entry that is judged for parts, among units × entries, says whether any part is in alarm.
 */
export class AlarmIndex {
  readonly count: number;
  readonly points: readonly FeedingPoint[];
  /** Holder → its feeding points: indices into `points` from `firstPoint[h]` to `firstPoint[h + 1]`. */
  readonly firstPoint: Int32Array;
  /** Slots of `points`, side by side: what is looked at each second. */
  readonly slotOfPoint: Int32Array;
  readonly parts: PartIndex;
  private readonly groups: readonly { readonly entry: GroupEntry; readonly group: number }[];
  private readonly firstGroup: number;
  private readonly firstIns: number;
  private readonly firstCom: number;
  private readonly firstSystem: number;
  private readonly unitOfHolder = new Map<number, number>();
  private readonly hallOfHolder = new Map<number, number>();

  constructor(private readonly site: CompiledSite) {
    this.points = [...feedingPoints(site)].sort((a, b) => a.holder - b.holder || a.slot - b.slot);
    this.slotOfPoint = Int32Array.from(this.points, ({ slot }) => slot);
    this.parts = new PartIndex(site, site.units.length * unitEntryIds.length);
    this.groups = groupEntries.flatMap((entry) =>
      (entry.per === 'loop' ? site.loops : site.halls).map((_, group) => ({ entry, group })),
    );
    this.firstGroup = this.parts.end;
    this.firstIns = this.firstGroup + this.groups.length;
    this.firstCom = this.firstIns + this.points.length;
    this.firstSystem = this.firstCom + site.gateways.length;
    this.count = this.firstSystem + systemEntryIds.length;
    this.firstPoint = new Int32Array(site.holders.length + 1);
    for (const point of this.points) this.add(point.holder + 1);
    for (let h = 0; h < site.holders.length; h += 1) this.add(h + 1, this.firstPoint[h]);
    site.units.forEach((unit, i) => this.unitOfHolder.set(unit.holder, i));
    site.halls.forEach((hall, i) => this.hallOfHolder.set(hall.holder, i));
  }

  ofUnit(unit: number): number {
    return unit * unitEntryIds.length;
  }

  /** All alarms of loops and halls: each entry's in the order of the site. */
  ofGroup(place: number): number {
    return this.firstGroup + place;
  }

  /** The alarm of an entry in one loop or hall. */
  ofEntryInGroup(id: GroupEntryId, group: number): number {
    return this.firstGroup + this.groups.findIndex((one) => one.entry.id === id && one.group === group);
  }

  ofPoint(point: number): number {
    return this.firstIns + point;
  }

  ofGateway(gateway: number): number {
    return this.firstCom + gateway;
  }

  /** An alarm about the program itself, by its place in `systemEntryIds`. */
  ofSystem(place: number): number {
    return this.firstSystem + place;
  }

  /** Place in `systemEntryIds`, −1 where the alarm is about the plant. */
  systemPlaceOf(alarm: number): number {
    return alarm >= this.firstSystem ? alarm - this.firstSystem : -1;
  }

  /** The unit whose points a holder has, −1 where it is a hall. */
  unitOf(holder: number): number {
    return this.unitOfHolder.get(holder) ?? -1;
  }

  /** The feeding point that an alarm is about, −1 where it is none of INS-1. */
  pointOf(alarm: number): number {
    return alarm >= this.firstIns && alarm < this.firstCom ? alarm - this.firstIns : -1;
  }

  /** Unit, entry's place and part (−1: none) of an alarm that a unit's step judges; null for any other. */
  judgedOf(alarm: number): { readonly unit: number; readonly place: number; readonly part: number } | null {
    if (alarm < this.parts.first)
      return { unit: Math.floor(alarm / unitEntryIds.length), place: alarm % unitEntryIds.length, part: -1 };
    return alarm < this.parts.end ? this.parts.judgedOf(alarm) : null;
  }

  /** Entry and group of an alarm of a loop or a hall; null for any other. */
  groupOf(alarm: number): { readonly entry: GroupEntry; readonly group: number } | null {
    return this.groups[alarm - this.firstGroup] ?? null;
  }

  /** `<unit, loop, hall, gateway or “program”>:<entry>`, and `:<part or point>` where an entry judges many. */
  identity(alarm: number): AlarmIdentity {
    const judged = this.judgedOf(alarm);
    if (judged !== null) return this.unitIdentity(judged);
    const ofGroup = this.groupOf(alarm);
    if (ofGroup !== null) return this.groupIdentity(ofGroup);
    const system = systemEntryIds[this.systemPlaceOf(alarm)];
    if (system !== undefined) return identityOf(`program:${system}`, system, null, null);
    return alarm < this.firstCom
      ? this.pointIdentity(alarm - this.firstIns)
      : this.gatewayIdentity(alarm - this.firstCom);
  }

  /** Name → place; built when asked, for a restore. */
  byName(): ReadonlyMap<string, number> {
    const names = new Map<string, number>();
    for (let alarm = 0; alarm < this.count; alarm += 1) names.set(this.identity(alarm).alarm, alarm);
    return names;
  }

  private add(place: number, amount: number | undefined = 1): void {
    this.firstPoint[place] = (this.firstPoint[place] as number) + amount;
  }

  private unitIdentity({ unit: index, place, part }: { unit: number; place: number; part: number }): AlarmIdentity {
    const unit = this.site.units[index];
    const entry = unitEntryIds[place] ?? unitEntryIds[0];
    const id = unit?.id ?? '';
    const partId = part < 0 || unit === undefined ? '' : `:${this.parts.partId(unit, place, part)}`;
    return identityOf(`${id}:${entry}${partId}`, entry, id, this.hallId(unit?.hall));
  }

  private groupIdentity({ entry, group }: { entry: GroupEntry; group: number }): AlarmIdentity {
    const entryId: string = entry.id;
    if (entry.per === 'hall') {
      const id = this.hallId(group);
      return identityOf(`${id ?? ''}:${entryId}`, entry.id, null, id);
    }
    const loop = this.site.loops[group];
    const first = this.site.units[loop?.units[0] ?? -1];
    const unit = loop?.units.length === 1 ? (first?.id ?? null) : null;
    return identityOf(`${loop?.id ?? ''}:${entryId}`, entry.id, unit, this.hallId(first?.hall));
  }

  private pointIdentity(index: number): AlarmIdentity {
    const point = this.points[index] as FeedingPoint;
    const holder = this.site.holders[point.holder];
    const unit = this.site.units[this.unitOfHolder.get(point.holder) ?? -1];
    const hall = unit === undefined ? this.hallOfHolder.get(point.holder) : unit.hall;
    const name = `${holder?.id ?? ''}:INS-1:${this.site.slots.pointId[point.slot] ?? ''}`;
    return identityOf(name, 'INS-1', unit?.id ?? null, this.hallId(hall));
  }

  private gatewayIdentity(index: number): AlarmIdentity {
    const gateway = this.site.gateways[index];
    const units = gateway?.units ?? [];
    const first = this.site.units[units[0] ?? -1];
    const unit = units.length === 1 ? (first?.id ?? null) : null;
    return identityOf(`${gateway?.id ?? ''}:COM-1`, 'COM-1', unit, this.hallId(first?.hall));
  }

  private hallId(hall: number | undefined): string | null {
    return this.site.halls[hall ?? -1]?.id ?? null;
  }
}

const identityOf = (alarm: string, entry: EntryId, unit: string | null, hall: string | null): AlarmIdentity => ({
  alarm,
  entry,
  unit,
  hall,
  latching: catalogue[entry].latching,
});

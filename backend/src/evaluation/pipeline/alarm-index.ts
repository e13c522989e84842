import type { AlarmIdentity } from '../alarm-lifecycle/alarm-book';
import { catalogue } from '../alarm-rules/catalogue/catalogue';
import { unitEntryIds } from '../alarm-rules/entry-ids';
import { feedingPoints, type FeedingPoint } from '../alarm-rules/feeding-points';
import type { CompiledSite } from '../site/compiled-site';

/**
 * Every alarm that the site can have, as places in columns: units × entries first, then INS-1 a feeding point,
 * then COM-1 a gateway. Names are made only when one is needed.
 */
export class AlarmIndex {
  readonly count: number;
  readonly points: readonly FeedingPoint[];
  /** Holder → its feeding points: indices into `points` from `firstPoint[h]` to `firstPoint[h + 1]`. */
  readonly firstPoint: Int32Array;
  private readonly firstIns: number;
  private readonly firstCom: number;
  private readonly unitOfHolder = new Map<number, number>();
  private readonly hallOfHolder = new Map<number, number>();

  constructor(private readonly site: CompiledSite) {
    this.points = [...feedingPoints(site)].sort((a, b) => a.holder - b.holder || a.slot - b.slot);
    this.firstIns = site.units.length * unitEntryIds.length;
    this.firstCom = this.firstIns + this.points.length;
    this.count = this.firstCom + site.gateways.length;
    this.firstPoint = new Int32Array(site.holders.length + 1);
    for (const point of this.points) this.add(point.holder + 1);
    for (let h = 0; h < site.holders.length; h += 1) this.add(h + 1, this.firstPoint[h]);
    site.units.forEach((unit, i) => this.unitOfHolder.set(unit.holder, i));
    site.halls.forEach((hall, i) => this.hallOfHolder.set(hall.holder, i));
  }

  ofUnit(unit: number): number {
    return unit * unitEntryIds.length;
  }

  ofPoint(point: number): number {
    return this.firstIns + point;
  }

  ofGateway(gateway: number): number {
    return this.firstCom + gateway;
  }

  /** The feeding point that an alarm is about, −1 where it is none of INS-1. */
  pointOf(alarm: number): number {
    return alarm >= this.firstIns && alarm < this.firstCom ? alarm - this.firstIns : -1;
  }

  /** `<unit, hall or gateway>:<entry>`, and `:<point>` where an entry judges many. */
  identity(alarm: number): AlarmIdentity {
    if (alarm < this.firstIns) return this.unitIdentity(alarm);
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

  private unitIdentity(alarm: number): AlarmIdentity {
    const unit = this.site.units[Math.floor(alarm / unitEntryIds.length)];
    const entry = unitEntryIds[alarm % unitEntryIds.length] ?? unitEntryIds[0];
    const id = unit?.id ?? '';
    return {
      alarm: `${id}:${entry}`,
      entry,
      unit: id,
      hall: this.hallId(unit?.hall),
      latching: catalogue[entry].latching,
    };
  }

  private pointIdentity(index: number): AlarmIdentity {
    const point = this.points[index] as FeedingPoint;
    const holder = this.site.holders[point.holder];
    const unit = this.site.units[this.unitOfHolder.get(point.holder) ?? -1];
    const hall = unit === undefined ? this.hallOfHolder.get(point.holder) : unit.hall;
    return {
      alarm: `${holder?.id ?? ''}:INS-1:${this.site.slots.pointId[point.slot] ?? ''}`,
      entry: 'INS-1',
      unit: unit?.id ?? null,
      hall: this.hallId(hall),
      latching: catalogue['INS-1'].latching,
    };
  }

  private gatewayIdentity(index: number): AlarmIdentity {
    const gateway = this.site.gateways[index];
    const units = gateway?.units ?? [];
    const first = this.site.units[units[0] ?? -1];
    return {
      alarm: `${gateway?.id ?? ''}:COM-1`,
      entry: 'COM-1',
      unit: units.length === 1 ? (first?.id ?? null) : null,
      hall: this.hallId(first?.hall),
      latching: catalogue['COM-1'].latching,
    };
  }

  private hallId(hall: number | undefined): string | null {
    return this.site.halls[hall ?? -1]?.id ?? null;
  }
}

import type { AlarmRecord } from '../alarm-lifecycle/alarm-record';
import { isSetAside } from '../alarm-lifecycle/mode-facts';
import type { PipelineState } from './pipeline-state';
import { endedByConfiguration } from './restore';
import type { SiteMaps } from './site-maps';

/** Standing alarms go on under the same name; those of what is gone end by configuration. */
export function takeOverAlarms(before: PipelineState, now: PipelineState, { alarms }: SiteMaps, nowMs: number): void {
  const placeNow = inverse(alarms.before);
  const kept: (readonly [place: number, record: AlarmRecord])[] = [];
  for (const was of before.book.indices()) {
    const record = before.book.record(was);
    if (record === null) continue;
    const place = placeNow.get(was);
    if (place === undefined) now.left.push(endedByConfiguration(record, nowMs));
    else kept.push([place, record]);
  }
  const active = new Set(
    kept.filter(([, record]) => record.active && !isSetAside(record)).map(([, { alarm }]) => alarm),
  );
  for (const [place, record] of kept) {
    const identity = now.index.identity(place);
    const foldedUnder = record.foldedUnder !== null && active.has(record.foldedUnder) ? record.foldedUnder : null;
    now.book.restore(place, identity, { ...record, unit: identity.unit, hall: identity.hall, foldedUnder });
  }
}

/** Alerts of what is gone go from the list. */
export function takeOverAlerts(before: PipelineState, now: PipelineState, { alarms }: SiteMaps, nowMs: number): void {
  const placeNow = inverse(alarms.before);
  for (const [was, alert] of before.alerts) {
    const place = placeNow.get(was);
    if (place !== undefined) now.alerts.set(place, alert);
    else if (alert.shown) now.alertChanges.push({ what: 'went', alert: alert.record, atMs: nowMs });
  }
}

const inverse = (before: Int32Array): ReadonlyMap<number, number> =>
  new Map([...before].flatMap((was, place) => (was < 0 ? [] : [[was, place] as const])));

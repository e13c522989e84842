import type { Readings } from '../plant/plant-readings';
import { siteId, type FleetUnit, type HallId } from '../scenario/demo-fleet';
import { planPayload, type PlannedValue } from './plan-payload';
import { tell } from './payload-row';

/** One message as it goes to the broker. `gateway`: over whose line; null: the building's own. */
export interface SimulatedMessage {
  readonly topic: string;
  readonly payload: string;
  readonly sourceMs: number;
  readonly retain: boolean;
  readonly gateway: string | null;
}

export const unitTopic = (unit: FleetUnit): string =>
  unit.hall === 'north' ? `${siteId}/north/${unit.id}/telemetry` : `${siteId}/south/${unit.id}`;
export const hallTopic = (hall: HallId): string => `${siteId}/${hall}/air`;
export const statusTopic = (gateway: string): string => `${siteId}/gateways/${gateway}/status`;
export const online = 'online';
export const offline = 'offline';

type Branch = Record<string, unknown>;
const plans = new WeakMap<FleetUnit, readonly PlannedValue[]>();

/** All points of a unit in one JSON object, as the gateways of its hall write it. */
export function unitMessage(
  unit: FleetUnit,
  readings: Readings,
  ambientPa: number,
  sourceMs: number,
): SimulatedMessage {
  const plan = plans.get(unit) ?? planPayload(unit);
  plans.set(unit, plan);
  const body: Branch = unit.hall === 'north' ? { time: new Date(sourceMs).toISOString() } : { ts: sourceMs / 1000 };
  for (const { point, path, tell: tellIt } of plan) {
    const value = readings.get(point);
    if (value !== undefined && Number.isFinite(value)) put(body, path, tellIt(value, ambientPa));
  }
  return { topic: unitTopic(unit), payload: JSON.stringify(body), sourceMs, retain: false, gateway: unit.gateway };
}

function put(body: Branch, path: readonly string[], value: unknown): void {
  let place = body;
  for (let i = 0; i < path.length - 1; i += 1) place = (place[path[i] as string] ??= {}) as Branch;
  place[path[path.length - 1] as string] = value;
}

export function hallMessages(hall: HallId, readings: Readings, sourceMs: number): SimulatedMessage[] {
  const value = (point: string): number => readings.get(point) ?? Number.NaN;
  const body = {
    time: new Date(sourceMs).toISOString(),
    barometer: tell.hPa(value('ambient.pressure'), 0),
    t: tell.celsius(value('hall.temperature'), 0),
    rh: tell.percent(value('hall.humidity'), 0),
  };
  return [{ topic: hallTopic(hall), payload: JSON.stringify(body), sourceMs, retain: false, gateway: null }];
}

export function statusMessage(gateway: string, isOnline: boolean, sourceMs: number): SimulatedMessage {
  const payload = isOnline ? online : offline;
  return { topic: statusTopic(gateway), payload, sourceMs, retain: true, gateway };
}

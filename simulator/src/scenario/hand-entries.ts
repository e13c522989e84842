import type { SimulatedMessage } from '../payload/messages';
import { siteId } from './demo-fleet';

/** Points that somebody reads by hand and sends as a bare number; the simulator publishes them only when told. */
export const handEntries = [
  { unit: 'N7', point: 'water.conductivity', topic: `${siteId}/bench/conductivity` },
] as const;

export function handMessage(unit: string, point: string, value: string, sourceMs: number): SimulatedMessage[] {
  return handEntries
    .filter((entry) => entry.unit === unit && entry.point === point)
    .map(({ topic }) => ({ topic, payload: value, sourceMs, retain: false, gateway: null }));
}

import { formatMoment } from './format-time';

/** A moment as a field of date and time has it, in a zone: `2026-03-01T13:00:00`. */
export const toZoneLocal = (iso: string, zone: string): string => formatMoment(iso, zone).replace(' ', 'T');

const fieldShape = /^\d{4,6}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?$/;

/**
 * The moment behind what such a field holds, ISO 8601 UTC; null where it holds none. Of an hour that comes twice
 * (clocks set back) one of the two is taken; one that never comes is moved by the hour that is left out.
 */
export function fromZoneLocal(local: string, zone: string): string | null {
  if (!fieldShape.test(local)) return null;
  const wanted = Date.parse(`${local.length === 16 ? `${local}:00` : local}Z`);
  if (!Number.isFinite(wanted)) return null;
  let at = wanted;
  for (let turn = 0; turn < 2; turn += 1) {
    const shown = Date.parse(`${toZoneLocal(new Date(at).toISOString(), zone)}Z`);
    at += wanted - shown;
  }
  return new Date(at).toISOString();
}

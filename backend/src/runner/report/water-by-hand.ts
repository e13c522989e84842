import type { WaterByHand } from '@ebbline/shared/contract/report';
import { handPoint, waterParameterIds, waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { HandRecord } from '../../evaluation/pipeline/hand-record';
import { isoOf } from './iso-of';

/**
 * The newest sample of each parameter of each unit as it was on record at a time: what was entered, corrected or withdrawn later does
 * not count. In the order of the units given, and of the parameters.
 */
export function waterByHandOf(
  records: readonly HandRecord[],
  units: readonly string[],
  untilMs: number,
): WaterByHand[] {
  const known = records.filter(({ enteredMs }) => enteredMs <= untilMs);
  const replaced = new Set(known.flatMap(({ corrects }) => (corrects === null ? [] : [corrects])));
  const newest = new Map<string, HandRecord>();
  for (const record of known) {
    if (record.value === null || replaced.has(record.id) || record.takenMs > untilMs) continue;
    const key = `${record.unit} ${record.parameter}`;
    // Of two of one moment the later entry stands.
    if (record.takenMs >= (newest.get(key)?.takenMs ?? Number.NEGATIVE_INFINITY)) newest.set(key, record);
  }
  return units.flatMap((unit) =>
    waterParameterIds.flatMap((parameter): WaterByHand[] => {
      const record = newest.get(`${unit} ${parameter}`);
      if (record === undefined || record.value === null) return [];
      const { by, takenMs, typed, note, value } = record;
      return [
        {
          ...{ unit, point: handPoint(parameter), title: waterParameters[parameter].title, value },
          unit_of_measure: waterParameters[parameter].unit,
          ...{ takenAt: isoOf(takenMs), ageSeconds: Math.max(0, (untilMs - takenMs) / 1000), by, note },
          method: typed?.method ?? null,
        },
      ];
    }),
  );
}

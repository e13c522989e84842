import { readingSchema } from '@ebbline/shared/contract/reading';
import { describe, expect, it } from 'vitest';
import type { HistoryRows } from '../../backend/src/evaluation/pipeline/history-rows';
import { toReading } from '../../backend/src/runner/views/to-reading';
import { Plant } from '../unit/backend/evaluation/pipeline/plant';

/** What a sender may write in the place of a number; JSON.parse makes ±Infinity of 1e999. */
const wrong = [
  ...['1e999', '-1e999', '1e308', '-1e308', '1e306', '1e15', '-1e15', '1e-320', '-0', '0'],
  ...['"NaN"', '"Infinity"', '""', '"x"', 'null', 'true', '{}', '[]'],
];
const fields = ['tSupply', 'tReturn', 'tFacility', 'pTank', 'pSeparator', 'flow', 'levelSeparator', 'levelTank'];
const ofRacks = ['p', 'power'];

/** Sends one second of the plant with the text of some numbers changed. */
function tell(plant: Plant, change: (telemetry: string) => string): void {
  const text = change(JSON.stringify({ time: plant.nowMs, ...plant.m1 }));
  const payload = new TextEncoder().encode(text);
  plant.pipeline.accept({ topic: 'plant/m1', payload, retained: false }, plant.nowMs);
}

const withField = (field: string, word: string) => (telemetry: string) =>
  telemetry.replace(new RegExp(`"${field}":[^,}]+`, 'g'), `"${field}":${word}`);

/** Numbers of the rows that no quality excuses, and how many rows there were. */
function unsound(rows: HistoryRows): readonly string[] {
  const found: string[] = [];
  rows.values.forEach((value, i) => {
    const quality = rows.quality[i] ?? -1;
    // 0: nothing, 1: good, 2: uncertain, 3: bad.
    const sound = quality === 1 || quality === 2 ? Number.isFinite(value) : Number.isNaN(value);
    if (!sound) found.push(`${value} with quality ${quality}`);
  });
  return found;
}

describe('wrong numbers in messages', () => {
  it.each([...fields, ...ofRacks])(
    'of %s come to no screen and no program as NaN or infinity, nor into history',
    (field) => {
      const plant = new Plant().run(70);
      plant.pipeline.drainHistory(plant.nowMs, true);
      let rows = 0;
      let badSeen = 0;
      plant.silent.add('m1');
      for (const word of wrong) {
        for (let s = 0; s < 3; s += 1) {
          plant.run(1, () => tell(plant, withField(field, word)));
          const readings = plant.pipeline.state.value.length;
          for (let slot = 0; slot < readings; slot += 1) {
            const reading = toReading(plant.pipeline, slot, plant.nowMs);
            const back = readingSchema.parse(JSON.parse(JSON.stringify(reading)));
            // JSON has no NaN and no infinity: they would come back as null.
            expect(back, `${reading.id} ${word}`).toEqual(reading);
            if (back.quality === 'bad') badSeen += 1;
            if (back.quality !== 'bad') expect(back.value, `${reading.id} ${word}`).not.toBeNull();
            if (back.value === null) expect(back.reasons.length, `${reading.id} ${word}`).toBeGreaterThan(0);
            if (back.reasons.includes('outOfRange')) expect(Math.abs(back.value ?? 0)).toBeLessThanOrEqual(1e9);
          }
        }
        const drained = plant.pipeline.drainHistory(plant.nowMs, true);
        rows += drained?.count ?? 0;
        if (drained !== null) expect(unsound(drained), `${field} ${word}`).toEqual([]);
      }
      expect(rows).toBeGreaterThan(wrong.length);
      expect(badSeen).toBeGreaterThan(0);
    },
    60_000,
  );

  it('leave the code of a broken wire to be seen, with its reason', () => {
    const plant = new Plant().run(5);
    plant.silent.add('m1');
    const told = (word: string) => {
      plant.run(1, () => tell(plant, withField('tSupply', word)));
      const slot = plant.site.slots.pointId.indexOf('supply.temperature');
      const { value, quality, reasons, expandedUncertainty } = toReading(plant.pipeline, slot, plant.nowMs);
      return { value, quality, reasons, expandedUncertainty };
    };
    expect(told('850')).toMatchObject({ value: 850, quality: 'bad', reasons: ['outOfRange'] });
    expect(told('1e306')).toEqual({ value: null, quality: 'bad', reasons: ['outOfRange'], expandedUncertainty: null });
  });
});

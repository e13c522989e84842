import { describe, expect, it } from 'vitest';
import type { HandRecord } from '../../../../../backend/src/evaluation/pipeline/hand-record';
import { waterByHandOf } from '../../../../../backend/src/runner/report/water-by-hand';

const hour = 3_600_000;
const untilMs = Date.UTC(2031, 4, 6, 12);
const record = (id: string, more: Partial<HandRecord> = {}): HandRecord => ({
  ...{
    id,
    unit: 'N1',
    parameter: 'copper',
    value: 0.00005,
    takenMs: untilMs - 4 * hour,
    enteredMs: untilMs - 3 * hour,
  },
  typed: { value: 0.05, unit: 'mg/L', as: null, sampleTemperature: null, method: 'laboratory' },
  ...{ by: 'Ines', station: 's', note: 'sheet 12', corrects: null },
  ...more,
});
const of = (...records: HandRecord[]) => waterByHandOf(records, ['N1', 'N2'], untilMs);
const values = (...records: HandRecord[]) => of(...records).map(({ unit, point, value }) => [unit, point, value]);

describe('values of the water by hand, as a shift hands them over', () => {
  it('have sample time, age, who and by which method', () => {
    expect(of(record('a'))).toEqual([
      {
        ...{ unit: 'N1', point: 'water.copper.hand', title: 'Copper', value: 0.00005, unit_of_measure: 'kg/m3' },
        ...{ takenAt: '2031-05-06T08:00:00.000Z', ageSeconds: 14_400, by: 'Ines', note: 'sheet 12' },
        method: 'laboratory',
      },
    ]);
  });

  it('are the newest sample of each, not the newest entry, by the order of units and parameters', () => {
    const older = { takenMs: untilMs - 9 * hour, enteredMs: untilMs - hour, value: 0.00009 };
    expect(
      values(record('a', { unit: 'N2' }), record('b'), record('c', older), record('d', { parameter: 'ph', value: 8 })),
    ).toEqual([
      ['N1', 'water.ph.hand', 8],
      ['N1', 'water.copper.hand', 0.00005],
      ['N2', 'water.copper.hand', 0.00005],
    ]);
  });

  it('are as they were then: what was corrected stands corrected, what was withdrawn gives way to the sample before', () => {
    const before = record('a', { takenMs: untilMs - 30 * hour, enteredMs: untilMs - 29 * hour, value: 0.00001 });
    const withdrawal = record('c', { value: null, typed: null, corrects: 'b', enteredMs: untilMs - hour });
    expect(values(before, record('b'), withdrawal)).toEqual([['N1', 'water.copper.hand', 0.00001]]);
    // Withdrawn after the end of the shift: then it still stood.
    expect(values(before, record('b'), { ...withdrawal, enteredMs: untilMs + hour })).toEqual([
      ['N1', 'water.copper.hand', 0.00005],
    ]);
    const correction = record('d', { value: 0.00002, corrects: 'b', enteredMs: untilMs - hour });
    expect(values(record('b'), correction)).toEqual([['N1', 'water.copper.hand', 0.00002]]);
  });

  it('say nothing of the method where none was said, as in entries of before there was one', () => {
    const typed = { value: 0.05, unit: 'mg/L', as: null, sampleTemperature: null };
    expect(of(record('a', { typed }))[0]?.method).toBeNull();
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  FloodMeter,
  floodBeginsAbove,
  floodEndsBelow,
  floodsOf,
} from '../../../../../backend/src/evaluation/alarm-performance/flood-meter';
import { mostInWindow } from '../../../../../backend/src/evaluation/alarm-performance/trailing-window';

const minutes = (times: readonly number[]): number[] => times.map((time) => time * 60_000);
const tenMinutes = 600_000;

/** Own form from the definition: at each annunciation and each expiry, what lies in (t − 10 min, t]. */
function floodsByHand(times: readonly number[], untilMs: number): { fromMs: number; toMs: number | null }[] {
  const looks = [...new Set([...times, ...times.map((time) => time + tenMinutes)])].sort((a, b) => a - b);
  const floods: { fromMs: number; toMs: number | null }[] = [];
  let open = false;
  for (const at of looks.filter((look) => look < untilMs)) {
    const count = times.filter((time) => time > at - tenMinutes && time <= at).length;
    const last = floods.at(-1);
    if (!open && count > 10) {
      floods.push({ fromMs: at, toMs: null });
      open = true;
    } else if (open && count < 5 && last !== undefined) {
      last.toMs = at;
      open = false;
    }
  }
  return floods;
}

describe('FloodMeter', () => {
  /**
   * al-flood-def: begins above 10 in ten minutes, ends below 5 (ANSI/ISA-18.2-2009, IEC 62682:2014). al-metrics-example, counted by
   * hand: at 9 min the window (−1, 9] holds all eleven; at 14 min (4, 14] holds those at 5, 6, 7, 8 and 9 = 5, which is not below 5;
   * at 15 min (5, 15] holds four.
   */
  it('finds the flood of the worked example: most 11, from 9 to 15 minutes', () => {
    const times = minutes([0, 1, 2, 3, 3.5, 4, 5, 6, 7, 8, 9, 30]);
    expect([floodBeginsAbove, floodEndsBelow]).toEqual([10, 5]);
    expect(mostInWindow(times, tenMinutes, 0, 31 * 60_000)).toBe(11);
    expect(floodsOf(times, 31 * 60_000)).toEqual([
      { fromMs: 540_000, toMs: 900_000, firstMs: 0, lastMs: 540_000, annunciations: 11, most: 11 },
    ]);
  });

  it('does not begin at ten, nor where the first of eleven is ten minutes old', () => {
    expect(floodsOf(minutes([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]), 9e9)).toEqual([]);
    expect(floodsOf(minutes([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]), 9e9)).toEqual([]);
  });

  it('goes on where as many come as go at one time', () => {
    // At 14 min five are left; at 15 min one of them goes and one comes: five again. At 16 min four are left.
    const times = minutes([0, 1, 2, 3, 3.5, 4, 5, 6, 7, 8, 9, 15]);
    expect(floodsOf(times, 9e9)[0]?.toMs).toBe(16 * 60_000);
  });

  it('has no end while it goes on', () => {
    expect(floodsOf(minutes([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]), 60_000)).toMatchObject([{ fromMs: 0, toMs: null }]);
  });

  it('takes a time before the last one for that one, as a clock may be set back', () => {
    const meter = new FloodMeter();
    for (let i = 0; i < 6; i += 1) meter.note(600_000);
    for (let i = 0; i < 5; i += 1) meter.note(10_000);
    expect(meter.flood).toMatchObject({ fromMs: 600_000, annunciations: 11 });
  });

  it('agrees with the count by the definition, whatever comes', () => {
    const time = fc.integer({ min: 0, max: 80 }).map((half) => half * 30_000);
    fc.assert(
      fc.property(fc.array(time, { maxLength: 90 }), (unordered) => {
        const times = [...unordered].sort((a, b) => a - b);
        const found = floodsOf(times, 9e9).map(({ fromMs, toMs }) => ({ fromMs, toMs }));
        expect(found).toEqual(floodsByHand(times, 9e9));
      }),
      { numRuns: 500 },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { margin3 } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/margin-3';
import { createFinding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import type { GroupContext } from '../../../../../../backend/src/evaluation/alarm-rules/group-context';
import { createHallMeans, createUnitMeans } from '../../../../../../backend/src/evaluation/alarm-rules/slow-means';
import { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { reasonBit } from '../../../../../../backend/src/evaluation/slots/quality-reasons';
import { createSlotState } from '../../../../../../backend/src/evaluation/slots/slot-state';

const hourS = 3600;

/** A hall whose units have so many hours left; null: nothing moves, 'bad': not known. */
function hall(...left: readonly (number | null | 'bad')[]): GroupContext {
  const state = createSlotState(left.length + 1);
  left.forEach((hours, unit) => {
    state.reasons[unit] = hours === null ? reasonBit.notApplicable : hours === 'bad' ? reasonBit.stale : 0;
    state.value[unit] = typeof hours === 'number' ? hours * hourS : Number.NaN;
  });
  const barometer = left.length;
  state.reasons[barometer] = 0;
  state.value[barometer] = 99_900;
  const hallMeans = createHallMeans(1);
  hallMeans.ambientPa.mean[0] = 101_000;
  return {
    site: {
      timeZone: 'Europe/Zurich',
      units: left.map((_, unit) => ({ name: `Unit ${unit}` })),
      halls: [{ slot: { ambientPressure: barometer } }],
    },
    state,
    group: 0,
    units: left.map((_, unit) => unit),
    unitSlots: left.map((_, unit) => ({ marginTimeToLimit: unit })),
    hallMeans,
    unitMeans: createUnitMeans(left.length),
    nowMs: Date.parse('2026-11-10T22:10:00Z'),
    alarm: 0,
  } as unknown as GroupContext;
}

const judged = (context: GroupContext, active = false) => {
  const finding = createFinding();
  margin3.judge(context, margin3.defaults, active, finding);
  return finding;
};

describe('MARGIN-3', () => {
  it('tells the first of a hall once, with hour and minute of the site’s own clock, how many follow, and the weather', () => {
    const context = hall(7, 6, null);
    expect(judged(context)).toMatchObject({ verdict: Verdict.yes, value: 6 * hourS, where: 'Unit 1' });
    // 22:10 UTC is 23:10 in Zurich in winter (IANA time zone data).
    expect(margin3.detail?.(context)).toBe(
      'Margin to limit at 2026-11-11 05:10: Unit 1. 1 more of the hall follows. The barometer stands 1.1 kPa below its mean of the last hours.',
    );
  });

  it('tells nothing that is more than eight hours ahead, and goes at ten', () => {
    expect(judged(hall(8.1)).verdict).toBe(Verdict.no);
    expect(judged(hall(9.9), true).verdict).toBe(Verdict.yes);
    expect(judged(hall(10.1), true).verdict).toBe(Verdict.no);
  });

  it('leaves what has passed its limit to MARGIN-1, and clears nothing because a trend is not known', () => {
    expect(judged(hall(0, null), true).verdict).toBe(Verdict.no);
    expect(judged(hall(null, 'bad'), true).verdict).toBe(Verdict.hold);
  });
});

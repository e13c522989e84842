import { describe, expect, test } from 'vitest';
import { drawLoadPhases, loadShareAt } from '../../../../simulator/src/scenario/day-profile';
import { seededRandom } from '../../../../simulator/src/scenario/seeded-random';

describe('the work of a day', () => {
  const phases = drawLoadPhases(8, seededRandom(1, 'work'));
  const day = Array.from({ length: 24 * 60 }, (_, minute) => loadShareAt(0.75, phases, 3, minute * 60));

  test('is busier in the afternoon than in the small hours', () => {
    const mean = (from: number): number =>
      day.slice(from * 60, (from + 4) * 60).reduce((sum, share) => sum + share, 0) / 240;
    expect(mean(13)).toBeGreaterThan(mean(1) + 0.08);
  });

  test('moves slowly: never more than 2 % of rated power in a minute', () => {
    for (let i = 1; i < day.length; i += 1) expect(Math.abs((day[i] ?? 0) - (day[i - 1] ?? 0))).toBeLessThan(0.02);
  });
});

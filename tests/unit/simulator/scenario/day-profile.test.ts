import { describe, expect, test } from 'vitest';
import { drawLoadPhases, loadShareAt } from '../../../../simulator/src/scenario/day-profile';
import { seededRandom } from '../../../../simulator/src/scenario/seeded-random';
import { drawWeatherPhases, surroundingsAt } from '../../../../simulator/src/scenario/surroundings';

const hour = 3600;

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

describe('the weather', () => {
  const phases = drawWeatherPhases(seededRandom(1, 'weather'));
  const pressure = Array.from(
    { length: 24 * 60 },
    (_, index) => surroundingsAt('north', phases, index * hour).ambientPa,
  );

  test('moves the barometer by about 0.74 kPa (deviation) and never faster than 0.36 kPa an hour', () => {
    const mean = pressure.reduce((sum, pa) => sum + pa, 0) / pressure.length;
    const deviation = Math.sqrt(pressure.reduce((sum, pa) => sum + (pa - mean) ** 2, 0) / pressure.length);
    expect(deviation).toBeGreaterThan(500);
    expect(deviation).toBeLessThan(900);
    for (let i = 1; i < pressure.length; i += 1) {
      expect(Math.abs((pressure[i] ?? 0) - (pressure[i - 1] ?? 0))).toBeLessThan(360);
    }
  });

  test('lies over both halls alike, while each hall has its own air', () => {
    const [north, south] = [surroundingsAt('north', phases, 9 * hour), surroundingsAt('south', phases, 9 * hour)];
    expect(north.ambientPa).toBe(south.ambientPa);
    expect(north.hallC).not.toBe(south.hallC);
  });
});

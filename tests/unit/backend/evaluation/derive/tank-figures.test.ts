import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import type { BuiltSite } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, runRichUnitM } from '../../../../helpers/rich-unit-m';

const stated = {
  accuracy: {
    'supplyTank.level': [0.003, Number.NaN],
    'separator.level': [0.003, Number.NaN],
  },
} as const;
const day = 86_400;

function step(built: BuiltSite, second: number, values: Readonly<Record<string, number>>): void {
  runRichUnitM(built, second * 1000);
  for (const [id, value] of Object.entries(values)) built.set(id, value, second * 1000);
  deriveHall(built.site, built.state, 0, second * 1000);
  deriveUnit(built.site, built.state, 0, second * 1000, false);
}

/** Nine hours at 2 free L/min over water of 45 °C at 32 kPa, with a litre topped up every three hours and so many litres a day that nobody knows of. */
function nineHours(unknownLitresADay: number): BuiltSite {
  const built = buildRichUnitM(stated);
  // By hand: 0.462 kg a day for each free L/min (Dalton), 990.2 kg/m³.
  const lostM3PerS = (2 * 0.462) / 990.2 / day;
  let level = 0.6;
  let topUp = 0.1;
  for (let second = 1; second <= 33_000; second += 1) {
    level += (unknownLitresADay / 1000 / day - lostM3PerS) / 0.17;
    if (second % 10_800 === 0) {
      topUp += 0.001;
      level += 0.001 / 0.17;
    }
    const waves = 0.0005 * Math.sin(second * 2.399);
    step(built, second, {
      'vacuum.exhaustFlow': 2 / 60_000,
      'separator.pressure': 32_000,
      'return.temperature': 45,
      'separator.level': level + waves,
      'supplyTank.level': 0.5,
      'topUp.volume': topUp,
    });
  }
  return built;
}

describe('the water balance of a loop', () => {
  it('closes where top-up and exhaust explain all that the tanks gain and lose', () => {
    const built = nineHours(0);
    const balance = built.value('waterBalance') * 1000 * day;
    expect(Math.abs(balance)).toBeLessThan(built.expandedUncertainty('waterBalance') * 1000 * day);
    expect(Math.abs(balance)).toBeLessThan(0.1);
    expect(Math.abs(built.value('waterBalanceSignificance'))).toBeLessThan(2);
    // What the tanks gain without the exhaust's share is no nothing.
    expect(built.value('loopWaterTrend') * 1000 * day).toBeCloseTo((-2 * 0.462) / 0.9902, 1);
  });

  it('finds five litres a day that come in from nowhere, as through a pinhole to the facility water', () => {
    const built = nineHours(5);
    expect(built.value('waterBalance') * 1000 * day).toBeCloseTo(5, 0);
    expect(built.value('waterBalanceSignificance')).toBeGreaterThan(2);
  });

  it('is warming until there are eight hours of it', () => {
    const built = buildRichUnitM(stated);
    for (let second = 1; second <= 100; second += 1) step(built, second, {});
    expect(built.reasons('waterBalance')).toBe(reasonBit.warming);
    expect(built.value('waterBalance')).toBeNaN();
  });
});

describe('time until a tank is empty or full', () => {
  /** The supply tank falls by so many mm a minute, its level with a noise of so many mm. */
  function falling(mmPerMinute: number, noiseMm: number): BuiltSite {
    const built = buildRichUnitM(stated);
    for (let second = 1; second <= 130; second += 1)
      step(built, second, {
        'supplyTank.level':
          0.5 - (mmPerMinute * second) / 60_000 + (noiseMm / 1000) * Math.sin(second * 2.399) * Math.SQRT2,
      });
    return built;
  }

  it('is told where its interval is narrow', () => {
    const built = falling(60, 0.5);
    expect(built.reasons('timeToEmpty')).toBe(0);
    // 80 L less what has gone, at 0.2 m² · 60 mm/min = 12 L/min.
    expect(built.value('timeToEmpty')).toBeCloseTo((80 - 12 * (130 / 60)) / 0.2, -1);
  });

  it('is undefined, with no value, where the tank surely falls but the interval says nothing', () => {
    let undefinedSeen = 0;
    for (const mmPerMinute of [0.3, 0.5, 0.8, 1.2, 2, 3]) {
      const built = falling(mmPerMinute, 2);
      const value = built.value('timeToEmpty');
      if (built.reasons('timeToEmpty') === reasonBit.undefined) undefinedSeen += 1;
      if (Number.isNaN(value)) continue;
      expect(built.expandedUncertainty('timeToEmpty')).toBeLessThan(Math.max(0.6 * value, 400));
    }
    expect(undefinedSeen).toBeGreaterThan(0);
  });

  it('is undefined while nothing surely falls: the rate is within its uncertainty', () => {
    expect(falling(0, 0.5).reasons('timeToEmpty')).toBe(reasonBit.undefined);
  });

  it('is back within ten seconds of a level of 0 that lasted twenty, and as sure as before within a minute', () => {
    const built = buildRichUnitM(stated);
    const level = (second: number): number =>
      0.5 - (60 * second) / 60_000 + (0.5 / 1000) * Math.sin(second * 2.399) * Math.SQRT2;
    let before = 0;
    for (let second = 1; second <= 214; second += 1) {
      step(built, second, { 'supplyTank.level': second > 130 && second <= 150 ? 0 : level(second) });
      if (second === 130) before = built.expandedUncertainty('timeToEmpty');
      if (second > 160) expect(built.reasons('timeToEmpty'), `${second}`).toBe(0);
      if (second > 160) expect(built.value('timeToEmpty') / ((80 - (12 * second) / 60) / 0.2)).toBeCloseTo(1, 0);
    }
    expect(built.expandedUncertainty('timeToEmpty')).toBeLessThan(1.2 * before);
    expect(built.value('timeToEmpty')).toBeCloseTo((80 - (12 * 214) / 60) / 0.2, -1);
  });
});

describe('water that leaves with the gas', () => {
  it('grows with the gas, and faster than the vapour pressure as the pressure comes near it', () => {
    const loss = (freeLpm: number, t: number, kPa: number): number => {
      const built = buildRichUnitM();
      step(built, 1, {
        'vacuum.exhaustFlow': freeLpm / 60_000,
        'return.temperature': t,
        'separator.pressure': kPa * 1000,
      });
      return built.value('exhaustWaterLoss');
    };
    expect(loss(4, 45, 32)).toBeCloseTo(2 * loss(2, 45, 32), 12);
    expect(loss(2, 45, 16)).toBeGreaterThan(2 * loss(2, 45, 32));
    expect(loss(2, 50, 32)).toBeGreaterThan(loss(2, 45, 32));
  });

  it('is no number where the water boils', () => {
    const built = buildRichUnitM();
    step(built, 1, { 'return.temperature': 60, 'separator.pressure': 15_000 });
    expect(built.value('exhaustWaterLoss')).toBeNaN();
    expect(built.reasons('exhaustWaterLoss')).toBe(reasonBit.outOfRange);
  });
});

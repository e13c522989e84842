import { describe, expect, it } from 'vitest';
import { ins2 } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/ins-2';
import { createFinding, type Finding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import { FollowMemory } from '../../../../../../backend/src/evaluation/alarm-rules/follow-memory';
import type { UnitContext } from '../../../../../../backend/src/evaluation/alarm-rules/judge-context';
import { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { Reference } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { createSlotState } from '../../../../../../backend/src/evaluation/slots/slot-state';

const slot = { barometer: 0, supply: 1, tank: 2 } as const;
const { absolute, gauge } = Reference;

interface Watched {
  readonly finding: Finding;
  readonly detail: string | null;
}

/**
 * Six hours of a low of 1.4 kPa over a loop whose supply main stands at 84 kPa and whose tank stands at 78 kPa. `told`: absolute
 * pressures as they are worked out, kPa, of the sensor and of the tank.
 */
function low(
  told: (barometer: number) => readonly [supply: number, tank: number],
  references: readonly [supply: number, tank: number] = [gauge, absolute],
  fallKPa = 1.4,
): Watched {
  const state = createSlotState(3);
  state.reasons.fill(0);
  const context = {
    follow: new FollowMemory(2),
    site: {
      slots: { reference: [absolute, ...references], pointId: ['ambient.pressure', 'supply.pressure', 'tank'] },
      halls: [{ slot: { ambientPressure: slot.barometer } }],
    },
    slots: {
      supplyPressure: slot.supply,
      supplyTankPressure: slot.tank,
      supplyTankLevel: -1,
      returnPressure: -1,
      separatorPressure: -1,
    },
    state,
    unit: { hall: 0 },
    unitIndex: 0,
    nowMs: 0,
  } as unknown as UnitContext;
  const finding = createFinding();
  for (let minute = 0; minute <= 360; minute += 1) {
    const barometer = 101.3 - (fallKPa * minute) / 360;
    const noise = minute % 2 === 0 ? 0.03 : -0.03;
    const [supply, tank] = told(barometer);
    state.value[slot.barometer] = 1000 * barometer;
    state.value[slot.supply] = 1000 * (supply + noise);
    state.value[slot.tank] = 1000 * tank;
    context.nowMs = minute * 60_000;
    ins2.judge(context, ins2.defaults, false, finding);
  }
  return { finding, detail: ins2.detail?.(context) ?? null };
}

describe('INS-2', () => {
  it('names the gauge sensor that counts from shut-in air: with today’s barometer added it falls as that does', () => {
    // Plugged at 101.3 kPa: it goes on telling 84 − 101.3.
    const { detail, finding } = low((barometer) => [84 - 101.3 + barometer, 78]);
    expect(finding).toMatchObject({ verdict: Verdict.yes, where: 'supply.pressure' });
    expect(finding.value).toBeCloseTo(1, 1);
    expect(detail).toMatch(/^supply\.pressure follows the barometer: of some 0\.8 kPa .* it took up 0\.8 kPa/);
  });

  it('is not raised by a sensor that feels the room, nor by one that drifts against the weather by half of it', () => {
    expect(low(() => [84, 78]).finding.verdict).toBe(Verdict.no);
    expect(low((barometer) => [84 + 0.5 * (barometer - 101.3), 78]).finding.verdict).toBe(Verdict.no);
    expect(low((barometer) => [84 + 3 * (barometer - 101.3), 78]).finding.verdict).toBe(Verdict.no);
  });

  it('names the tank’s sensor where that is the sealed gauge of two', () => {
    const { finding } = low((barometer) => [84, 78 - 101.3 + barometer], [gauge, gauge]);
    expect(finding).toMatchObject({ verdict: Verdict.yes, where: 'tank' });
  });

  it('says nothing in calm air, where nothing can be told, and nothing of absolute sensors, which have no vent', () => {
    expect(low((barometer) => [84 - 101.3 + barometer, 78], [gauge, absolute], 0.3).finding.verdict).toBe(Verdict.hold);
    expect(low((barometer) => [84 - 101.3 + barometer, 78], [absolute, absolute]).finding.verdict).toBe(Verdict.no);
  });
});

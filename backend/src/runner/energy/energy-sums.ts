import {
  energyQuantities,
  type EnergyPeriod,
  type EnergyQuantity,
  type EnergyTotal,
} from '@ebbline/shared/contract/energy';

/** One energy in the making. */
export interface EnergySum {
  /** J. */
  energy: number;
  /** J, k = 2, over `uncertainSeconds` of the measured ones. */
  uncertainty: number;
  uncertainSeconds: number;
  measuredSeconds: number;
  wantedSeconds: number;
}

/** One period in the making. */
export interface PeriodSum {
  readonly startMs: number;
  readonly endMs: number;
  readonly of: Readonly<Record<EnergyQuantity, EnergySum>>;
  /** J, over what has both: heat removed, and electrical energy of the unit. */
  commonHeat: number;
  commonPower: number;
}

const nothing = (): EnergySum => ({
  energy: 0,
  uncertainty: 0,
  uncertainSeconds: 0,
  measuredSeconds: 0,
  wantedSeconds: 0,
});

export const emptyPeriod = (startMs: number, endMs: number): PeriodSum => ({
  startMs,
  endMs,
  of: { heatRemoved: nothing(), facilityHeat: nothing(), chipEnergy: nothing(), unitEnergy: nothing() },
  commonHeat: 0,
  commonPower: 0,
});

/** All periods as one. */
export function overall(periods: readonly PeriodSum[]): PeriodSum {
  const sum = emptyPeriod(periods[0]?.startMs ?? 0, periods.at(-1)?.endMs ?? 0);
  for (const period of periods) {
    for (const quantity of energyQuantities) {
      const [into, from] = [sum.of[quantity], period.of[quantity]];
      into.energy += from.energy;
      into.uncertainty += from.uncertainty;
      into.uncertainSeconds += from.uncertainSeconds;
      into.measuredSeconds += from.measuredSeconds;
      into.wantedSeconds += from.wantedSeconds;
    }
    sum.commonHeat += period.commonHeat;
    sum.commonPower += period.commonPower;
  }
  return sum;
}

/** An uncertainty that is known for this share of what was measured stands for all of it. Own rule. */
const enough = 0.99;

function toTotal(sum: EnergySum): EnergyTotal {
  const { energy, uncertainty, uncertainSeconds, measuredSeconds, wantedSeconds } = sum;
  const isMeasured = measuredSeconds > 0;
  const isSure = isMeasured && uncertainSeconds >= enough * measuredSeconds;
  return {
    energy: isMeasured ? energy : null,
    expandedUncertainty: isSure ? (uncertainty * measuredSeconds) / uncertainSeconds : null,
    measuredSeconds,
    wantedSeconds,
    share: wantedSeconds > 0 ? Math.min(1, measuredSeconds / wantedSeconds) : null,
  };
}

export const toEnergyPeriod = ({ startMs, endMs, of, commonHeat, commonPower }: PeriodSum): EnergyPeriod => ({
  start: new Date(startMs).toISOString(),
  end: new Date(endMs).toISOString(),
  heatRemoved: toTotal(of.heatRemoved),
  facilityHeat: toTotal(of.facilityHeat),
  chipEnergy: toTotal(of.chipEnergy),
  unitEnergy: toTotal(of.unitEnergy),
  heatPerUnitEnergy: commonPower > 0 ? commonHeat / commonPower : null,
});

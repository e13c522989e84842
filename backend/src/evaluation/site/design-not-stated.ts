import type { UnitDesign } from './compiled-site';

/** Figures that a site file may leave out: what is taken, or null where nothing can be judged without. */
export const designNotStated = {
  openingDischargeCoefficient: 0.7,
  volumes: {
    supplyToReturnM3: null,
    waterM3: null,
    separatorGasM3: null,
    supplyTankGasM3: null,
    supplyTankUsableM3: null,
    separatorRoomM3: null,
    supplyTankUsualLevelM: null,
    separatorUsualLevelM: null,
  },
  commissioned: {
    by: null,
    on: null,
    loopLossPa: null,
    loopExponent: 2,
    filterLossPa: null,
    filterExponent: 2,
    uaWPerK: null,
    uaLoopMassFlowKgPerS: null,
    uaFacilityMassFlowKgPerS: null,
    uaExponent: 0.75,
    gasLoadM3PerS: null,
    pumpEfficiency: null,
    plateResistanceKPerW: null,
    plateResistanceFixedKPerW: 0,
    plateExponent: 0.8,
  },
  supplyClassLimitC: null,
  plateLimitC: null,
  facilityDesignSupplyC: null,
  filterRatingPa: null,
  plateHeatCapacityJPerK: null,
  fanPath: null,
} as const satisfies Partial<UnitDesign>;

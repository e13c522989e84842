import { equalShares } from '@ebbline/shared/heat/conductance';
import type { CompiledUnit } from '../site/compiled-site';

interface SiteFigure {
  /** UCUM code. */
  readonly unit: string;
  readonly of: (unit: CompiledUnit) => number | null | undefined;
}

const figure = (unit: string, of: SiteFigure['of']): SiteFigure => ({ unit, of });

/** Figures of a unit's part of the site file that derived points are worked out from, by their keys; null where not stated. */
export const siteFigures = {
  ratedFlow: figure('m3/s', ({ design }) => design.ratedFlowM3PerS),
  ratedHeat: figure('W', ({ design }) => design.ratedHeatW),
  'elevations.supplyTankSurface': figure('m', ({ design }) => design.supplyTankSurfaceM),
  'elevations.separatorSurface': figure('m', ({ design }) => design.separatorSurfaceM),
  'elevations.returnInlet': figure('m', ({ design }) => design.returnInletM),
  'elevations.pumpInlet': figure('m', ({ design }) => design.pumpInletM),
  'elevations.supplySensor': figure('m', ({ design }) => design.supplySensorM),
  'elevations.returnSensor': figure('m', ({ design }) => design.returnSensorM),
  'elevations.accuracy': figure('m', ({ design }) => design.elevationAccuracyM),
  'pump.npshLimit': figure('m', ({ design }) => design.npshLimitM),
  'pump.suctionLoss': figure('Pa', ({ design }) => design.pumpSuctionLossPa),
  'tanks.supplyArea': figure('m2', ({ design }) => design.supplyTankAreaM2),
  'tanks.separatorArea': figure('m2', ({ design }) => design.separatorAreaM2),
  'tanks.supplyUsualLevel': figure('m', ({ design }) => design.volumes.supplyTankUsualLevelM),
  'tanks.separatorUsualLevel': figure('m', ({ design }) => design.volumes.separatorUsualLevelM),
  'volumes.supplyToReturn': figure('m3', ({ design }) => design.volumes.supplyToReturnM3),
  'transit.platesToReturn': figure('m3', ({ design }) => design.transit.platesToReturnM3),
  'transit.storedHeat': figure('J/K', ({ design }) => design.transit.storedHeatJPerK),
  'transit.spread': figure('1', ({ design }) => design.transit.frontSpread),
  'transit.plateLag': figure('s', ({ design }) => design.transit.plateLagS),
  'transit.sensorLag': figure('s', ({ design }) => design.transit.sensorLagS),
  'volumes.water': figure('m3', ({ design }) => design.volumes.waterM3),
  'volumes.separatorGas': figure('m3', ({ design }) => design.volumes.separatorGasM3),
  'volumes.supplyTankGas': figure('m3', ({ design }) => design.volumes.supplyTankGasM3),
  'volumes.supplyTankUsable': figure('m3', ({ design }) => design.volumes.supplyTankUsableM3),
  'volumes.separatorRoom': figure('m3', ({ design }) => design.volumes.separatorRoomM3),
  hoseBore: figure('m', ({ design }) => design.hoseBoreM),
  openingDischargeCoefficient: figure('1', ({ design }) => design.openingDischargeCoefficient),
  plateWallResistance: figure('K/W', ({ design }) => design.plateWallResistanceKPerW),
  plateHeatCapacity: figure('J/K', ({ design }) => design.plateHeatCapacityJPerK),
  plateLimit: figure('Cel', ({ design }) => design.plateLimitC),
  'fanPath.resistance': figure('K/W', ({ design }) => design.fanPath?.resistanceKPerW),
  'commissioning.loop.loss': figure('Pa', ({ design }) => design.commissioned.loopLossPa),
  'commissioning.loop.exponent': figure('1', ({ design }) => design.commissioned.loopExponent),
  'commissioning.filter.loss': figure('Pa', ({ design }) => design.commissioned.filterLossPa),
  'commissioning.filter.exponent': figure('1', ({ design }) => design.commissioned.filterExponent),
  'commissioning.exchanger.ua': figure('W/K', ({ design }) => design.commissioned.uaWPerK),
  'commissioning.exchanger.loopFlow': figure('kg/s', ({ design }) => design.commissioned.uaLoopMassFlowKgPerS),
  'commissioning.exchanger.facilityFlow': figure('kg/s', ({ design }) => design.commissioned.uaFacilityMassFlowKgPerS),
  'commissioning.exchanger.exponent': figure('1', ({ design }) => design.commissioned.uaExponent),
  'commissioning.exchanger.films.loop': figure(
    '1',
    ({ design }) => (design.commissioned.uaFit?.shares ?? equalShares).film1,
  ),
  'commissioning.exchanger.films.facility': figure(
    '1',
    ({ design }) => (design.commissioned.uaFit?.shares ?? equalShares).film2,
  ),
  'commissioning.exchanger.films.wall': figure(
    '1',
    ({ design }) => (design.commissioned.uaFit?.shares ?? equalShares).wall,
  ),
  'commissioning.exchanger.area': figure('m2', ({ design }) => design.commissioned.uaAreaM2),
  'commissioning.filter.temperature': figure('Cel', ({ design }) => design.commissioned.filterTemperatureC),
  'commissioning.pump.flow': figure('m3/s', ({ design }) => design.commissioned.pump?.flowM3PerS),
  'commissioning.pump.speed': figure('1', ({ design }) => design.commissioned.pump?.speed),
  'commissioning.pump.rise': figure('Pa', ({ design }) => design.commissioned.pump?.risePa),
  'commissioning.pumpEfficiency': figure('1', ({ design }) => design.commissioned.pumpEfficiency),
  'mains.bore': figure('m', ({ design }) => design.mains?.boreM),
  'mains.length': figure('m', ({ design }) => design.mains?.lengthM),
  'mains.roughness': figure('m', ({ design }) => design.mains?.roughnessM),
  plateFullPower: figure('W', ({ design }) => design.plateFullPowerW),
  chipArea: figure('m2', ({ design }) => design.chipAreaM2),
  'plateChannel.ratedFlow': figure('m3/s', ({ design }) => design.plateChannel?.ratedFlowM3PerS),
  'plateChannel.wettedArea': figure('m2', ({ design }) => design.plateChannel?.wettedAreaM2),
  'plateChannel.wallResistance': figure('K/W', ({ design }) => design.plateChannel?.wallResistanceKPerW),
  'plateChannel.width': figure('m', ({ design }) => design.plateChannel?.channel?.widthM),
  'plateChannel.height': figure('m', ({ design }) => design.plateChannel?.channel?.heightM),
  'plateChannel.count': figure('1', ({ design }) => design.plateChannel?.channel?.count),
  'commissioning.gasLoad': figure('m3/s', ({ design }) => design.commissioned.gasLoadM3PerS),
  'commissioning.plate.resistance': figure('K/W', ({ design }) => design.commissioned.plateResistanceKPerW),
  'commissioning.plate.fixed': figure('K/W', ({ design }) => design.commissioned.plateResistanceFixedKPerW),
  'commissioning.plate.exponent': figure('1', ({ design }) => design.commissioned.plateExponent),
  'vacuumSource.count': figure('1', ({ vacuumSource }) => vacuumSource?.count),
  'vacuumSource.sealWaterTemperature': figure('Cel', ({ vacuumSource }) => vacuumSource?.sealWaterC),
} as const satisfies Readonly<Record<string, SiteFigure>>;

export type SiteFigureKey = keyof typeof siteFigures;

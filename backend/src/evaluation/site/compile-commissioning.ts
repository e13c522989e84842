import type { UnitInFile } from '@ebbline/shared/contract/site-file-unit';
import { dayStartMs } from '@ebbline/shared/clock/days-from-civil';
import type { Commissioned, KnownGood, UnitTransit, UnitVolumes } from './compiled-unit';
import { designNotStated } from './design-not-stated';
import { compileRecords } from './compile-records';
import { siOr, siOrNull } from './read-quantities';

/** Volumes and the levels at which they hold; null where the file does not say. */
export function compileVolumes({ volumes = {}, tanks = {} }: UnitInFile): UnitVolumes {
  const volume = (text: string | undefined): number | null => siOrNull(text, 'volume');
  return {
    supplyToReturnM3: volume(volumes.supplyToReturn),
    waterM3: volume(volumes.water),
    separatorGasM3: volume(volumes.separatorGas),
    supplyTankGasM3: volume(volumes.supplyTankGas),
    supplyTankUsableM3: volume(volumes.supplyTankUsable),
    separatorRoomM3: volume(volumes.separatorRoom),
    supplyTankUsualLevelM: siOrNull(tanks.supplyUsualLevel, 'length'),
    separatorUsualLevelM: siOrNull(tanks.separatorUsualLevel, 'length'),
  };
}

/** What stores and spreads a change of temperature on the water's way. */
export function compileTransit({ transit = {} }: UnitInFile): UnitTransit {
  const usual = designNotStated.transit;
  return {
    platesToReturnM3: siOrNull(transit.platesToReturn, 'volume'),
    storedHeatJPerK: siOr(transit.storedHeat, 'heatCapacity', usual.storedHeatJPerK),
    frontSpread: transit.spread ?? usual.frontSpread,
    plateLagS: siOrNull(transit.plateLag, 'duration'),
    sensorLagS: siOr(transit.sensorLag, 'duration', usual.sensorLagS),
  };
}

/** The commissioning record; exponents have the trade's usual values where the file gives none. */
export function compileCommissioning(unit: UnitInFile, ratedFlowM3PerS: number): Commissioned {
  const { commissioning = {} } = unit;
  const { plate = {} } = commissioning;
  const usual = designNotStated.commissioned;
  return {
    by: commissioning.by ?? null,
    on: commissioning.on ?? null,
    ...compileRecords(unit, ratedFlowM3PerS),
    gasLoadM3PerS: siOrNull(commissioning.gasLoad, 'freeAirFlow'),
    pumpEfficiency: siOrNull(commissioning.pumpEfficiency, 'ratio'),
    plateResistanceKPerW: siOrNull(plate.resistance, 'thermalResistance'),
    plateResistanceFixedKPerW: siOr(plate.fixed, 'thermalResistance', usual.plateResistanceFixedKPerW),
    plateExponent: plate.exponent ?? usual.plateExponent,
  };
}

/** Hours that are learnt from where the file does not say: a day with its load. */
const usualHours = 24;

/** The period that an engineer calls sound; null where the file names none. */
export const compileKnownGood = ({ knownGood }: UnitInFile): KnownGood | null =>
  knownGood === undefined ? null : { fromMs: dayStartMs(knownGood.from ?? ''), hours: knownGood.hours ?? usualHours };

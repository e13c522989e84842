import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import type { TightnessOutcome } from '../../../../../../backend/src/evaluation/pipeline/tightness-record';
import { Plant, plantSite } from '../plant';

export const lpm = 1 / 60_000;
/** Gas room of the plant at its level of 0.6 m, m³, and temperature of everything, °C. */
const gasM3 = 0.51;
const restC = 25;

export const tightSite = (more: object = {}, points: object = {}) =>
  plantSite({
    unit: {
      tanks: { separatorArea: '0.25 m2', supplyArea: '0.3 m2', separatorUsualLevel: '0.6 m' },
      volumes: { water: '488 L', separatorGas: '510 L', supplyTankGas: '80 L' },
      ...more,
    },
    points,
  });

/** Noise of ±1 that repeats itself: a sum of sines, so that no chance is in it. */
const noise = (second: number): number => (Math.sin(second * 2.399) + Math.sin(second * 5.1 + 1)) / Math.SQRT2;

/** A loop at rest under vacuum: source off, pump off, no flow, as warm as the room. */
export function plantAtRest(site = tightSite(), seconds = 70): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, {
    tSupply: restC,
    tReturn: restC,
    pSeparator: 20,
    flow: 0,
    vacuumSpeed: 0,
    vacuumRunning: false,
    pumpRunning: false,
  });
  return plant.run(seconds);
}

export const start = (plant: Plant, more: object = {}): TightnessOutcome =>
  plant.pipeline.actOnTightness(
    {
      kind: 'startTightness',
      unit: 'm1',
      plannedMs: 30 * 60_000,
      acceptanceLimitM3PerS: 0.16 * lpm,
      dry: false,
      sourceIsolated: false,
      gasVolumeM3: null,
      operator: 'Ada',
      station: 's',
      comment: '',
      ...more,
    },
    plant.nowMs,
  );

/** What a leak of so many free L/min makes of the separator's pressure: ideal gas at rest temperature. */
export function leak(plant: Plant, freeLpm: number, seconds: number, more: (second: number) => void = () => undefined) {
  const perSecondKpa = ((freeLpm * lpm * 101.325) / gasM3) * ((restC + 273.15) / 293.15);
  const from = plant.m1.pSeparator;
  plant.run(seconds, (second) => {
    plant.m1.pSeparator = from + perSecondKpa * second + 0.05 * noise(second);
    more(second);
  });
}

export const vapourKpa = saturationPressure(celsius(restC)) / 1000;

import { dayMeans, hourlyMeans, tenMinuteMeans, type BucketMeans } from '../means/bucket-means';
import { createLoopWaterMemory, type LoopWaterMemory } from './loop-water';
import { createRunMemory, type RunMemory } from './run-memory';
import { createSetPointMemory, type SetPointMemory } from './set-point-memory';
import { createTransferMemory, type TransferMemory } from './transfer-memory';

/** What the rules of the plant's machines remember between seconds, columns by unit. Written in place. */
export interface PlantMemory {
  readonly runs: RunMemory;
  readonly setPoints: SetPointMemory;
  readonly transfers: TransferMemory;
  readonly facilityFlow: BucketMeans;
  readonly facilityValve: BucketMeans;
  readonly facilityFlowOfDay: BucketMeans;
  readonly facilityValveOfDay: BucketMeans;
  readonly filterResistance: BucketMeans;
  readonly filterPressureDrop: BucketMeans;
  readonly pumpEfficiency: BucketMeans;
  readonly uaRatio: BucketMeans;
  readonly valveAtLoad: BucketMeans;
  readonly loopWater: LoopWaterMemory;
}

export function createPlantMemory(units: number): PlantMemory {
  return {
    runs: createRunMemory(units),
    setPoints: createSetPointMemory(units),
    transfers: createTransferMemory(units),
    facilityFlow: tenMinuteMeans(units),
    facilityValve: tenMinuteMeans(units),
    facilityFlowOfDay: hourlyMeans(units),
    facilityValveOfDay: hourlyMeans(units),
    filterResistance: tenMinuteMeans(units),
    filterPressureDrop: tenMinuteMeans(units),
    pumpEfficiency: dayMeans(units),
    uaRatio: dayMeans(units),
    valveAtLoad: dayMeans(units),
    loopWater: createLoopWaterMemory(units),
  };
}

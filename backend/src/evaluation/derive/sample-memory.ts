import { releasedAir } from '@ebbline/shared/fluid-properties/dissolved-air';
import { freeAirK } from '@ebbline/shared/fluid-properties/air';
import { zeroCelsiusK } from '@ebbline/shared/units/constants';
import { modes } from '@ebbline/shared/contract/http-api';
import { gasAllowed } from './gas-allowed';
import { WindowSignal, type DeriveMemory } from './memory/derive-memory';
import { readGas } from './read-gas';
import { sampleWatch } from './sample-watch';
import type { UnitFrame } from './unit-frame';

const filling = modes.indexOf('filling');

/** Takes this second's sample of everything that is watched over time, once for each time, and what gas comes and goes. */
export function sampleMemory(frame: UnitFrame): void {
  const { memory, plan, tally, state } = frame;
  const { slot, unitIndex } = plan;
  const elapsedS = memory?.advance(unitIndex, frame.nowMs) ?? 0;
  frame.elapsedS = elapsedS;
  const separatorLevel = slot['separator.level'] < 0 ? Number.NaN : tally.take(state, slot['separator.level']);
  readGas(frame, separatorLevel);
  frame.watchTurn = true;
  if (memory !== null && elapsedS > 0) sampleTransit(frame, memory);
  frame.transit.read(frame);
  if (memory === null) return;
  sampleWatch(frame, memory);
  if (elapsedS === 0) return;
  if (slot['supplyTank.level'] >= 0)
    memory.windows.push(
      memory.signal(unitIndex, WindowSignal.supplyLevel),
      tally.take(state, slot['supplyTank.level']),
    );
  if (slot['separator.level'] >= 0)
    memory.windows.push(memory.signal(unitIndex, WindowSignal.separatorLevel), separatorLevel);
  if (plan.tankVolumes.length > 0)
    memory.windows.push(memory.signal(unitIndex, WindowSignal.tankVolume), volumeOfTanks(frame));
  countFills(frame, memory);
  memory.gas.spend(unitIndex, frame.gasComing.value - gasAllowed(frame, true), elapsedS);
  tally.begin();
}

/** Beyond so many times the rated flow, or so much heat, W, a reading is wild: own rule. Its sum would outlast it for good. */
const wildShare = 10;
const mostHeatW = 1e9;

/** The chips' power is that of the last step, as it is worked out after this one: a second of twenty. Wild readings are none. */
function sampleTransit(frame: UnitFrame, memory: DeriveMemory): void {
  const { plan, state, transitSample: sample } = frame;
  if (plan.transit === null) return;
  const power = plan.slot.chipPower;
  const most = plan.unit.design.ratedFlowM3PerS * wildShare;
  sample.flowM3PerS = Math.abs(frame.flow) <= most ? Math.max(0, frame.flow) : Number.NaN;
  sample.supplyC = Number.isNaN(frame.supplyDensity) ? Number.NaN : frame.supplyTemperature;
  sample.returnC = Number.isNaN(frame.returnDensity) ? Number.NaN : frame.returnTemperature;
  const heatW = power < 0 ? Number.NaN : (state.value[power] as number);
  sample.heatW = Math.abs(heatW) <= mostHeatW ? heatW : Number.NaN;
  const { sliceM3, plateLagS, sensorLagS } = plan.transit;
  memory.transit.push(plan.unitIndex, frame.nowMs, sliceM3, sample, plateLagS, sensorLagS);
}

/** Water in the tanks that the site file lists one by one, m³. Takes its inputs. */
export function volumeOfTanks(frame: UnitFrame): number {
  let sum = 0;
  for (const { areaM2, slot } of frame.plan.tankVolumes) sum += areaM2 * frame.tally.take(frame.state, slot);
  return sum;
}

/**
 * New water brings its air with it: by the top-up counter where there is one, else a whole filling when the mode leaves
 * `filling`. It came in saturated at ambient pressure and is drawn down to the separator's.
 */
function countFills(frame: UnitFrame, memory: DeriveMemory): void {
  const { plan, tally, state, site } = frame;
  const { slot, unitIndex, unit } = plan;
  const mode = slot.mode < 0 ? Number.NaN : tally.take(state, slot.mode);
  const left = memory.lastMode[unitIndex] === filling && mode !== filling && !Number.isNaN(mode);
  if (!Number.isNaN(mode)) memory.lastMode[unitIndex] = mode;
  const counter = slot['topUp.volume'];
  let filled = 0;
  if (counter >= 0)
    filled = memory.topUps.push(
      unitIndex,
      frame.nowMs,
      tally.take(state, counter),
      site.slots.maximum[counter] ?? Infinity,
      unit.design.volumes.waterM3 ?? Infinity,
    );
  else if (left) filled = unit.design.volumes.waterM3 ?? 0;
  if (filled === 0) return;
  const release = releasedAir(frame.returnTemperature, frame.ambient.pressure, frame.separatorPressure);
  memory.gas.addFill(unitIndex, filled * release * (freeAirK / zeroCelsiusK));
}

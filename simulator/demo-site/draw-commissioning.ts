import type { PlantParameters } from '../src/plant/plant-parameters';
import { headPaPerM } from '../src/plant/water';
import type { PlantTypeId } from '../src/scenario/unit-parameters';
import { within, type RandomSource } from '../src/sensors/random-source';
import { exchangerRecords, filterRecords, pumpRecord } from './draw-records';
import { lossShare, ratedHeatKW, resistanceShare } from './survey';

/** Commissioning records of a type, as a team with good instruments would have found them. */
export function drawCommissioning(
  id: PlantTypeId,
  type: PlantParameters,
  shape: 'a' | 'b' | 'c',
  source: RandomSource,
): string {
  const { lossPa, exchanger, chip } = type;
  const share = (value: number, half: number): number => value * (1 + half * within(source));
  const kPa = (pa: number): string => `${(share(pa, lossShare) / 1000).toFixed(2)} kPa`;
  const loopPa = 2 * lossPa.main + 2 * lossPa.hoseAndManifold + lossPa.restrictor + lossPa.platesAndHoses;
  const kgPerS = exchanger.referenceKgPerS.toFixed(id === 'bench' ? 4 : 2);
  const kPerW = (value: number): string => `${value.toFixed(4)} K/W`;
  // the chip's power counts, and fans take a part of it
  const resistance = share((chip.fixedKPerW + chip.flowKPerW) * waterShare(id, type), resistanceShare);
  const fanRow = chip.fans
    ? `    fanPath: { resistance: ${share(1 / chip.fans.fullWPerK, resistanceShare).toFixed(3)} K/W }\n`
    : '';
  return `    plateHeatCapacity: ${share(chip.heatJPerK, 0.05).toFixed(0)} J/K
    plateLimit: ${chip.tripC ?? chip.throttleC} °C
${fanRow}    commissioning:
      by: commissioning team
      on: '2025-11-18'
      loop: { loss: ${kPa(loopPa)}, exponent: 2 }
${shape === 'b' ? '' : instead(filterRecords(id, type), `      filter: { loss: ${kPa(lossPa.filter)}, exponent: 2 }\n`)}${instead(exchangerRecords(id, type), `      exchanger: { ua: ${share(exchanger.uaWPerK, resistanceShare).toFixed(0)} W/K, loopFlow: ${kgPerS} kg/s, facilityFlow: ${kgPerS} kg/s, exponent: 0.75 }\n`)}${pumpRow(id, type, share)}${pumpRecord(id, type)}      plate: { resistance: ${kPerW(resistance)}, fixed: ${kPerW(resistance / 2)}, exponent: 0.8 }
    knownGood: { from: '2025-11-18', hours: 24 }
`;
}

/** Records in place of one figure, which was drawn all the same: what is drawn after it stays what it was. */
const instead = (records: string | null, one: string): string => records ?? one;

/** Of the chips' power, what goes into the water. */
function waterShare(id: PlantTypeId, type: PlantParameters): number {
  const chipsW = type.racks * type.serversPerRack * type.chipsPerServer * type.chipPowerW;
  return Math.min(1, (1000 * ratedHeatKW[id]) / chipsW);
}

/** Wire to water at rated flow, where it was measured: for the big units of shape (a). */
function pumpRow(id: PlantTypeId, type: PlantParameters, share: (value: number, half: number) => number): string {
  if (id !== 'M' && id !== 'H') return '';
  const { set, elevationM, lossPa, pump, ratedFlowM3PerS } = type;
  const lift = (elevationM.delivery - elevationM.separatorSurface) * headPaPerM;
  const risePa = set.supplyTankPa - set.separatorPa + lift + lossPa.pumpSuction + lossPa.filter + lossPa.transferRest;
  return `      pumpEfficiency: ${share((100 * risePa * ratedFlowM3PerS) / pump.powerW, 0.03).toFixed(1)} %\n`;
}

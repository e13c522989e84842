import { tankIds } from '../src/plant/alternating-tanks/alternating-readings';
import { branchId } from '../src/plant/plant-readings';
import type { PlantParameters } from '../src/plant/plant-parameters';
import type { HallId } from '../src/scenario/demo-fleet';
import type { PlantTypeId } from '../src/scenario/unit-parameters';
import { within, type RandomSource } from '../src/sensors/random-source';
import { drawCommissioning } from './draw-commissioning';
import { branchRecord, drawPipes, manifoldBore } from './draw-records';
import { alternatingPoints, reservoirPoints } from './site-points';
import {
  areaShare,
  asCommissioned,
  boreShare,
  curveShare,
  flowShare,
  heightM,
  lossShare,
  ratedHeatKW,
  volumeShare,
} from './survey';

const shapes: Readonly<Record<PlantTypeId, 'a' | 'b' | 'c'>> = {
  M: 'a',
  H: 'a',
  bench: 'a',
  'M-pair': 'a',
  'M-alternating': 'b',
  'M-reservoir': 'c',
};

/** The template of a type: what was found when it was commissioned. */
export function drawType(id: PlantTypeId, hall: HallId, source: RandomSource): string {
  const type = asCommissioned(id);
  const { lossPa, boreM, elevationM } = type;
  const share = (value: number, half: number): number => value * (1 + half * within(source));
  const kPa = (pa: number): string => `${(share(pa, lossShare) / 1000).toFixed(2)} kPa`;
  const height = (metres: number): string => `${(metres + heightM * within(source)).toFixed(2)} m`;
  const mm = (metres: number): string => `${(share(metres, boreShare) * 1000).toFixed(1)} mm`;
  const { floorMain, manifoldTop } = elevationM;
  const racks = Array.from({ length: type.racks }, (_, r) => r);
  const flow = share(type.ratedFlowM3PerS * 60000, flowShare);
  const decimals = id === 'bench' ? 3 : 1;
  const shape = shapes[id];
  const loopPa = 2 * lossPa.main + 2 * lossPa.hoseAndManifold + lossPa.restrictor + lossPa.platesAndHoses;
  const branch = (rack: number, lPerMin: string): string =>
    `      ${branchId(rack)}: { name: Rack ${rack + 1}, ratedFlow: ${lPerMin} L/min${branchRecord(id, rack, lPerMin, loopPa)} }`;
  return `  type-${id}:
    template: ${hall}
    shape: ${shape}
    ratedFlow: ${flow.toFixed(decimals)} L/min
    ratedHeat: ${ratedHeatKW[id]} kW
    supplySetPoint: ${type.set.supplyC} °C
    supplyClassLimit: 45 °C
    facilityDesignSupply: ${id === 'bench' ? 28 : 32} °C
${shape === 'b' ? '' : `    pump: { npshLimit: 2.1 m, suctionLoss: ${kPa(lossPa.pumpSuction)} }\n    filterRating: ${id === 'bench' ? 25 : id === 'H' ? 120 : 60} kPa\n`}${tanks(type, shape, source)}    volumes:
${volumes(type, shape, source)}
${transit(type)}
    nodes:
      supply-low: { name: Supply main at its lowest, main: supply, elevation: ${height(floorMain)}, loss: ${kPa(lossPa.supplyToLowPoint)} }
      supply-top: { name: Top of the supply manifolds, main: supply, elevation: ${height(manifoldTop)}, loss: ${kPa(lossPa.main + lossPa.hoseAndManifold)} }
      return-top: { name: Top of the return manifolds, main: return, elevation: ${height(manifoldTop)}, loss: ${kPa(lossPa.main + lossPa.hoseAndManifold)} }
      return-low: { name: Return main at its lowest, main: return, elevation: ${height(floorMain)}, loss: ${kPa(lossPa.main)} }
    hoseBore: ${mm(boreM.outlet)}
    fittings: { mainBore: ${mm(boreM.rackHose)}, restrictorBore: ${mm(boreM.restrictor)}, outletBore: ${mm(boreM.outlet)}, manifoldBore: ${manifoldBore(id)}, checkValve: true }
${drawPipes(id, type)}${drawCommissioning(id, type, shape, source)}    vacuumSource:
      count: ${type.vacuum.sources}
      sealWaterTemperature: ${type.vacuum.sealC} °C
      curve:
${curve(type, source)}
${ownLimits[id] ?? ''}    branches:
${racks.map((r) => branch(r, (share(flow, flowShare) / type.racks).toFixed(decimals))).join('\n')}
${shape === 'b' ? `    points:\n${alternatingPoints}` : shape === 'c' ? `    points:\n${reservoirPoints}` : ''}`;
}

/**
 * A hose of the bench is so narrow that a slit in it draws 29 free L/min, and its sound loop moves by less than one.
 */
const ownLimits: Partial<Record<PlantTypeId, string>> = {
  bench: `    limits:
      AIR-1: { limit: 6 free L/min }
`,
};

/** Areas, and the levels at which the volumes hold. */
function tanks({ volumeM3 }: PlantParameters, shape: 'a' | 'b' | 'c', source: RandomSource): string {
  const cm2 = (m2: number): string => `${(m2 * 1e4 * (1 + areaShare * within(source))).toFixed(0)} cm2`;
  if (shape === 'b') {
    const named = tankIds.map(
      (id, i) => `        ${id}: { name: Tank ${i + 1}, area: ${cm2(volumeM3.supplyTankAreaM2)} }`,
    );
    return `    tanks:\n      named:\n${named.join('\n')}\n`;
  }
  const level = (m3: number, areaM2: number): string => `${((100 * m3) / areaM2).toFixed(1)} cm`;
  const separator = `      separatorArea: ${cm2(volumeM3.separatorAreaM2)}
      separatorUsualLevel: ${level(volumeM3.separatorWater, volumeM3.separatorAreaM2)}
`;
  if (shape === 'c') return `    tanks:\n${separator}`;
  return `    tanks:
      supplyArea: ${cm2(volumeM3.supplyTankAreaM2)}
      supplyUsualLevel: ${level(volumeM3.supplyTankWater, volumeM3.supplyTankAreaM2)}
${separator}`;
}

/** Of the supply tank's water, what it gives until gas goes with it; of the separator's gas, what water may take. */
const usableShare = 0.8;
const roomShare = 0.3;

function volumes({ volumeM3, racks }: PlantParameters, shape: 'a' | 'b' | 'c', source: RandomSource): string {
  const litres = (m3: number): string => {
    const drawn = 1000 * m3 * (1 + volumeShare * within(source));
    return `${drawn.toFixed(drawn < 10 ? 2 : 0)} L`;
  };
  const pipes = volumeM3.supplyMain + volumeM3.returnMain + racks * volumeM3.rack;
  const rows = [
    ['supplyToReturn', litres(pipes)],
    ['water', litres(pipes + volumeM3.unit + volumeM3.supplyTankWater + volumeM3.separatorWater)],
    ['separatorGas', litres(volumeM3.separatorGas)],
    ...(shape === 'a' ? [['supplyTankGas', litres(volumeM3.supplyTankGas)]] : []),
    ...(shape === 'a' ? [['supplyTankUsable', litres(usableShare * volumeM3.supplyTankWater)]] : []),
    ...(shape === 'b' ? [] : [['separatorRoom', litres(roomShare * volumeM3.separatorGas)]]),
  ];
  return rows.map(([key, value]) => `      ${key}: ${value}`).join('\n');
}

/** What a change of temperature meets on its way, from the papers of the racks: chips and plates, and the sensors' pockets. */
function transit({ chip, chipsPerServer, racks, serversPerRack, volumeM3 }: PlantParameters): string {
  const behind = 1000 * (volumeM3.returnMain + (racks * volumeM3.rack) / 2);
  const stored = (racks * serversPerRack * chipsPerServer * chip.heatJPerK) / 1000;
  const plateS = chip.heatJPerK * (chip.fixedKPerW + chip.flowKPerW);
  return `    transit: { platesToReturn: ${Number(behind.toPrecision(2))} L, storedHeat: ${Number(stored.toPrecision(2))} kJ/K, plateLag: ${plateS.toFixed(0)} s, sensorLag: 10 s }`;
}

/** Suction as blank-off and orifices would have given it at commissioning. */
function curve(type: PlantParameters, source: RandomSource): string {
  const sweptM3PerH = type.vacuum.sweptM3PerS * 3600;
  return [8, 15, 25, 32, 45, 65, 101]
    .map((kPa) => {
      const suction = sweptM3PerH * (1 - (4.2 / kPa) ** 1.5) * (1 + curveShare * within(source));
      return `        - { pressure: ${kPa} kPa, suction: ${suction.toFixed(1)} m3/h }`;
    })
    .join('\n');
}

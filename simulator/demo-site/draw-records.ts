import type { PlantParameters } from '../src/plant/plant-parameters';
import { headPaPerM, waterHeatJPerKgK } from '../src/plant/water';
import { seededRandom } from '../src/scenario/seeded-random';
import type { PlantTypeId } from '../src/scenario/unit-parameters';
import { within, type RandomSource } from '../src/sensors/random-source';
import { areaShare, boreShare, recordShare, surveyed } from './survey';

/** Draws of their own, so that what was drawn before them stays. */
const sourceOf = (what: string, id: PlantTypeId): RandomSource => seededRandom(23, `${what} of ${id}`);

const isBig = (id: PlantTypeId): id is 'M' | 'H' => id === 'M' || id === 'H';

type Draw = (value: number, half: number) => number;
const draws =
  (source: RandomSource): Draw =>
  (value, half) =>
    value * (1 + half * within(source));

/** Pairs of loop and facility flow, as shares of the reference, at which the exchanger was measured. */
const flowPairs = [
  [1, 1],
  [0.6, 1],
  [1, 0.5],
  [0.6, 0.5],
  [1, 1.6],
] as const;

/** UA at five pairs of flows; null for the small units, where one was taken. */
export function exchangerRecords(id: PlantTypeId, { exchanger }: PlantParameters): string | null {
  if (!isBig(id)) return null;
  const draw = draws(sourceOf('exchanger', id));
  const { uaWPerK, referenceKgPerS } = exchanger;
  const rows = flowPairs.map(([loop, facility]) => {
    const ua = uaWPerK / (0.5 * loop ** -0.75 + 0.5 * facility ** -0.75);
    const kgPerS = (share: number): string => `${(share * referenceKgPerS).toFixed(2)} kg/s`;
    return `          - { loopFlow: ${kgPerS(loop)}, facilityFlow: ${kgPerS(facility)}, ua: ${draw(ua, recordShare).toFixed(0)} W/K }\n`;
  });
  const area = draw(surveyed[id].exchangerM2, areaShare).toFixed(1);
  return `      exchanger:\n        area: ${area} m2\n        exponent: 0.75\n        records:\n${rows.join('')}`;
}

/** Loss of the clean filter at three flows; null for the small units. */
export function filterRecords(id: PlantTypeId, { lossPa, ratedFlowM3PerS }: PlantParameters): string | null {
  if (!isBig(id)) return null;
  const draw = draws(sourceOf('filter', id));
  const rows = [1, 0.8, 0.6].map((share) => {
    const kPa = draw((lossPa.filter / 1000) * share * share, recordShare);
    return `          - { flow: ${(60_000 * ratedFlowM3PerS * share).toFixed(0)} L/min, loss: ${kPa.toFixed(2)} kPa }\n`;
  });
  return `      filter:\n        temperature: 43 °C\n        records:\n${rows.join('')}`;
}

/** The transfer pump at rated flow. */
export function pumpRecord(id: PlantTypeId, type: PlantParameters): string {
  if (!isBig(id)) return '';
  const draw = draws(sourceOf('pump', id));
  const { set, elevationM, lossPa, pump } = type;
  const liftM = elevationM.delivery - elevationM.separatorSurface;
  const linePa = lossPa.pumpSuction + lossPa.filter + lossPa.transferRest;
  const head = (set.supplyTankPa - set.separatorPa + linePa) / headPaPerM + liftM;
  const speed = 100 * Math.sqrt((head + pump.fallM) / pump.shutOffM);
  const rise = draw((head * headPaPerM) / 1000, recordShare);
  return `      pump: { speed: ${speed.toFixed(1)} %, rise: ${rise.toFixed(1)} kPa }\n`;
}

/** What each rack lost at its flow, from the supply tank to the separator. */
export function branchRecord(id: PlantTypeId, rack: number, flowLPerMin: string, loopPa: number): string {
  if (!isBig(id)) return '';
  const loss = draws(sourceOf(`rack ${rack}`, id))(loopPa / 1000, recordShare);
  return `, records: [{ flow: ${flowLPerMin} L/min, loss: ${loss.toFixed(2)} kPa }]`;
}

/** Bores, chips and plates as drawings and a caliper give them. */
export function drawPipes(id: PlantTypeId, type: PlantParameters): string {
  const draw = draws(sourceOf('pipes', id));
  const { racks, serversPerRack, chipsPerServer, chipPowerW, chip, ratedFlowM3PerS, volumeM3 } = type;
  const found = surveyed[id === 'H' || id === 'bench' ? id : 'M'];
  const mm = (metres: number): string => `${(1000 * draw(metres, boreShare)).toFixed(1)} mm`;
  const cm2 = (m2: number): string => `${(1e4 * draw(m2, areaShare)).toFixed(1)} cm2`;
  const lengthM = (volumeM3.supplyMain + volumeM3.returnMain) / ((Math.PI / 4) * found.mainM ** 2);
  const plateFlow = (60_000 * ratedFlowM3PerS) / (racks * serversPerRack * chipsPerServer);
  // Where a plate's film stands between chip and water: what its water warms by on the way is no film.
  const ofWarming = 1 / (2 * (plateFlow / 60) * waterHeatJPerKgK);
  const wall = Math.max(0.2, 1 - ofWarming / chip.fixedKPerW) * chip.fixedKPerW;
  return `    mains: { bore: ${mm(found.mainM)}, length: ${draw(lengthM, 0.02).toFixed(1)} m }
    permissibleVelocity: { table: copperHandbook }
    plateFullPower: ${chipPowerW} W
    chipArea: ${cm2(found.chipM2)}
    plateChannel:
      ratedFlow: ${draw(plateFlow, 0.02).toFixed(3)} L/min
      wettedArea: ${cm2(found.wettedM2)}
      wallResistance: ${draw(wall, 0.03).toFixed(4)} K/W
      width: ${mm(found.channel.widthM)}
      height: ${mm(found.channel.heightM)}
      count: ${found.channel.count}
`;
}

/** Of each rack's manifold. */
export const manifoldBore = (id: PlantTypeId): string =>
  `${(1000 * draws(sourceOf('manifold', id))(surveyed[id === 'H' || id === 'bench' ? id : 'M'].manifoldM, boreShare)).toFixed(1)} mm`;

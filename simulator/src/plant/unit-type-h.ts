import type { PlantParameters } from './plant-parameters';
import { unitTypeM } from './unit-type-m';

/** Six racks of 100 kW, all of it into the water, no fans. Common practice and arithmetic, no published source. */
export const unitTypeH: PlantParameters = {
  ...unitTypeM,
  kind: 'H',
  racks: 6,
  serversPerRack: 20,
  chipsPerServer: 5,
  chipPowerW: 1000,
  ratedFlowM3PerS: 722 / 60000,
  lossPa: {
    main: 2300,
    supplyToLowPoint: 700,
    hoseAndManifold: 2000,
    restrictor: 14300,
    platesAndHoses: 17200,
    pumpSuction: 2430,
    filter: 30000,
    transferRest: 20600,
  },
  boreM: { restrictor: 0.0062, outlet: 0.008, serverHose: 0.012, rackHose: 0.05 },
  volumeM3: {
    supplyTankWater: 0.15,
    supplyTankGas: 0.1,
    supplyTankAreaM2: 0.3,
    separatorWater: 0.09,
    separatorGas: 1.2,
    separatorAreaM2: 0.36,
    supplyMain: 0.2,
    returnMain: 0.2,
    rack: 0.03,
    unit: 0.08,
  },
  vacuum: { ...unitTypeM.vacuum, sweptM3PerS: 160 / 3600, suctionCoolingK: 2.8, powerW: 4200 },
  pump: { ...unitTypeM.pump, powerW: 2400 },
  exchanger: {
    uaWPerK: 120000,
    referenceKgPerS: 11.95,
    facilityFullKgPerS: 23.9,
    facilitySupplyC: 30,
    valveStrokeS: 100,
  },
  chip: { fixedKPerW: 0.01, flowKPerW: 0.01, heatJPerK: 300, fans: null, throttleC: 95, tripC: null },
  baseInLeakFreeM3PerS: 1 / 60000,
};

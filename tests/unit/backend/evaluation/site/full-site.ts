import { changed } from './change-document';

const typeM = (key: string) => ['templates', 'typeM', ...key.split('.')];

/** The small site with every key of plant, parts and commissioning that a site file may have. */
export const fullSiteDocument = (): unknown =>
  changed(
    [['loops', 'row'], { name: 'Row', units: ['m1', 'm2'], unitsNeeded: 1 }],
    [typeM('openingDischargeCoefficient'), 0.7],
    [typeM('plateHeatCapacity'), '350 J/K'],
    [typeM('plateLimit'), '85 °C'],
    [typeM('fanPath'), { resistance: '0.167 K/W' }],
    [typeM('supplyClassLimit'), '45 °C'],
    [typeM('facilityDesignSupply'), '30 °C'],
    [typeM('filterRating'), '60 kPa'],
    [
      typeM('volumes'),
      {
        supplyToReturn: '280 L',
        water: '488 L',
        separatorGas: '510 L',
        supplyTankGas: '80 L',
        supplyTankUsable: '80 L',
        separatorRoom: '90 L',
      },
    ],
    [
      typeM('transit'),
      { platesToReturn: '140 L', storedHeat: '280 kJ/K', spread: 0.25, plateLag: '20 s', sensorLag: '10 s' },
    ],
    [
      typeM('tanks'),
      {
        supplyArea: '0.2 m2',
        separatorArea: '0.15 m2',
        supplyHeight: '0.8 m',
        separatorHeight: '0.9 m',
        supplyUsualLevel: '0.5 m',
        separatorUsualLevel: '0.45 m',
        named: { third: { name: 'Third tank', area: '0.1 m2' } },
      },
    ],
    [typeM('fittings'), { mainBore: '25 mm', restrictorBore: '3.6 mm', outletBore: '5 mm', checkValve: true }],
    [typeM('servers'), { s1: { name: 'Server 1', branch: 'r1' }, s2: { branch: 'r2' } }],
    [typeM('plates'), { p1: { name: 'Chip 1', server: 's1', elevation: '1.3 m' }, p2: { branch: 'r2', fans: false } }],
    [typeM('vacuumSource.control'), 'startStop'],
    [typeM('vacuumSource.sealWaterTemperature'), '25 °C'],
    [
      typeM('commissioning'),
      {
        by: 'Commissioning',
        on: '2026-03-14',
        loop: { loss: '40.2 kPa', exponent: 1.95 },
        filter: { loss: '15 kPa', exponent: 1.8 },
        exchanger: { ua: '48000 W/K', loopFlow: '5.74 kg/s', facilityFlow: '5.74 kg/s', exponent: 0.75 },
        gasLoad: '1.5 free L/min',
        pumpEfficiency: '45 %',
        plate: { resistance: '0.06 K/W', fixed: '0.03 K/W', exponent: 0.8 },
      },
    ],
    [['units', 'm1', 'points', 'server.*.power'], { path: 'servers.{server}.w', unit: 'W' }],
    [['units', 'm1', 'points', 'tank.*.level'], { path: 'tanks.{tank}.l', unit: 'cm' }],
    [['units', 'm1', 'points', 'topUp.volume'], { path: 'topUp', unit: 'L' }],
    [['units', 'm1', 'points', 'water.bacteria'], { path: 'bacteria', unit: 'CFU/mL', period: '7 d' }],
  );

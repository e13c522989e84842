import type { PointRow } from '../quantity-kind';

/** Water in the tanks, and where it goes. */
export const tankPoints: readonly PointRow[] = [
  ['supplyTankRate', 'volumeFlow', 'm3/s', 'Supply tank, water gained'],
  ['separatorRate', 'volumeFlow', 'm3/s', 'Separator, water gained'],
  ['waterVolume', 'volume', 'm3', 'Water in both tanks'],
  ['loopWaterVolume', 'volume', 'm3', 'Water in the tanks of all units on the loop'],
  ['loopWaterRate', 'volumeFlow', 'm3/s', 'Water gained by the tanks of all units on the loop'],
  [
    'loopWaterTrend',
    'volumeFlow',
    'm3/s',
    'Water gained over a day by the tanks of all units on the loop, top-up taken out',
  ],
  ['topUpRate', 'volumeFlow', 'm3/s', 'Top-up'],
  ['exhaustWaterLoss', 'volumeFlow', 'm3/s', 'Water that gas carries out as vapour, at most'],
  ['waterBalance', 'volumeFlow', 'm3/s', 'Water gained over a day that neither top-up nor exhaust explains'],
  ['waterBalanceSignificance', 'ratio', '1', 'The same over its standard uncertainty'],
  ['timeToEmpty', 'duration', 's', 'Time until the supply tank is empty'],
  ['timeToFull', 'duration', 's', 'Time until the separator is full'],
];
